// The rooms of Ferrow Quay: sources with their encoders, decoders with their displays, and the cables to the switches.
#include "tests/support/ferrow_quay_parts.h"

namespace streamwright::test::ferrow_quay_parts {

namespace {

struct SourcePlan {
    std::string number, type, prefix, port, note;
    int metres;
};

struct DisplayPlan {
    std::string number, type, prefix, input;
    int metres;
};

/// Wall, projectors and monitors do not all show HDR, so the player is told to send none.
void sdr_player(Quay& quay, const std::string& source, const std::string& encoder) {
    quay.announce(encoder, "hdmi-in", "2160p60");
    quay.plays_protected(source, "hdmi-out");
}

void hall_sources(Quay& quay) {
    const std::vector<SourcePlan> plans{{"101", "pc", "PC", "hdmi-out-1", "Lectern PC", 38},
                                        {"102", "pc", "PC", "hdmi-out-1", "Panel PC", 41},
                                        {"103", "laptop-plate", "LP", "hdmi-out", "Lectern", 38},
                                        {"104", "laptop-plate", "LP", "hdmi-out", "Stage left", 46},
                                        {"105", "document-camera", "DC", "hdmi-out", "Lectern", 39},
                                        {"106", "camera-ptz", "CAM", "hdmi-out", "Audience", 52},
                                        {"107", "camera-ptz", "CAM", "hdmi-out", "Stage", 67},
                                        {"108", "media-player", "MP", "hdmi-out", "Stage left", 44}};
    for (const auto& plan : plans) {
        const auto source = plan.prefix + '-' + plan.number;
        const auto encoder = "ENC-" + plan.number;
        quay.make.device(plan.type, source, quay.hall, plan.note);
        quay.make.device("tern-encoder", encoder, quay.hall);
        quay.encode(source, plan.port, encoder, "hdmi-in", "S-" + plan.number, "239.192.1." + plan.number.substr(2),
                    plan.note);
        quay.wire(encoder, "net", "SW-N1", PortSide::odd, plan.metres);
        if (plan.type == "media-player") sdr_player(quay, source, encoder);
        if (plan.type == "camera-ptz")
            quay.make.cable("rs232", quay.make.tagged(encoder), "rs232", quay.make.tagged(source), "rs232", 3);
    }
}

/// The marquee decodes another family: two pictures are encoded again from local outputs. It takes 1080p at most, so
/// the encoders before it announce no more.
void marquee_feeds(Quay& quay) {
    const std::vector<std::tuple<std::string, std::string, std::string>> plans{
        {"109", "ENC-107", "Stage camera for the marquee"}, {"110", "ENC-101", "Lectern PC for the marquee"}};
    for (const auto& [number, from, note] : plans) {
        quay.make.device("skiff-encoder", "ENC-" + number, quay.hall, note);
        quay.announce(from, "hdmi-in", "1080p60");
        quay.encode(from, "hdmi-out", "ENC-" + number, "hdmi-in", "S-" + number, "239.192.6." + number, note);
        quay.wire("ENC-" + number, "net", "SW-N1", PortSide::odd, 48);
    }
}

void hall_displays(Quay& quay) {
    const std::vector<DisplayPlan> plans{
        {"101", "projector", "PRJ", "hdmi-in-1", 62},  {"102", "projector", "PRJ", "hdmi-in-1", 66},
        {"103", "projector", "PRJ", "hdmi-in-1", 71},  {"104", "wall-tile-55", "WT", "hdmi-in", 55},
        {"105", "wall-tile-55", "WT", "hdmi-in", 55},  {"106", "wall-tile-55", "WT", "hdmi-in", 56},
        {"107", "wall-tile-55", "WT", "hdmi-in", 56},  {"108", "display-24", "MON", "hdmi-in", 40},
        {"109", "display-24", "MON", "hdmi-in", 47},   {"110", "display-55", "DSP", "hdmi-in-1", 50},
        {"111", "display-55", "DSP", "hdmi-in-1", 28}, {"112", "display-55", "DSP", "hdmi-in-1", 31}};
    for (const auto& plan : plans) {
        const auto display = plan.prefix + '-' + plan.number;
        const auto decoder = "DEC-" + plan.number;
        quay.make.device("tern-decoder", decoder, quay.hall);
        quay.make.device(plan.type, display, quay.hall);
        quay.decode(decoder, display, plan.input);
        quay.wire(decoder, "net", "SW-N1", PortSide::even, plan.metres);
        if (plan.type == "projector")
            quay.make.cable("rs232", quay.make.tagged(decoder), "rs232", quay.make.tagged(display), "rs232", 4);
    }
}

/// Four panels with bezels of 0.9 mm stand edge to edge.
void hall_wall(Quay& quay) {
    auto wall = model::Wall::blank(quay.make.fresh<model::WallId>());
    wall.name = "Stage wall";
    wall.room = quay.hall;
    wall.gap_across = wall.gap_down = base::Length::from_count(1800);
    for (const char* tag : {"WT-104", "WT-105", "WT-106", "WT-107"}) wall.tiles.emplace_back(quay.make.tagged(tag));
    wall.note = "Hung over the stage; conference shows two pictures above and two below";
    quay.make.run(model::SetWall{wall});
}

/// Those in the last row must read what stands on the image.
void viewed(Quay& quay, model::RoomId id, int farthest_dm, int element_percent) {
    auto row = *quay.make.design().rooms.find(id);
    row.farthest_viewer = base::Length::from_count(farthest_dm * 100'000);
    row.viewing = standards::ViewingCategory::basic;
    row.element_height = standards::ElementHeight::from_count(element_percent * 1000);
    quay.make.run(model::AddRows{{row}});
}

void hall_sound(Quay& quay) {
    const auto amplifier = quay.make.device("amplifier", "AMP-101", quay.hall, "Under the stage");
    quay.make.cable("audio-line", quay.make.tagged("DEC-101"), "audio-out", amplifier, "audio-in-1", 18);
    for (const char* number : {"1", "2"})
        quay.make.cable("speaker-2x2-5", amplifier, std::string("speaker-") + number,
                        quay.make.device("speaker-column", std::string("SPK-10") + number, quay.hall), "audio-in", 18);
    for (const char* number : {"108", "109"}) {
        const auto speaker = quay.make.device("speaker-active", std::string("SPK-") + number, quay.hall);
        quay.make.cable("audio-line", quay.make.tagged(std::string("DEC-") + number), "audio-out", speaker, "audio-in",
                        6);
    }
}

struct SeminarPlan {
    std::string panel, bridge;
    int metres;
    bool extender;
};

SeminarPlan seminar_plan(int number) {
    const bool first_half = number <= 3;
    return {first_half ? "PC-S2" : "PC-S3", first_half ? "SW-S2" : "SW-S3", 24 + 7 * number, number >= 5};
}

void seminar_sources(Quay& quay, int number, model::RoomId room, const SeminarPlan& plan) {
    auto& make = quay.make;
    const auto stem = "2" + std::to_string(number);
    make.device("pc", "PC-" + stem + "1", room, "Lectern PC");
    const bool plate_chosen = number != 6;  // the plate of Seminar 6 is not yet chosen
    if (plate_chosen) make.device("laptop-plate", "LP-" + stem + "2", room, "Lectern");
    for (const std::string end : {"1", "2"}) {
        const auto encoder = "ENC-" + stem + end;
        const auto group = "239.192.2." + std::to_string(number) + end;
        make.device("skiff-encoder", encoder, room);
        if (end == "1")
            quay.encode("PC-" + stem + end, "hdmi-out-1", encoder, "hdmi-in", "S-" + stem + end, group, "Lectern PC");
        else if (plate_chosen)
            quay.encode("LP-" + stem + end, "hdmi-out", encoder, "hdmi-in", "S-" + stem + end, group, "Laptop");
        else
            quay.encode_later(encoder, "S-" + stem + end, group, "Laptop");
        quay.wire_by_panel(encoder, "net", plan.panel, plan.bridge, PortSide::odd, plan.metres);
    }
}

void seminar_displays(Quay& quay, int number, model::RoomId room, const SeminarPlan& plan) {
    auto& make = quay.make;
    const auto stem = "2" + std::to_string(number);
    const std::vector<DisplayPlan> plans{{"1", "display-86", "DSP", "hdmi-in-1", plan.metres + 6},
                                         {"2", "display-55", "DSP", "hdmi-in-1", plan.metres + 9},
                                         {"3", "display-24", "MON", "hdmi-in", plan.metres}};
    for (const auto& each : plans) {
        const auto display = each.prefix + '-' + stem + each.number;
        const auto decoder = "DEC-" + stem + each.number;
        make.device("skiff-decoder", decoder, room);
        make.device(each.type, display, room);
        quay.decode(decoder, display, each.input);
        quay.wire_by_panel(decoder, "net", plan.panel, plan.bridge, PortSide::even, each.metres);
    }
    const auto panel = make.device("touch-panel", "TP-" + stem + "1", room);
    quay.control_address(panel);
    std::optional<int> metres = plan.metres;
    if (number == 6) metres.reset();  // not yet measured
    const auto port = quay.wire_by_panel("TP-" + stem + "1", "lan", plan.panel, plan.bridge, PortSide::even, metres);
    quay.set_vlan(plan.bridge, port, quay.control_vlan);
}

/// The older way from the lectern to the large display, kept as it was found.
void seminar_extender(Quay& quay, int number, model::RoomId room) {
    auto& make = quay.make;
    const auto stem = "2" + std::to_string(number);
    const auto plate = make.device("laptop-plate", "LP-" + stem + "3", room, "Lectern, older plate");
    const auto sender = make.device("extender-sender", "TX-" + stem + "1", room);
    const auto receiver = make.device("extender-receiver", "RX-" + stem + "1", room);
    make.cable("hdmi-2m", plate, "hdmi-out", sender, "hdmi-in");
    make.cable("extender-cat6a", sender, "link", receiver, "link", 18 + number);
    make.cable("hdmi-2m", receiver, "hdmi-out", make.tagged("DSP-" + stem + "1"), "hdmi-in-2");
}

void board_endpoint(Quay& quay, const std::string& tag, catalogue::Role role, const std::string& note) {
    auto& make = quay.make;
    const auto endpoint = make.device("basalt-endpoint", tag, quay.board, note);
    make.role(endpoint, role);
    make.module(endpoint, "net", "sfp-10gbase-sr");
    const auto bridge = make.tagged("SW-N2");
    const auto port = quay.next_port(bridge, role == catalogue::Role::encoder ? PortSide::odd : PortSide::even);
    make.module(bridge, port, "sfp-10gbase-sr");
    const auto fibre = make.cable("fibre-om4", endpoint, "net", bridge, port, 58);
    make.run(model::SetFibreWork{fibre, {1, 0, 0}});
}

void foyer_player(Quay& quay, const std::string& number, int slot) {
    auto& make = quay.make;
    const auto player = make.device("media-player", "MP-40" + number, quay.north, "Signage loop " + number);
    make.mount(player, quay.north_b, 24 + slot);
    const auto card = make.device("loom-encoder-card", "ENC-40" + number, quay.north);
    make.slot(card, make.tagged("CH-401"), slot);
    quay.encode("MP-40" + number, "hdmi-out", "ENC-40" + number, "hdmi-in-1", "S-40" + number, "239.192.4." + number,
                "Signage loop " + number);
    quay.announce("ENC-40" + number, "hdmi-in-1", "2160p30");  // the foyer's receivers take no more
    const auto bridge = make.tagged("SW-N3");
    make.cable("patch-cat6a-3m", card, "net", bridge, quay.next_port(bridge, PortSide::odd));
}

/// Six LED cabinets over the welcome desk on one data output: 345,600 of its 650,000 pixels.
void foyer_banner(Quay& quay) {
    auto& make = quay.make;
    const auto player = make.device("signage-player", "SP-430", quay.foyer, "Welcome banner");
    const auto processor = make.device("led-processor", "LED-430", quay.foyer, "In the welcome desk");
    make.cable("hdmi-2m", player, "hdmi-out", processor, "hdmi-in-1");
    quay.wire_by_panel("LED-430", "lan", "PC-N3", "SW-N3", PortSide::odd, 64);
    quay.media_address(processor);
    auto wall = model::Wall::blank(make.fresh<model::WallId>());
    wall.name = "Welcome banner";
    wall.room = quay.foyer;
    wall.columns = 3;
    auto before = model::PortRef{processor, {"data-1"}};
    for (int n = 1; n <= 6; ++n) {
        const auto cabinet = make.device("led-cabinet", "LEDC-43" + std::to_string(n), quay.foyer);
        make.cable("copper-cat6a", before.device, before.port.text, cabinet, "data-in", n == 1 ? 6 : 2);
        before = {cabinet, {"data-out"}};
        wall.tiles.emplace_back(cabinet);
    }
    make.run(model::SetWall{wall});
}

}  // namespace

void quay_hall(Quay& quay) {
    hall_sources(quay);
    marquee_feeds(quay);
    hall_displays(quay);
    hall_wall(quay);
    hall_sound(quay);
    for (const char* pc : {"PC-101", "PC-102"})
        quay.set_vlan("SW-N1", quay.wire(pc, "lan", "SW-N1", PortSide::odd, 40), quay.corporate);
}

void seminar_rooms(Quay& quay) {
    for (int number = 1; number <= 6; ++number) {
        const auto room = quay.seminars[static_cast<std::size_t>(number - 1)];
        const auto plan = seminar_plan(number);
        seminar_sources(quay, number, room, plan);
        seminar_displays(quay, number, room, plan);
        viewed(quay, room, 80, 4);
        if (plan.extender) seminar_extender(quay, number, room);
    }
}

void board_room(Quay& quay) {
    using catalogue::Role;
    auto& make = quay.make;
    viewed(quay, quay.board, 70, 4);
    make.device("pc", "PC-301", quay.board, "Chair's PC");
    make.device("pc", "PC-302", quay.board, "Secretary's PC");
    make.device("laptop-plate", "LP-303", quay.board, "Table");
    make.cable("usb-a-c-2m", make.tagged("PC-301"), "usb-2", make.device("camera-usb", "CAM-301", quay.board), "usb");
    const std::vector<std::tuple<std::string, std::string, std::string, std::string>> sources{
        {"1", "PC-301", "hdmi-out-1", "Chair's PC"},
        {"2", "PC-302", "hdmi-out-1", "Secretary's PC"},
        {"3", "LP-303", "hdmi-out", "Table laptop"}};
    for (const auto& [end, source, port, note] : sources) {
        board_endpoint(quay, "EP-30" + end, Role::encoder, note);
        quay.encode(source, port, "EP-30" + end, "hdmi-in", "S-30" + end, "239.192.3." + end, note);
        if (end != "3") make.cable("usb-a-b-2m", make.tagged(source), "usb-1", make.tagged("EP-30" + end), "usb-b");
    }
    const std::vector<DisplayPlan> displays{{"311", "display-86", "DSP", "hdmi-in-1", 0},
                                            {"312", "display-86", "DSP", "hdmi-in-1", 0},
                                            {"313", "display-24", "MON", "hdmi-in", 0},
                                            {"314", "display-24", "MON", "hdmi-in", 0}};
    for (const auto& plan : displays) {
        board_endpoint(quay, "EP-" + plan.number, Role::decoder, "");
        const auto display = make.device(plan.type, plan.prefix + '-' + plan.number, quay.board);
        quay.decode("EP-" + plan.number, plan.prefix + '-' + plan.number, plan.input);
        const auto endpoint = make.tagged("EP-" + plan.number);
        if (plan.prefix == "DSP") {
            make.cable("usb-a-b-2m", endpoint, "usb-a-1", display, "usb-touch");
        } else {
            const auto desk = make.device("keyboard-mouse", "KM-" + plan.number, quay.board);
            make.cable("usb-a-b-2m", endpoint, "usb-a-1", desk, "usb");
        }
    }
}

void foyer(Quay& quay) {
    auto& make = quay.make;
    const auto chassis = make.device("loom-chassis", "CH-401", quay.north);
    make.mount(chassis, quay.north_b, 30);
    for (int slot = 1; slot <= 4; ++slot) foyer_player(quay, std::to_string(slot), slot);
    for (int n = 11; n <= 24; ++n) {
        const auto number = "4" + std::to_string(n);
        const bool corridor = n > 22;
        const auto room = corridor ? quay.control : quay.foyer;
        make.device("loom-receiver", "DEC-" + number, room, corridor ? "Corridor outside" : "");
        make.device("display-55", "DSP-" + number, room);
        quay.decode("DEC-" + number, "DSP-" + number, "hdmi-in-1");
        quay.wire_by_panel("DEC-" + number, "net", "PC-N3", "SW-N3", corridor ? PortSide::odd : PortSide::even,
                           22 + 3 * (n - 10));
    }
    foyer_banner(quay);
}

void control_room(Quay& quay) {
    auto& make = quay.make;
    const std::vector<SourcePlan> sources{{"501", "pc", "PC", "hdmi-out-1", "Captions", 9},
                                          {"502", "media-player", "MP", "hdmi-out", "Playback", 4}};
    for (const auto& plan : sources) {
        const auto source = plan.prefix + '-' + plan.number;
        make.device(plan.type, source, quay.control, plan.note);
        make.device("tern-encoder", "ENC-" + plan.number, quay.control);
        quay.encode(source, plan.port, "ENC-" + plan.number, "hdmi-in", "S-" + plan.number,
                    "239.192.5." + plan.number.substr(2), plan.note);
        quay.wire("ENC-" + plan.number, "net", "SW-CR", PortSide::odd, plan.metres);
        if (plan.type == "media-player") sdr_player(quay, source, "ENC-" + plan.number);
    }
    for (const std::string number : {"511", "512", "513", "514", "521", "522"}) {
        const bool seminar_monitor = number[1] == '2';
        make.device(seminar_monitor ? "skiff-decoder" : "tern-decoder", "DEC-" + number, quay.control);
        quay.wire("DEC-" + number, "net", "SW-CR", PortSide::even, 12);
        if (number == "522") continue;  // a spare without a monitor
        if (number == "513" || number == "514") {
            quay.media_address(make.tagged("DEC-" + number));  // both on one monitor, below
            continue;
        }
        make.device("display-24", "MON-" + number, quay.control);
        quay.decode("DEC-" + number, "MON-" + number, "hdmi-in");
    }
    quay.media_address(make.tagged("DEC-522"));
    const auto windows = make.device("window-processor", "WP-501", quay.control, "Two pictures on one monitor");
    make.mount(windows, quay.control_rack, 12);
    make.cable("hdmi-2m", make.tagged("DEC-513"), "hdmi-out", windows, "hdmi-in-1");
    make.cable("hdmi-2m", make.tagged("DEC-514"), "hdmi-out", windows, "hdmi-in-2");
    make.cable("rs232", make.tagged("DEC-513"), "rs232", windows, "rs232", 3);
    make.cable("hdmi-2m", windows, "hdmi-out-1", make.device("display-24", "MON-513", quay.control), "hdmi-in");
    const auto processor = make.device("control-processor", "CP-501", quay.control);
    make.mount(processor, quay.control_rack, 18);
    quay.control_address(processor);
    quay.set_vlan("SW-CR", quay.wire("CP-501", "lan", "SW-CR", PortSide::odd, 3), quay.control_vlan);
    const auto web = make.device("web-stream-encoder", "WEB-501", quay.control, "Public stream of the stage");
    make.mount(web, quay.control_rack, 16);
    make.address(web, quay.corporate, "10.20.8.21");
    make.cable("sdi", make.tagged("CAM-107"), "sdi-out", web, "sdi-in", 58);
    using namespace base::literals;
    make.packed_picture(
        web, "S-551", "239.192.5.51",
        {standards::PictureCoding::h264, standards::parse_video_format("1080p60 4:2:0 8-bit").value(), {}, 0, 8_Mbps},
        "Public stream");
    quay.set_vlan("SW-CR", quay.wire("WEB-501", "net", "SW-CR", PortSide::odd, 3), quay.corporate);
    const auto gateway = make.device("gateway-tern-skiff", "GW-501", quay.control, "The hall's camera for the marquee");
    make.mount(gateway, quay.control_rack, 10);
    quay.encode_later("GW-501", "S-552", "239.192.5.52", "Hall camera for the marquee");
    quay.wire("GW-501", "net", "SW-CR", PortSide::odd, 3);
}

/// The operator speaks to the marquee over network audio, apart from any picture.
void announcements(Quay& quay) {
    auto& make = quay.make;
    const auto microphone = make.device("microphone-wireless", "MIC-541", quay.control, "Operator");
    make.mount(microphone, quay.control_rack, 14);
    const auto desk = make.device("audio-network-interface", "NA-541", quay.control, "Operator's desk");
    const auto tent = make.device("audio-network-interface", "NA-615", quay.marquee);
    const auto speaker = make.device("speaker-active", "SPK-615", quay.marquee, "Announcements");
    make.cable("audio-xlr-5m", microphone, "audio-out-1", desk, "in-1");
    make.cable("audio-xlr-5m", tent, "out-1", speaker, "audio-in");
    quay.wire("NA-541", "net", "SW-CR", PortSide::odd, 8);
    quay.wire("NA-615", "net", "SW-MQ", PortSide::even, 30);
    quay.media_address(desk);
    quay.media_address(tent);
    quay.control_address(microphone);
    quay.set_vlan("SW-CR", quay.wire("MIC-541", "lan", "SW-CR", PortSide::odd, 3), quay.control_vlan);
    const standards::AudioStream mono{.channels = 1};
    const auto speech = make.sound_flow(desk, "S-541", "239.192.5.41", mono, "Announcements");
    for (const auto preset : {quay.lecture, quay.conference, quay.evening}) make.show(preset, tent, speech);
}

void marquee(Quay& quay) {
    auto& make = quay.make;
    make.device("camera-ptz", "CAM-601", quay.marquee, "Marquee camera");
    make.device("laptop-plate", "LP-602", quay.marquee, "Marquee lectern");
    for (const std::string number : {"601", "602"}) {
        make.device("skiff-encoder", "ENC-" + number, quay.marquee);
        quay.encode((number == "601" ? "CAM-" : "LP-") + number, "hdmi-out", "ENC-" + number, "hdmi-in", "S-" + number,
                    "239.192.6." + number.substr(2), number == "601" ? "Marquee camera" : "Marquee lectern");
        quay.wire("ENC-" + number, "net", "SW-MQ", PortSide::odd, 22);
    }
    const std::vector<DisplayPlan> displays{{"611", "projector", "PRJ", "hdmi-in-1", 34},
                                            {"612", "display-55", "DSP", "hdmi-in-1", 18},
                                            {"613", "display-55", "DSP", "hdmi-in-1", 27},
                                            {"614", "display-24", "MON", "hdmi-in", 20}};
    for (const auto& plan : displays) {
        const auto display = plan.prefix + '-' + plan.number;
        make.device("skiff-decoder", "DEC-" + plan.number, quay.marquee);
        make.device(plan.type, display, quay.marquee);
        quay.decode("DEC-" + plan.number, display, plan.input);
        quay.wire("DEC-" + plan.number, "net", "SW-MQ", PortSide::even, plan.metres);
    }
    announcements(quay);
    for (const std::string number : {"612", "613"}) {
        const auto speaker = make.device("speaker-active", "SPK-" + number, quay.marquee);
        make.cable("audio-jack-xlr", make.tagged("DSP-" + number), "audio-out", speaker, "audio-in", 8);
    }
}

}  // namespace streamwright::test::ferrow_quay_parts
