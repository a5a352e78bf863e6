#include "tests/support/demo_designs.h"
#include "tests/support/demo_sheets.h"

namespace streamwright::test {

Demo huddle_room() {
    DemoMaker make(0x4DD1);
    const auto room = make.room("2.12", "Huddle room", "2");
    const auto av = make.vlan(10, "AV media", model::VlanPurpose::av, "10.30.0.0/24");
    model::Settings settings;
    settings.title = "Huddle room";
    settings.owner = "Ferrow Quay Conference Centre";
    settings.department = "AV design";
    settings.number = "FQ-AV-0212";
    settings.status = "in preparation";
    settings.created_by = "design";
    settings.usual_vlan = av;
    settings.security = {true, true, "2028-06-30", true};
    make.run(model::SetSettings{settings});
    make.revision(1, "A", "2026-11-24", "First issue");

    const auto pc = make.device("pc", "PC-001", room, "Table PC");
    const auto encoder = make.device("tern-encoder", "ENC-001", room);
    const auto bridge = make.device("switch-access-8-poe", "SW-001", room);
    const auto decoder = make.device("tern-decoder", "DEC-001", room);
    const auto display = make.device("display-55", "DSP-001", room);
    make.address(bridge, av, "10.30.0.2");
    make.address(encoder, av, "10.30.0.11");
    make.address(decoder, av, "10.30.0.12");
    make.configure(bridge, [&](model::Device& row) { row.bridging.queriers = {{av, base::parse_ipv4("10.30.0.1")}}; });
    make.cable("hdmi-2m", pc, "hdmi-out-1", encoder, "hdmi-in");
    make.cable("usb-a-b-2m", pc, "usb-1", encoder, "usb-host");
    make.cable("copper-cat6", encoder, "net", bridge, "1", 9);
    make.cable("copper-cat6", decoder, "net", bridge, "2", 14);
    make.cable("hdmi-2m", decoder, "hdmi-out", display, "hdmi-in-1");
    make.cable("rs232", decoder, "rs232", display, "rs232", 2);

    const auto picture = make.stream(encoder, "S-1", "239.192.12.1", "Table PC");
    make.show(make.preset(1, "Meeting"), decoder, picture);
    make.preset(2, "All off");

    SheetPlan plan(make, make.sheet(1, "Huddle room", "signal flow, 2.12", model::PaperSize::a3));
    plan.rows({40, 115, 195, 270, 345}, 70, {{"PC-001", "ENC-001", "SW-001", "DEC-001", "DSP-001"}});
    plan.frame(room, "", {"PC-001", "ENC-001", "SW-001", "DEC-001", "DSP-001"});
    plan.finish();
    return std::move(make).done();
}

}  // namespace streamwright::test
