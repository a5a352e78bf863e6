// Each contradiction that a type can bear is refused with the field named; the sound type beside it is taken.
#include "core/catalogue/catalogue.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace streamwright::catalogue {

namespace contradictions_test {

/// A sound encoder with one more member put before its end.
std::string encoder_with(const std::string& ports, const std::string& codec, const std::string& more = "") {
    return R"({"key":"e","name":"Encoder","maker":"Generic","kind":"encoder","ports":[)" + ports + R"(],"codec":)" +
           codec + more + "}";
}

const std::string picture_in = R"({"key":"in","signal":"video","way":"in","connector":"hdmi"})";
const std::string network =
    R"({"key":"net","signal":"copper","way":"both","connector":"rj45","rates_bps":[1000000000]})";
const std::string encodes = R"({"family":"f","roles":["encoder"]})";

std::string refusal_of(const std::string& json) {
    const auto type = read_device_type(json, "file.json");
    return type.ok() ? "" : type.error().english();
}

std::string cable_refusal_of(const std::string& members) {
    const auto type = read_cable_type(R"({"key":"c","name":"Cable","maker":"Generic",)" + members + "}", "file.json");
    return type.ok() ? "" : type.error().english();
}

std::string plain(const std::string& members) {
    return R"({"key":"t","name":"Thing","maker":"Generic",)" + members + "}";
}

std::string led_output(const std::string& pixels) {
    return R"("ports":[{"key":"a","signal":"extender","way":"out","connector":"rj45","standards":["LED wall data"],)"
           R"("most_pixels":)" +
           pixels + "}]";
}

struct Case {
    std::string name, json, field;
};

class Contradiction : public testing::TestWithParam<Case> {};

TEST_P(Contradiction, IsRefusedWithItsField) {
    const auto words = refusal_of(GetParam().json);
    EXPECT_NE(words.find("file.json"), std::string::npos) << words;
    EXPECT_NE(words.find(GetParam().field), std::string::npos) << words;
}

TEST(Contradictions, SoundTypesAreTaken) {
    EXPECT_EQ(refusal_of(encoder_with(picture_in + "," + network, encodes)), "");
    EXPECT_EQ(refusal_of(plain(R"("ports":[])")), "");
    EXPECT_EQ(refusal_of(plain(led_output("650000"))), "");
    EXPECT_EQ(refusal_of(plain(R"("image":{"pixels_across":1920,"pixels_down":1080},"most_windows":4)")), "");
    EXPECT_EQ(cable_refusal_of(R"("signal":"copper","medium":"balanced_copper","grade":"cat6","plugs":["rj45"])"), "");
}

const std::vector<Case> device_cases{
    {"KeyWithSpaces", R"({"key":"a b","name":"n","maker":"m"})", "key"},
    {"NoName", R"({"key":"a","name":"","maker":"m"})", "name"},
    {"NoMaker", R"({"key":"a","name":"n"})", "maker"},
    {"NameOfTwoLines", R"({"key":"a","name":"n\nn","maker":"m"})", "name"},
    {"PortKeyTwice", encoder_with(picture_in + "," + picture_in, encodes), "ports: hold a key twice"},
    {"PortKeyMissing", plain(R"("ports":[{"signal":"video","way":"in","connector":"hdmi"}])"), "ports[].key"},
    {"PassesToMissingPort",
     plain(R"("ports":[{"key":"a","signal":"copper","way":"through","connector":"rj45","passes_to":"b"}])"),
     "ports[a].passes_to"},
    {"PassesToItself",
     plain(R"("ports":[{"key":"a","signal":"copper","way":"through","connector":"rj45","passes_to":"a"}])"),
     "ports[a].passes_to"},
    {"PassesOneWayOnly",
     plain(R"("ports":[{"key":"a","signal":"copper","way":"through","connector":"rj45","passes_to":"b"},)"
           R"({"key":"b","signal":"copper","way":"through","connector":"rj45","passes_to":"c"},)"
           R"({"key":"c","signal":"copper","way":"through","connector":"rj45","passes_to":"b"}])"),
     "ports[a].passes_to"},
    {"PassesToAnotherSignal",
     plain(R"("ports":[{"key":"a","signal":"copper","way":"through","connector":"rj45","passes_to":"b"},)"
           R"({"key":"b","signal":"fibre","way":"through","connector":"lc_duplex","passes_to":"a"}])"),
     "ports[a].passes_to"},
    {"PixelsOfAPlainPort",
     plain(R"("ports":[{"key":"a","signal":"video","way":"out","connector":"hdmi","most_pixels":1}])"),
     "ports[a].most_pixels"},
    {"NoPixels", plain(led_output("0")), "ports[a].most_pixels"},
    {"PixelsWithoutEnd", plain(led_output("1000000001")), "ports[a].most_pixels"},
    {"ImageOfNoPixels", plain(R"("image":{"pixels_across":0,"pixels_down":1080})"), "image.pixels_across"},
    {"ImageOfTooManyPixels", plain(R"("image":{"pixels_across":1920,"pixels_down":32769})"), "image.pixels_down"},
    {"ImageWithoutWidth", plain(R"("image":{"pixels_across":1920,"pixels_down":1080,"width_um":0,"height_um":1})"),
     "image.width_um"},
    {"ImageTooHigh", plain(R"("image":{"pixels_across":1920,"pixels_down":1080,"width_um":1,"height_um":100000001})"),
     "image.height_um"},
    {"ImageOfOneSide", plain(R"("image":{"pixels_across":1920,"pixels_down":1080,"width_um":1})"), "image:"},
    {"ImageOfAnEncoder",
     encoder_with(picture_in + "," + network, encodes, R"(,"image":{"pixels_across":1920,"pixels_down":1080})"),
     "image:"},
    {"NoWindows", plain(R"("most_windows":0)"), "most_windows"},
    {"WindowsWithoutEnd", plain(R"("most_windows":1001)"), "most_windows"},
    {"ThroughWithoutOtherFace", plain(R"("ports":[{"key":"a","signal":"copper","way":"through","connector":"rj45"}])"),
     "ports[a].passes_to"},
    {"PassesToWithoutThrough",
     plain(R"("ports":[{"key":"a","signal":"video","way":"in","connector":"hdmi","passes_to":"a"}])"),
     "ports[a].passes_to"},
    {"CageWithoutRates", plain(R"("ports":[{"key":"a","signal":"fibre","way":"both","connector":"sfp_plus"}])"),
     "ports[a].rates_bps"},
    {"NetworkWithoutRates", plain(R"("ports":[{"key":"a","signal":"copper","way":"both","connector":"rj45"}])"),
     "ports[a].rates_bps"},
    {"RatesOnPictures",
     plain(R"("ports":[{"key":"a","signal":"video","way":"in","connector":"hdmi","rates_bps":[1]}])"),
     "ports[a].rates_bps"},
    {"RatesFall",
     plain(R"("ports":[{"key":"a","signal":"copper","way":"both","connector":"rj45","rates_bps":[1000,100]}])"),
     "ports[a].rates_bps"},
    {"NetworkOneWay",
     plain(R"("ports":[{"key":"a","signal":"copper","way":"in","connector":"rj45","rates_bps":[1000]}])"),
     "ports[a].way"},
    {"CageForPictures", plain(R"("ports":[{"key":"a","signal":"video","way":"in","connector":"sfp"}])"),
     "ports[a].connector"},
    {"PoeClassNine",
     plain(R"("ports":[{"key":"a","signal":"copper","way":"both","connector":"rj45","rates_bps":[1000],)"
           R"("poe":{"side":"takes","class":9}}])"),
     "ports[a].poe.class"},
    {"PoeDrawNegative",
     plain(R"("ports":[{"key":"a","signal":"copper","way":"both","connector":"rj45","rates_bps":[1000],)"
           R"("poe":{"side":"takes","class":3,"draw_mw":-1}}])"),
     "ports[a].poe.draw_mw"},
    {"PoeOnFibre",
     plain(R"("ports":[{"key":"a","signal":"fibre","way":"both","connector":"lc_duplex","rates_bps":[1000],)"
           R"("poe":{"side":"takes","class":3}}])"),
     "ports[a].poe"},
    {"UsbWithoutSide", plain(R"("ports":[{"key":"a","signal":"usb","way":"in","connector":"usb_a"}])"), "ports[a].way"},
    {"UsbSideOnPictures", plain(R"("ports":[{"key":"a","signal":"video","way":"usb_host","connector":"hdmi"}])"),
     "ports[a].way"},
    {"UsbGroupOnAudio", plain(R"("ports":[{"key":"a","signal":"audio","way":"in","connector":"xlr","usb_group":1}])"),
     "ports[a].usb_group"},
    {"AuxiliaryPicture",
     plain(R"("ports":[{"key":"a","signal":"video","way":"in","connector":"hdmi","auxiliary":true}])"),
     "ports[a].auxiliary"},
    {"LocalOutputWithoutEncoder",
     plain(R"("ports":[{"key":"a","signal":"video","way":"out","connector":"hdmi","local_output":true}])"),
     "ports[a].local_output"},
    {"ThreePairs",
     plain(R"("ports":[{"key":"a","signal":"copper","way":"both","connector":"rj45","rates_bps":[1000],"pairs":3}])"),
     "ports[a].pairs"},
    {"PictureOfSound", plain(R"("ports":[{"key":"a","signal":"audio","way":"in","connector":"xlr","picture":{}}])"),
     "ports[a].picture"},
    {"PictureFormatUnread",
     plain(R"("ports":[{"key":"a","signal":"video","way":"in","connector":"hdmi","picture":{"formats":["large"]}}])"),
     "ports[0].picture.formats[0]"},
    {"PictureFormatWithColour",
     plain(R"("ports":[{"key":"a","signal":"video","way":"in","connector":"hdmi",)"
           R"("picture":{"formats":["2160p60 4:2:0"]}}])"),
     "ports[a].picture.formats"},
    {"PictureFormatTwice",
     plain(R"("ports":[{"key":"a","signal":"video","way":"in","connector":"hdmi",)"
           R"("picture":{"formats":["1080p60","1920x1080@60"]}}])"),
     "ports[a].picture.formats"},
    {"PictureDepth",
     plain(R"("ports":[{"key":"a","signal":"video","way":"in","connector":"hdmi","picture":{"most_depth":4}}])"),
     "ports[a].picture.most_depth"},
    {"PictureOutputRepeats",
     plain(R"("ports":[{"key":"a","signal":"video","way":"out","connector":"hdmi","picture":{"repeats":true}}])"),
     "ports[a].picture"},
    {"PictureHdcpDevices",
     plain(R"("ports":[{"key":"a","signal":"video","way":"out","connector":"hdmi",)"
           R"("picture":{"hdcp_most_devices":-1}}])"),
     "ports[a].picture.hdcp_most_devices"},
    {"CodecPictureDepth", encoder_with(network, R"({"family":"f","roles":["encoder"],"picture":{"most_depth":20}})"),
     "codec.picture.most_depth"},
    {"EncoderWithoutCodec", plain(R"("kind":"encoder","ports":[])"), "codec"},
    {"NoRoles", encoder_with(network, R"({"family":"f"})"), "codec.roles"},
    {"RoleTwice", encoder_with(network, R"({"family":"f","roles":["encoder","encoder"]})"), "codec.roles"},
    {"NoFamily", encoder_with(network, R"({"roles":["encoder"]})"), "codec.family"},
    {"EncoderThatDecodes", encoder_with(network, R"({"family":"f","roles":["decoder"],"inputs":[{"key":"p"}]})"),
     "codec.roles"},
    {"DecoderWithoutInputs", plain(R"("kind":"decoder","codec":{"family":"f","roles":["decoder"]})"), "codec.inputs"},
    {"EncoderWithInputs", encoder_with(network, R"({"family":"f","roles":["encoder"],"inputs":[{"key":"p"}]})"),
     "codec.inputs"},
    {"InputTwice",
     plain(R"("kind":"decoder","codec":{"family":"f","roles":["decoder"],"inputs":[{"key":"p"},{"key":"p"}]})"),
     "codec.inputs"},
    {"GatewayToItsOwnFamily", encoder_with(network, R"({"family":"f","sends_family":"f","roles":["encoder"]})"),
     "codec.sends_family"},
    {"GatewayOfOneRole", encoder_with(network, R"({"family":"f","sends_family":"g","roles":["encoder"]})"),
     "codec.sends_family"},
    {"BothAtOnceWithOneRole", encoder_with(network, R"({"family":"f","roles":["encoder"],"roles_at_once":true})"),
     "codec.roles_at_once"},
    {"UsualAboveMost",
     encoder_with(network, R"({"family":"f","roles":["encoder"],"usual_rate_bps":9,"most_rate_bps":8})"),
     "codec.usual_rate_bps"},
    {"RateZero", encoder_with(network, R"({"family":"f","roles":["encoder"],"usual_rate_bps":0})"),
     "codec.usual_rate_bps"},
    {"JoinsNoGroup", encoder_with(network, R"({"family":"f","roles":["encoder"],"most_groups":0})"),
     "codec.most_groups"},
    {"CodingTwice",
     encoder_with(network, R"({"family":"f","roles":["encoder"],"packed":{"codings":["H.264","H.264"]}})"),
     "codec.packed.codings"},
    {"LevelWithoutCoding",
     encoder_with(network, R"({"family":"f","roles":["encoder"],"packed":{"most_h264_level":"4.2"}})"),
     "codec.packed.most_h264_level"},
    {"LevelThatIsNone",
     encoder_with(network,
                  R"({"family":"f","roles":["encoder"],"packed":{"codings":["H.265"],"most_h265_level":"4.3"}})"),
     "codec.packed.most_h265_level"},
    {"FlowsTakenByAnEncoder",
     encoder_with(network, R"({"family":"f","roles":["encoder"],"sound_flows":{"levels":["A"]}})"),
     "codec.sound_flows: only decoders"},
    {"LevelOfSoundThatIsNone",
     encoder_with(network, R"({"family":"f","roles":["encoder"],"sound_flows":{"levels":["D"]}})"),
     "codec.sound_flows.levels"},
    {"NoFlowOut", encoder_with(network, R"({"family":"f","roles":["encoder"],"sound_flows":{"most_out":0}})"),
     "codec.sound_flows"},
    {"PayloadZero", encoder_with(network, R"({"family":"f","roles":["encoder"],"payload_octets":0})"),
     "codec.payload_octets"},
    {"SwitchesOneInput", encoder_with(picture_in, R"({"family":"f","roles":["encoder"],"switches_inputs":true})"),
     "codec.switches_inputs"},
    {"SwitchWithoutFacts", plain(R"("kind":"switch","ports":[])"), "bridging"},
    {"TooManyVlans", plain(R"("kind":"switch","bridging":{"vlan_limit":5000})"), "bridging.vlan_limit"},
    {"NegativeTable", plain(R"("kind":"switch","bridging":{"group_table_size":-1})"), "bridging.group_table_size"},
    {"NegativeGroupsPerPort", plain(R"("kind":"switch","bridging":{"groups_per_port":-1})"),
     "bridging.groups_per_port"},
    {"NegativeAddressTable", plain(R"("kind":"switch","bridging":{"address_table_size":-1})"),
     "bridging.address_table_size"},
    {"NegativeBudget", plain(R"("kind":"switch","bridging":{"poe_budget_mw":-1})"), "bridging.poe_budget_mw"},
    {"TwoSuppliesAlone", plain(R"("kind":"switch","bridging":{"poe_budget_two_mw":9})"), "bridging.poe_budget_two_mw"},
    {"TwoSuppliesGiveLess", plain(R"("kind":"switch","bridging":{"poe_budget_mw":9,"poe_budget_two_mw":8})"),
     "bridging.poe_budget_two_mw"},
    {"PolishOnCopper",
     plain(R"("ports":[{"key":"a","signal":"copper","way":"both","connector":"rj45","rates_bps":[1000],)"
           R"("polish":"flat"}])"),
     "ports[a].polish"},
    {"JointsOnAnActivePort",
     plain(R"("ports":[{"key":"a","signal":"fibre","way":"both","connector":"lc_duplex","rates_bps":[1000],)"
           R"("joints":1}])"),
     "ports[a].joints"},
    {"CrossesOnAnActivePort",
     plain(R"("ports":[{"key":"a","signal":"fibre","way":"both","connector":"lc_duplex","rates_bps":[1000],)"
           R"("crosses":true}])"),
     "ports[a].crosses"},
    {"HearsWithTwoStrands",
     plain(R"("kind":"transceiver","module":{"form":"sfp","phy":"p","rate_bps":1,"medium":"singlemode",)"
           R"("wavelength_nm":1310,"receive_nm":1490})"),
     "module.receive_nm"},
    {"HearsItself",
     plain(R"("kind":"transceiver","module":{"form":"sfp","phy":"p","rate_bps":1,"medium":"singlemode",)"
           R"("wavelength_nm":1310,"receive_nm":1310,"strands":1})"),
     "module.receive_nm"},
    {"FramesTooShort", plain(R"("kind":"switch","bridging":{"frame_limit":1000})"), "bridging.frame_limit"},
    {"TransceiverWithoutModule", plain(R"("kind":"transceiver")"), "module"},
    {"ModuleWithoutRate",
     plain(
         R"("kind":"transceiver","module":{"form":"sfp","phy":"1000BASE-SX","medium":"multimode","wavelength_nm":850})"),
     "module.rate_bps"},
    {"ModuleWithoutPhy",
     plain(R"("kind":"transceiver","module":{"form":"sfp","rate_bps":1,"medium":"multimode","wavelength_nm":850})"),
     "module.phy"},
    {"ModuleWithoutLight",
     plain(R"("kind":"transceiver","module":{"form":"sfp","phy":"p","rate_bps":1,"medium":"multimode"})"),
     "module.wavelength_nm"},
    {"ModuleOutsideCage",
     plain(R"("kind":"transceiver","module":{"form":"rj45","phy":"p","rate_bps":1,"medium":"balanced_copper"})"),
     "module.form"},
    {"ChassisWithoutSlots", plain(R"("kind":"chassis","chassis":{"takes":"x"})"), "chassis.slots"},
    {"ChassisForNothing", plain(R"("kind":"chassis","chassis":{"slots":2})"), "chassis.takes"},
    {"CardWithoutForm", plain(R"("kind":"card")"), "card_form"},
    {"RackWithoutUnits", plain(R"("kind":"rack")"), "size.rack_units"},
    {"NegativeUnits", plain(R"("size":{"rack_units":-1})"), "size.rack_units"},
    {"NegativeHeight", plain(R"("size":{"height_um":-1})"), "size.height_um"},
    {"NegativeMass", plain(R"("size":{"mass_g":-1})"), "size.mass_g"},
    {"NegativePower", plain(R"("power":{"most_mw":-1})"), "power.most_mw"},
    {"ApparentBelowReal", plain(R"("power":{"most_mw":10,"most_apparent_mva":9})"), "power.most_apparent_mva"},
    {"RepeatWithoutPlace", plain(R"("ports":[{"repeat":{"from":1,"to":2},"key":"a"}])"), "ports[0].key"},
    {"RepeatTooOften", plain(R"("ports":[{"repeat":{"from":1,"to":129},"key":"a{n}"}])"), "ports[0].repeat"},
    {"RepeatBackwards", plain(R"("ports":[{"repeat":{"from":2,"to":1},"key":"a{n}"}])"), "ports[0].repeat"},
    {"RepeatHuge", plain(R"("ports":[{"repeat":{"from":-9223372036854775807,"to":9223372036854775807},"key":"a{n}"}])"),
     "ports[0].repeat"},
    {"RepeatOfWords", plain(R"("ports":[{"repeat":"1 to 2","key":"a{n}"}])"), "ports[0].repeat"},
    {"UnknownSignal", plain(R"("ports":[{"key":"a","signal":"smoke"}])"), "ports[0].signal"},
    {"NumberAsText", plain(R"("size":{"mass_g":"heavy"})"), "size.mass_g"},
    {"ListAsText", plain(R"("ports":"many")"), "ports"},
    {"NumberTooLarge", plain(R"("size":{"mass_g":99999999999999999999})"), "size.mass_g"},
};

INSTANTIATE_TEST_SUITE_P(Devices, Contradiction, testing::ValuesIn(device_cases),
                         [](const auto& each) { return each.param.name; });

TEST(Contradictions, CablesAreJudgedToo) {
    const auto told = [](const std::string& members, const std::string& field) {
        const auto words = cable_refusal_of(members);
        EXPECT_NE(words.find(field), std::string::npos) << members << ": " << words;
    };
    told(R"("signal":"copper")", "plugs");
    told(R"("plugs":["rj45","rj45"])", "plugs");
    told(R"("medium":"multimode","grade":"cat6","plugs":["rj45"])", "grade");
    told(R"("medium":"singlemode","grade":"om4","plugs":["lc_duplex"])", "grade");
    told(R"("medium":"balanced_copper","grade":"cat6","plugs":["rj45"],"pairs":0)", "pairs");
    told(R"("medium":"multimode","grade":"om4","plugs":["lc_duplex"],"strands":0)", "strands");
    told(R"("medium":"twinax","use":"lead","plugs":["sfp_plus"])", "rates_bps");
    told(R"("signal":"audio","plugs":["xlr"],"rates_bps":[1000])", "rates_bps");
    told(R"("plugs":["rj45"],"use":"lead","made_length_um":0)", "made_length_um");
    told(R"("plugs":["rj45"],"made_length_um":1000000)", "made_length_um");
    told(R"("plugs":["rj45"],"most_length_um":-1)", "most_length_um");
    told(R"("signal":"video","plugs":["hdmi"],"picture_link":"HDMI 9")", "picture_link");
    told(R"("signal":"audio","plugs":["xlr"],"picture_link":"HDMI 2.0")", "picture_link");
    told(R"("plugs":["hdmi"],"use":"lead","made_length_um":3000000,"most_length_um":2000000)", "made_length_um");
    told(R"("plugs":["lc_duplex"],"medium":"balanced_copper","crossed":true)", "crossed");
    told(R"("plugs":["mpo"],"medium":"multimode","strands":12,"crossed":true)", "crossed");
    told(R"("plugs":["rj45"],"medium":"balanced_copper","polish":"flat")", "polish");
    told(R"("plugs":["lc_duplex"],"medium":"multimode","loss_per_km_mdb":0)", "loss_per_km_mdb");
    told(R"("plugs":["rj45"],"medium":"balanced_copper","coax_losses":[{"megahertz":1,"per_100m_mdb":1}])",
         "coax_losses");
    told(R"("plugs":["bnc"],"medium":"coaxial","coax_losses":[{"megahertz":0,"per_100m_mdb":1}])", "coax_losses");
    told(R"("plugs":["bnc"],"medium":"coaxial",)"
         R"("coax_losses":[{"megahertz":9,"per_100m_mdb":1},{"megahertz":9,"per_100m_mdb":2}])",
         "coax_losses");
    told(R"("plugs":["lc_duplex"],"medium":"multimode","awg":23)", "awg");
    told(R"("plugs":["rj45"],"medium":"balanced_copper","awg":9)", "awg");
    told(R"("plugs":["speaker"],"conductor_mm2_tenths":0)", "conductor_mm2_tenths");
    told(R"("plugs":["de9"],"picofarad_per_m":0)", "picofarad_per_m");
}

}  // namespace contradictions_test

}  // namespace streamwright::catalogue
