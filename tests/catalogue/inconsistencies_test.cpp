// Each thing that a type may say and cannot mean is refused with its field; the sound type beside it is taken. Limits
// come from the standards named beside them.
#include "core/catalogue/inconsistencies.h"

#include "core/catalogue/catalogue.h"

#include <gtest/gtest.h>

#include <string>
#include <vector>

namespace streamwright::catalogue {

namespace inconsistencies_test {

std::string plain(const std::string& members) {
    return R"({"key":"t","name":"Thing","maker":"Generic",)" + members + "}";
}

const std::string network =
    R"({"key":"net","signal":"copper","way":"both","connector":"rj45","rates_bps":[100000000,1000000000]})";

std::string network_with(const std::string& more) { return network.substr(0, network.size() - 1) + "," + more + "}"; }

std::string two_network_with(const std::string& more) {
    return R"("ports":[{"key":"up","signal":"copper","way":"both","connector":"rj45","rates_bps":[1000000000]},)" +
           network_with(more) + "]";
}

/// A switch that feeds class 4 and states these facts.
std::string feeding_switch(const std::string& facts) {
    return plain(R"("kind":"switch","bridging":{)" + facts + "}," +
                 two_network_with(R"("poe":{"side":"supplies","class":4})"));
}

std::string told(const std::string& json) {
    const auto type = read_device_type(json, "file.json");
    EXPECT_TRUE(type.ok()) << type.error().english();  // no contradiction: this judge is asked
    if (!type) return {};
    const auto wrong = inconsistency(*type, "file.json");
    return wrong ? wrong->english() : std::string();
}

struct Case {
    std::string name, json, field;
};

class Inconsistency : public testing::TestWithParam<Case> {};

TEST_P(Inconsistency, IsRefusedWithItsField) {
    const auto words = told(GetParam().json);
    EXPECT_TRUE(words.starts_with("file.json: " + GetParam().field)) << words;
    EXPECT_TRUE(words.ends_with("; correct it.")) << words;
}

const std::string picture_out = R"({"key":"out","signal":"video","way":"out","connector":"hdmi"})";
const std::string decodes = R"("kind":"decoder","codec":{"family":"f","roles":["decoder"],"inputs":[{"key":"p"}]})";

const std::vector<Case> cases{
    // IEEE 802.3 clause 33: class 3 gives the device 12.95 W.
    {"DrawAboveClass", plain(R"("ports":[)" + network_with(R"("poe":{"class":3,"draw_mw":12951})") + "]"),
     "ports[net].poe.draw_mw"},
    {"DrawNotStated", plain(R"("ports":[)" + network_with(R"("poe":{"class":3})") + "]"), "ports[net].poe.draw_mw"},
    {"DrawOfASupply", plain(R"("ports":[)" + network_with(R"("poe":{"side":"supplies","class":3,"draw_mw":5})") + "]"),
     "ports[net].poe.draw_mw"},
    {"CopperOnLc",
     plain(R"("ports":[{"key":"a","signal":"copper","way":"both","connector":"lc_duplex","rates_bps":[1000]}])"),
     "ports[a].connector"},
    {"FibreOnRj45",
     plain(R"("ports":[{"key":"a","signal":"fibre","way":"both","connector":"rj45","rates_bps":[1000]}])"),
     "ports[a].connector"},
    {"UsbOnHdmi", plain(R"("ports":[{"key":"a","signal":"usb","way":"usb_host","connector":"hdmi"}])"),
     "ports[a].connector"},
    // IEEE 802.3 clause 40: 1000BASE-T runs over four pairs; clause 25: 100BASE-TX over two.
    {"GigabitOverTwoPairs", plain(R"("ports":[)" + network_with(R"("pairs":2)") + "]"), "ports[net].pairs"},
    {"PowerBothWays", plain(R"("ports":[{"key":"a","signal":"power","way":"both","connector":"iec_c14"}])"),
     "ports[a].way"},
    {"UsbGroupOfOneWay",
     plain(R"("ports":[{"key":"a","signal":"usb","way":"usb_host","connector":"usb_a","usb_group":1},)"
           R"({"key":"b","signal":"usb","way":"usb_host","connector":"usb_a","usb_group":1}])"),
     "ports.usb_group"},
    {"AuxiliaryWithoutSwitch", plain(R"("ports":[)" + network_with(R"("auxiliary":true)") + "]"), "bridging"},
    {"InletWithoutPower", plain(R"("ports":[{"key":"a","signal":"power","way":"in","connector":"iec_c14"}])"), "power"},
    {"PowerOfNothing", plain(R"("power":{"external_supply":true})"), "power.most_mw"},
    {"InletAndPlugInSupply",
     plain(R"("power":{"most_mw":5000,"external_supply":true},)"
           R"("ports":[{"key":"a","signal":"power","way":"in","connector":"iec_c14"}])"),
     "power.external_supply"},
    {"DecoderWithoutNetwork", plain(decodes + R"(,"ports":[)" + picture_out + "]"), "ports"},
    {"DecoderWithoutPictureOutput", plain(decodes + R"(,"ports":[)" + network + "]"), "codec.inputs"},
    {"UsbInputWithoutUsb",
     plain(R"("codec":{"family":"f","roles":["decoder"],"inputs":[{"key":"u","kind":"usb"}]},"ports":[)" + network +
           "]"),
     "codec.inputs"},
    {"StreamFasterThanPort",
     plain(R"("codec":{"family":"f","roles":["encoder"],"usual_rate_bps":1000000001},"ports":[)" + network + "]"),
     "codec.usual_rate_bps"},
    {"SwitchOfOnePort", plain(R"("kind":"switch","bridging":{},"ports":[)" + network + "]"), "ports"},
    {"BudgetWithoutPoe",
     plain(R"("kind":"switch","bridging":{"poe_budget_mw":30000},)" + two_network_with(R"("label":"x")")),
     "bridging.poe_budget_mw"},
    {"ByClassWithoutPoe",
     plain(R"("kind":"switch","bridging":{"poe_by_class":true},)" + two_network_with(R"("label":"x")")),
     "bridging.poe_by_class"},
    // IEEE 802.3 clause 33: class 4 takes 30 W at the supply.
    {"BudgetBelowOnePort", feeding_switch(R"("poe_budget_mw":29999)"), "bridging.poe_budget_mw"},
    {"SnoopsNotAndSaysHow",
     plain(R"("kind":"switch","bridging":{"snooping":false,"lookup":"ip"},)" + two_network_with(R"("label":"x")")),
     "bridging.snooping"},
    {"FibreModuleWithRj45",
     plain(R"("kind":"transceiver","module":{"form":"sfp","phy":"1000BASE-SX","rate_bps":1000000000,)"
           R"("medium":"multimode","wavelength_nm":850,"connector":"rj45"})"),
     "module.connector"},
    // 40GBASE-SR4: four lanes each way (IEEE 802.3, from memory).
    {"StrandsOfAnotherPhysicalLayer",
     plain(R"("kind":"transceiver","module":{"form":"qsfp_plus","phy":"40GBASE-SR4","rate_bps":40000000000,)"
           R"("medium":"multimode","wavelength_nm":850,"connector":"mpo","strands":2})"),
     "module.strands"},
    {"CardWithRackUnits", plain(R"("kind":"card","card_form":"x","size":{"rack_units":1})"), "size.rack_units"},
    {"FullDepthWithoutRack", plain(R"("size":{"full_depth":true})"), "size.full_depth"},
    // IEC 60297-3-100: one unit is 44.45 mm high, a panel 482.6 mm wide.
    {"HigherThanItsUnits", plain(R"("size":{"rack_units":1,"height_um":44451})"), "size.height_um"},
    {"RackLowerThanItsUnits", plain(R"("kind":"rack","size":{"rack_units":2,"height_um":88899})"), "size.height_um"},
    {"WiderThanARack", plain(R"("size":{"rack_units":1,"width_um":482601})"), "size.width_um"},
    {"SerialWithoutPort", plain(R"("controlled_by":["serial"])"), "controlled_by"},
    {"NetworkControlWithoutPort", plain(R"("controlled_by":["network"])"), "controlled_by"},
};

INSTANTIATE_TEST_SUITE_P(Devices, Inconsistency, testing::ValuesIn(cases),
                         [](const auto& each) { return each.param.name; });

TEST(Inconsistencies, WhatJustFitsIsTaken) {
    EXPECT_EQ(told(plain(R"("ports":[)" + network_with(R"("poe":{"class":3,"draw_mw":12950})") + "]")), "");
    EXPECT_EQ(told(feeding_switch(R"("poe_budget_mw":30000)")), "");
    EXPECT_EQ(told(plain(R"("size":{"rack_units":1,"height_um":44450,"width_um":482600})")), "");
    EXPECT_EQ(told(plain(R"("kind":"rack","size":{"rack_units":2,"height_um":88900,"width_um":600000})")), "");
    EXPECT_EQ(told(plain(R"("codec":{"family":"f","roles":["encoder"],"usual_rate_bps":1000000000},"ports":[)" +
                         network + "]")),
              "");
    EXPECT_EQ(told(plain(R"("controlled_by":["ir"])")), "");
}

TEST(Inconsistencies, CablesAreJudgedToo) {
    const auto words = [](const std::string& members) {
        const auto type =
            read_cable_type(R"({"key":"c","name":"Cable","maker":"Generic",)" + members + "}", "file.json");
        EXPECT_TRUE(type.ok()) << members;
        const auto wrong = type.ok() ? inconsistency(*type, "file.json") : std::nullopt;
        return wrong ? wrong->english() : std::string();
    };
    EXPECT_TRUE(words(R"("signal":"fibre","medium":"coaxial","plugs":["lc_duplex"])").starts_with("file.json: medium"));
    EXPECT_TRUE(
        words(R"("signal":"copper","medium":"multimode","plugs":["lc_duplex"])").starts_with("file.json: medium"));
    EXPECT_TRUE(words(R"("signal":"copper","medium":"balanced_copper","plugs":["rj45","mpo"])")
                    .starts_with("file.json: plugs"));
    EXPECT_TRUE(words(R"("signal":"fibre","medium":"multimode","plugs":["rj45"])").starts_with("file.json: plugs"));
    EXPECT_TRUE(words(R"("signal":"copper","medium":"balanced_copper","plugs":["rj45"],"pairs":3)")
                    .starts_with("file.json: pairs"));
    EXPECT_TRUE(words(R"("signal":"fibre","medium":"multimode","plugs":["lc_duplex"],"screened":true)")
                    .starts_with("file.json: screened"));
    EXPECT_EQ(words(R"("signal":"video","medium":"multimode","plugs":["hdmi"])"), "") << "an active optical lead";
    EXPECT_EQ(words(R"("signal":"copper","medium":"balanced_copper","grade":"cat6","plugs":["rj45"],"pairs":2)"), "");
}

}  // namespace inconsistencies_test

}  // namespace streamwright::catalogue
