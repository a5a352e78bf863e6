// Deliberately faulty: every rule finds one thing, and one only. Each function makes the faults of one kind on plates
// of its own.
#include "tests/support/demo_faulty.h"

#include <utility>

namespace streamwright::test {

namespace demo_faulty_detail {

void main_switches(Faulty& f) {
    const auto main = f.device("switch-access-24-poe", "SW-901");
    f.make.configure(main, [&](model::Device& row) {
        row.bridging.priority = 4096;
        row.bridging.queriers = {{f.av, base::parse_ipv4("10.90.0.1")}};
    });
    f.device("switch-access-24-poe", "SW-902");
    f.device("switch-access-24-poe", "SW-903");
    f.device("switch-access-24", "SW-904");
    f.device("switch-access-24", "SW-905");
    f.device("switch-office-16", "SW-906");
    // Far from the one encoder of its VLAN, whose stream nobody beside it shows.
    f.make.configure(f.device("switch-access-8-poe", "SW-907"), [&](model::Device& row) {
        row.bridging.queriers = {{f.third, base::parse_ipv4("10.90.2.1")}};
    });
}

/// Trunks: too slow for what flows toward the querier, for what might be routed, too long, and lit two ways.
void trunks(Faulty& f) {
    const auto main = f.make.tagged("SW-901");
    const auto agreed =
        f.fibre(main, "25", "sfp-1000base-sx", f.make.tagged("SW-902"), "25", "sfp-1000base-sx", "fibre-om4", 60);
    // Made without asking what is shown across it, and what flows across it unasked.
    f.make.run(model::AgreeContention{agreed, model::AgreedContention{1, "site", "2026-11-20"}});
    f.fibre(main, "26", "sfp-1000base-sx", f.make.tagged("SW-903"), "25", "sfp-1000base-sx", "fibre-om4", 60);
    f.fibre(f.make.tagged("SW-902"), "26", "sfp-10gbase-sr", f.make.tagged("SW-904"), "25", "sfp-10gbase-sr",
            "fibre-om3", 340);
    f.fibre(f.make.tagged("SW-903"), "26", "sfp-10gbase-sr", f.make.tagged("SW-905"), "25", "sfp-10gbase-lr",
            "fibre-om4", 40);
    f.make.cable("copper-cat6a", main, "23", f.make.tagged("SW-907"), "8", 20);
}

void overfull(Faulty& f) {
    const auto main = f.make.tagged("SW-901");
    f.encoder("tern-encoder", "901", "239.192.9.1", f.make.tagged("SW-902"), "1");
    f.encoder("tern-encoder", "902", "239.192.9.2", f.make.tagged("SW-902"), "2");
    f.decoder("tern-decoder", "901", main, "1");
    f.decoder("tern-decoder", "902", main, "2");
    f.show("901", "901");
    f.show("902", "902");
    f.encoder("tern-encoder", "903", "239.192.9.3", main, "3");
    f.decoder("tern-decoder", "903", f.make.tagged("SW-903"), "1");
    f.decoder("tern-decoder", "904", f.make.tagged("SW-903"), "2");
    f.show("903", "903");
    // While this preset comes, one decoder's port carries the stream that it leaves and the one that it takes.
    f.make.show(f.make.preset(2, "After the break"), f.make.tagged("DEC-901"), f.streams.at("903"));
}

void slow_ports(Faulty& f) {
    const auto main = f.make.tagged("SW-901");
    f.encoder("skiff-encoder", "905", "239.192.9.5", main, "5");
    f.make.configure_port(main, "5", [](PortOverride& row) { row.rate_limit = base::BitRate::from_count(100000000); });
    f.decoder("tern-decoder", "906", main, "6");
    f.make.configure_port(main, "6", [](PortOverride& row) { row.rate_limit = base::BitRate::from_count(100000000); });
    f.decoder("tern-decoder", "907", main, "7", 112);
    f.decoder("skiff-decoder", "908", main, "21");  // shown nothing yet, and its port set to less than it may need
    f.make.configure_port(main, "21", [](PortOverride& row) { row.rate_limit = base::BitRate::from_count(100000000); });
}

void vlans(Faulty& f) {
    const auto main = f.make.tagged("SW-901");
    const auto near = f.make.tagged("SW-902");
    const auto far = f.make.tagged("SW-903");
    const auto in = [&](DeviceId bridge, const std::string& port, model::VlanId vlan) {
        f.make.configure_port(bridge, port, [&](PortOverride& row) { row.untagged = vlan; });
    };
    f.encoder("skiff-encoder", "911", "239.192.9.11", near, "11");
    f.decoder("skiff-decoder", "911", near, "12");
    in(near, "11", f.second);
    in(near, "12", f.second);
    f.show("911", "911");
    f.encoder("skiff-encoder", "913", "239.192.9.13", main, "13");
    f.decoder("skiff-decoder", "913", far, "13");
    in(main, "13", f.third);
    in(far, "13", f.third);
    f.make.configure_port(main, "26", [&](PortOverride& row) { row.tagged = {f.third}; });
    f.make.configure_port(main, "23", [&](PortOverride& row) { row.tagged = {f.third}; });
    f.make.configure_port(f.make.tagged("SW-907"), "8", [&](PortOverride& row) { row.tagged = {f.third}; });
    f.show("913", "913");
    in(f.make.tagged("SW-904"), "25", f.second);
}

void unreachable(Faulty& f) {
    const auto lone = f.make.tagged("SW-906");
    // A card has its supply in the chassis: the switch gives no power over its ports.
    f.encoder("loom-encoder-card", "915", "239.192.9.15", lone, "1", "hdmi-in-1");
    f.decoder("loom-receiver", "915", f.make.tagged("SW-901"), "15");
    f.show("915", "915");
}

/// 200 Mb/s, as the encoder sends anyway, but of another coding.
void pack_h264(Faulty& f, model::StreamId id) {
    auto row = *f.make.design().streams.find(id);
    row.picture = model::PictureEssence{.coding = standards::PictureCoding::h264,
                                        .format = standards::parse_video_format("1080p60 4:2:0 8-bit").value(),
                                        .rate = std::exchange(row.payload_rate, {})};
    f.make.run(model::SetStream{row});
}

void groups(Faulty& f) {
    const auto near = f.make.tagged("SW-902");
    f.encoder("skiff-encoder", "921", "239.192.9.21", near, "3");
    f.encoder("skiff-encoder", "922", "239.192.9.21", near, "4");
    f.variant("skiff-encoder", "light-encoder", "Encoder, compact, JPEG XS",
              [](auto& type) { type.codec->packed.codings = {standards::PictureCoding::jpeg_xs}; });
    f.encoder("light-encoder", "923", "239.64.9.21", near, "5");
    pack_h264(f, f.streams.at("923"));
    f.encoder("web-stream-encoder", "924", "224.0.0.24", near, "6");
    // Such groups go to every port of their VLAN: kept away from the pictures.
    f.make.configure_port(near, "6", [&](PortOverride& row) { row.untagged = f.second; });
    f.make.address(f.make.tagged("ENC-921"), f.av, "10.90.0.21");
    f.make.address(f.make.tagged("ENC-922"), f.av, "10.90.0.21");
    f.make.address(f.make.tagged("ENC-923"), f.av, "10.91.0.23");
}

void roles(Faulty& f) {
    const auto both = f.device("basalt-endpoint", "EP-931");
    f.make.configure(both, [](model::Device& row) { row.roles = {Role::encoder, Role::decoder}; });
    const auto plate = f.device("laptop-plate", "LP-931");
    f.make.cable("hdmi-2m", plate, "hdmi-out", both, "hdmi-in");
    const auto monitor = f.device("display-24", "MON-931");
    f.make.cable("hdmi-2m", both, "hdmi-out", monitor, "hdmi-in");

    const auto decodes = f.device("basalt-endpoint", "EP-932");
    f.make.role(decodes, Role::encoder);
    const auto stream = f.make.stream(decodes, "S-932", "239.192.9.32");
    f.make.show(f.preset, both, stream);
    f.make.role(decodes, Role::decoder);
    f.make.cable("hdmi-2m", decodes, "hdmi-out", f.device("display-24", "MON-932"), "hdmi-in");

    const auto main = f.make.tagged("SW-901");
    f.fibre(both, "net", "sfp-10gbase-sr", main, "27", "sfp-10gbase-sr", "fibre-om4", 40);
    f.fibre(decodes, "net", "sfp-10gbase-sr", main, "28", "sfp-10gbase-sr", "fibre-om4", 40);

    f.decoder("skiff-decoder", "933", main, "17");
    f.show("933", "903");
}

void signals(Faulty& f) {
    auto& make = f.make;
    const auto main = make.tagged("SW-901");
    const auto pc = f.device("pc", "PC-941");
    const auto player = f.device("media-player", "MP-941");
    make.cable("hdmi-2m", pc, "hdmi-out-1", player, "hdmi-out");
    make.cable("copper-cat6a", f.device("extender-sender", "TX-941"), "link", main, "18", 25);
    make.cable("rs232", f.device("camera-ptz", "CAM-941"), "rs232", make.tagged("TX-941"), "rs232", 22);
    make.cable("copper-cat6a", f.device("tern-encoder", "ENC-941"), "net", main, "19", 20);
    make.cable("copper-cat6a", f.device("tern-decoder", "DEC-941"), "net", main, "19", 20);
    const auto receiver = f.device("loom-receiver", "DEC-942");
    make.cable("copper-cat6a", receiver, "net", main, "20");
    make.cable("hdmi-2m", receiver, "hdmi-out", f.device("display-24", "MON-942"), "hdmi-in");
    make.run(model::Connect{make.fresh<model::CableId>(),
                            make.cable_type("hdmi-5m"),
                            model::PortRef{pc, {"hdmi-out-2"}},
                            std::nullopt,
                            std::nullopt,
                            "",
                            std::nullopt,
                            {}});
    make.run(model::Rename{make.tagged("MON-942"), "MON-933", std::nullopt});
}

/// A type that loses a port when its copy is refreshed leaves a cable's end without a port.
void lost_port(Faulty& f) {
    const auto type = f.make.device_type("signage-player");
    auto older = *type;
    older.ports.push_back(*older.find_port({"hdmi-out"}));
    older.ports.back().key = {"hdmi-out-2"};
    f.make.run(model::EmbedTypes{{std::make_shared<const catalogue::DeviceType>(older)}, {}});
    const auto player = f.device("signage-player", "SP-951");
    f.make.cable("hdmi-2m", player, "hdmi-out-2", f.device("display-55", "DSP-951"), "hdmi-in-1");
    f.make.run(model::EmbedTypes{{type}, {}});
}

void power(Faulty& f) {
    const auto small = f.make.tagged("SW-907");
    // Of a family whose one encoder is out of reach: no routing can load the trunk.
    for (const std::string n : {"1", "2", "3", "4"}) f.decoder("loom-receiver", "96" + n, small, n);
    f.make.cable("copper-cat6a", f.device("camera-ptz", "CAM-965"), "lan", small, "5", 25);
}

void sheets(Faulty& f) {
    SheetPlan network(f.make, f.make.sheet(1, "Faulty design", "network", model::PaperSize::a1));
    network.put("SW-901", 435, 60);
    network.rows({60, 130, 250}, 60,
                 {{"LP-901", "ENC-901", "SW-902"},
                  {"LP-902", "ENC-902"},
                  {"LP-911", "ENC-911"},
                  {"LP-921", "ENC-921"},
                  {"LP-922", "ENC-922"},
                  {"LP-923", "ENC-923"},
                  {"LP-924", "ENC-924"}},
                 10);
    for (int n = 3; n <= 5; ++n) network.put("SW-90" + std::to_string(n), 555, 60 + 110 * (n - 3), true);
    network.rows({665, 745}, 60, {{"DEC-903", "MON-903"}, {"DEC-904", "MON-904"}, {"DEC-913", "MON-913"}}, 10);
    network.put("DEC-911", 270, 240);
    network.put("MON-911", 370, 240);
    network.finish();

    SheetPlan ends(f.make, f.make.sheet(2, "Faulty design", "endpoints and signals", model::PaperSize::a1));
    ends.rows({60, 140}, 60,
              {{"LP-903", "ENC-903"},
               {"LP-905", "ENC-905"},
               {"LP-913", "ENC-913"},
               {"LP-915", "ENC-915"},
               {"LP-931", "EP-931"},
               {"", "EP-932"},
               {"PC-941", "MP-941"},
               {"", "ENC-941"}},
              10);
    ends.put("SW-906", 275, 60);
    ends.put("SW-907", 275, 160);
    ends.put("CAM-965", 275, 250);
    ends.put("TX-941", 275, 310);
    ends.put("MON-931", 275, 370);
    ends.put("MON-932", 275, 400);
    ends.rows({405, 485}, 60,
              {{"DEC-901", "MON-901"},
               {"DEC-902", "MON-902"},
               {"DEC-906", "MON-906"},
               {"DEC-907", "MON-907"},
               {"DEC-908", "MON-908"},
               {"DEC-915", "MON-915"},
               {"DEC-933", "MON-933"},
               {"DEC-941", ""},
               {"DEC-942", "MON-942"}},
              10);
    ends.rows({605, 685}, 60,
              {{"DEC-961", "MON-961"},
               {"DEC-962", "MON-962"},
               {"DEC-963", "MON-963"},
               {"DEC-964", "MON-964"},
               {"CAM-941", ""},
               {"SP-951", "DSP-951"}},
              10);
    ends.finish();
}

}  // namespace demo_faulty_detail

Demo faulty() {
    using namespace demo_faulty_detail;
    DemoMaker make(0xFA17);
    Faulty f(make);
    model::Settings settings;
    settings.title = "Faulty on purpose";
    settings.department = "AV design";
    settings.number = "FQ-AV-0901";
    settings.status = "in preparation";
    settings.created_by = "design";
    settings.usual_vlan = f.av;
    settings.robustness = 1;                       // one lost report is enough
    settings.security.port_access_control = true;  // and no day on which the certificates expire
    settings.security.account_directory = false;
    make.run(model::SetSettings{settings});
    make.revision(1, "A", "2026-11-24", "One fault of every kind");
    main_switches(f);
    trunks(f);
    overfull(f);
    slow_ports(f);
    vlans(f);
    unreachable(f);
    groups(f);
    roles(f);
    signals(f);
    lost_port(f);
    power(f);
    signal_faults(f);
    venue_faults(f);
    tree_faults(f);
    stream_faults(f);
    cabling_faults(f);
    picture_faults(f);
    sound_faults(f);
    wall_faults(f);
    sheets(f);
    signal_fault_sheet(f);
    venue_fault_sheet(f);
    tree_fault_sheet(f);
    stream_fault_sheet(f);
    cabling_fault_sheet(f);
    picture_fault_sheet(f);
    sound_fault_sheet(f);
    wall_fault_sheet(f);
    return std::move(make).done();
}

}  // namespace streamwright::test
