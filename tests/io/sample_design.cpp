#include "tests/io/sample_design.h"

#include "tests/support/design_builder.h"
#include "tests/support/random_edit.h"

namespace streamwright::test {

namespace {

using namespace model;
using namespace base::literals;

/// A type that states what the plain ones leave open.
std::shared_ptr<const catalogue::DeviceType> full_type() {
    auto full = std::make_shared<catalogue::DeviceType>(types::make_decoder());
    auto& type = *full;
    type.key = {"full-decoder"};
    for (auto& port : type.ports)
        if (port.signal == catalogue::Signal::video) {
            port.audio = {catalogue::AudioFormat::stereo_pcm};
            port.picture = catalogue::PictureFacts{{standards::parse_video_format("2160p60").value()},
                                                   {standards::Sampling::ycbcr_422},
                                                   12,
                                                   {standards::DynamicRange::hlg},
                                                   standards::HdcpVersion::hdcp_2_2,
                                                   16,
                                                   3,
                                                   port.way == catalogue::Way::in,
                                                   port.way == catalogue::Way::in};
        }
    type.codec->downmix = true;
    type.codec->picture = catalogue::CodecPicture{standards::parse_video_format("2160p60").value(),
                                                  standards::Sampling::ycbcr_422, 10, true, false};
    type.codec->most_without_server = 20;
    type.codec->most_groups = 16;
    type.codec->packed = {{standards::PictureCoding::h264, standards::PictureCoding::h265}, "4.2", "5.1"};
    type.codec->sound_flows = catalogue::SoundFlows{{"A", "BX"}, true, 8, {}};
    type.codec->usb = catalogue::UsbCarriage{base::BitRate::from_count(150'000'000), false, 1, 7};
    for (auto& port : type.ports)
        if (port.signal == catalogue::Signal::usb)
            port.usb = catalogue::UsbPort{base::BitRate::from_count(100'000'000), true, {}, {}};
    type.control_note = "switch serial control on in the service menu";
    type.usb_hubs = 1;
    type.delay = base::Duration::from_count(3'000'000);
    type.most_windows = 4;
    type.size.full_depth = false;
    type.controlled_by = {catalogue::ControlMethod::ir, catalogue::ControlMethod::network};
    type.licences = {{"Control licence", catalogue::LicencePer::encoder, 10, 2}};
    return full;
}

/// A display that takes LED data and passes it on.
std::shared_ptr<const catalogue::DeviceType> full_display() {
    catalogue::DeviceType type{
        .key = {"full-cabinet"}, .name = "Cabinet", .maker = "Generic", .kind = catalogue::DeviceKind::wall_tile};
    type.ports = {{.key = {"data-out"},
                   .signal = catalogue::Signal::extender,
                   .way = catalogue::Way::out,
                   .connector = catalogue::Connector::rj45,
                   .standards = {std::string(catalogue::led_data)},
                   .most_pixels = 500'000}};
    type.image = catalogue::ImageFacts{320, 180, 600_mm, base::Length::from_count(337'500)};
    return std::make_shared<const catalogue::DeviceType>(std::move(type));
}

struct FullDesign {
    DesignBuilder b;
    VlanId vlan = b.vlan(10, "AV \"lead\"", "10.1.0.0/16"), other = b.vlan(20, "Contrôle");
    RoomId room = b.room("1.01", "Quay Hall");
    RackId rack = b.rack("North A");
    SheetId sheet = b.sheet(2);
    DeviceId sw = b.device(types::switch_24(), "SW-1"), dec = b.device(types::decoder(), "DEC-1");
    DeviceId ep = b.device(types::endpoint(), "EP-1");
    CableId cable = b.cable(types::cat6a(), {ep, {"net"}}, {sw, {"1"}}, 20_m, "N001");
    PresetId preset = b.preset("Lecture");
    StreamId stream = b.stream(ep, 800_Mbps, "239.1.1.1", vlan);
    StreamId twin = b.stream(ep, 800_Mbps, "239.2.1.1", vlan);

    void fill_settings() {
        b.put(Settings{"Ferrow Quay",
                       "Owner",
                       "AV",
                       "FQ-1",
                       "100",
                       "in preparation",
                       "design",
                       "lead",
                       vlan,
                       35_degC,
                       75,
                       IgmpDocument::rfc9776,
                       60,
                       5,
                       3,
                       Survival::link_or_switch,
                       {preset},
                       true,
                       {"bill_of_materials"},
                       {"csv", "pdf"},
                       {true, false, "2027-06-30", true},
                       {10, 1, 2},
                       LipSync::ebu_r37,
                       {WarmRule::linear,
                        15_degC,
                        37_m,
                        500_mdB,
                        100_mdB,
                        {{"HDMI 18 Gb/s", 6_m, {}}, {"3G-SDI", {}, 25'000_mdB}}},
                       {}});
    }
    void fill_venue() {
        b.change<Room>(room, [](Room& r) {
            r.floor = "1", r.temperature = 40_degC, r.note = "line one\nline two\ttab";
            r.farthest_viewer = 12_m, r.viewing = standards::ViewingCategory::basic;
            r.element_height = standards::ElementHeight::from_count(3000);
        });
        b.change<Rack>(rack, [&](Rack& r) { r.room = room, r.units = 24, r.depth = 800_mm; });
        b.change<Vlan>(vlan, [](Vlan& r) {
            r.purpose = VlanPurpose::wireless, r.gateway = base::Ipv4{0x0A010001};
            r.lease_first = base::Ipv4{0x0A010064}, r.lease_last = base::Ipv4{0x0A0100C8};
        });
    }
    void fill_devices() {
        b.change<Device>(ep, [&](Device& r) {
            r.note = "note", r.room = room, r.standing = Standing{1_m, 2_m, -(3_m)},
            r.rack = RackPlace{rack, 7, RackFace::rear};
            r.chassis = ChassisPlace{sw, 3}, r.roles = {catalogue::Role::decoder}, r.host_name = "ep-1",
            r.control = catalogue::ControlMethod::serial, r.serial = "123";
            r.sound_delay = base::Duration::from_count(64'000'000);
            r.addresses = {{PortKey{"net"}, vlan, base::Ipv4{0x0A010009}, base::MacAddress{0x020304050607}}};
        });
        b.change<Device>(sw, [&](Device& r) {
            r.bridging = {4096,
                          base::MacAddress{0x020000000001},
                          true,
                          true,
                          true,
                          "stack-1",
                          {{vlan, base::Ipv4{0x0A010002}}, {other, {}}},
                          {other},
                          {vlan},
                          1,
                          10,
                          12,
                          catalogue::SupplySet::two_redundant,
                          catalogue::PoeAllocation::by_lldp};
        });
        const auto module = types::module_sr();
        b.embed(module);
        b.embed(full_type());
        b.embed(full_display());
        b.put(PortOverride{{sw, {"s1"}},
                           "A/1",
                           module->key,
                           vlan,
                           true,
                           {other},
                           1_Gbps,
                           20000,
                           64,
                           "lag-1",
                           true,
                           true,
                           true,
                           true,
                           true,
                           true,
                           {true, PoePriority::critical, 15400_mW},
                           standards::parse_video_format("1080p59.94 4:2:2 10-bit HLG").value(),
                           standards::HdcpContent::type_1,
                           EdidPolicy{EdidWay::copied, {}, PortRef{dec, {"out"}}, {}},
                           {}});
        b.put(PortOverride{.port = {ep, {"in"}},
                           .edid = EdidPolicy{EdidWay::fixed,
                                              standards::parse_video_format("1080p60").value(),
                                              {},
                                              catalogue::AudioFormat::multichannel_pcm}});
    }
    void fill_signals() {
        b.change<Cable>(cable, [](Cable& r) {
            r.fibre = {3, 2, 1};
            r.note = "n", r.duct = "tray 1", r.agreed = model::AgreedContention{4, "IT", "2026-11-20"},
            r.progress = {true, true, true, true};
        });
        b.change<Stream>(stream, [&](Stream& r) {
            r.note = "n", r.kind = catalogue::StreamKind::usb, r.network_port = PortKey{"net"};
            r.udp_port = 6000, r.payload_octets = 1316, r.rtp = false, r.encrypted = true;
            r.audio = catalogue::AudioFormat::compressed_surround;
            r.twin = twin;
        });
        fill_essence();
        b.change<Preset>(preset, [](Preset& r) { r.number = 4, r.note = "n"; });
        b.subscribe(preset, stream, dec);
    }
    template <class Essence>
    void pack(StreamId id, std::optional<Essence> Stream::*what, const Essence& essence) {
        b.change<Stream>(id, [&](Stream& r) {
            r.payload_rate = {};
            r.*what = essence;
            if (r.sound) r.kind = catalogue::StreamKind::audio;
        });
    }
    void fill_essence() {
        using namespace standards;
        const auto another = [&] { return b.stream(ep, 1_Mbps, "239.2.1.2", vlan); };
        const auto format = parse_video_format("2160p59.94 4:2:2 12-bit HLG").value();
        pack(twin, &Stream::picture, {PictureCoding::jpeg_xs, format, Packing::general, 3500, {}, 8960});
        pack(another(), &Stream::picture, {PictureCoding::uncompressed, format, Packing::block, 0, {}, 1480});
        pack(another(), &Stream::picture, {PictureCoding::h265, format, Packing::general, 0, 40_Mbps, 1460});
        pack(another(), &Stream::sound, {{96'000, AudioCoding::am824, 6, PacketTime::us_333}});
    }
    void fill_drawing() {
        b.change<Sheet>(sheet, [](Sheet& r) { r.supplement = "s", r.paper = PaperSize::a0; });
        b.put(Place{{sheet, ep}, {10_mm, 20_mm}, true, true, {}});
        b.put(CableLine{{sheet, cable}, {{1_mm, 2_mm}, {3_mm, 4_mm}}, true, {}});
        b.put(RoomFrame{FrameId(1), sheet, room, "Frame", {5_mm, 6_mm}, 100_mm, 50_mm, {}});
        b.put(Note{NoteId(1), sheet, {7_mm, 8_mm}, "text \\ / \x7f ünï 日本", {}});
        auto wall = Wall::blank(WallId(1));
        wall.name = "Wall 1", wall.room = room, wall.columns = 3, wall.rows = 1, wall.note = "n";
        wall.gap_across = 2_mm, wall.gap_down = 1_mm, wall.tiles = {dec, std::nullopt, ep};
        b.put(wall);
        b.put(Waiver{WaiverId(1), "link_overfull", 3, {"cable:" + cable.text()}, "agreed", "lead", {}});
        b.put(Revision{RevisionId(1), 2, "B", "2025-02-03", "second issue", "design", {}});
    }
};

}  // namespace

Design full_design() {
    FullDesign full;
    full.fill_settings();
    full.fill_venue();
    full.fill_devices();
    full.fill_signals();
    full.fill_drawing();
    return full.b.design;
}

Design random_design(std::uint64_t seed, int edits) {
    const auto library = types::all();
    std::mt19937_64 random(seed);
    Design design;
    for (int step = 0; step < edits; ++step)
        if (const auto edit = random_edit(design, library, random)) apply(design, make_edit(design, *edit).value());
    return design;
}

}  // namespace streamwright::test
