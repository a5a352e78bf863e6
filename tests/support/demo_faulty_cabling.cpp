// The faulty design's faults of cabling: what a fibre loses, how it is wired, ground and mixed, leads too long for
// their channel and power that stays in the cable. Each on switches of its own, cabled to nothing else.
#include "tests/support/demo_faulty.h"

namespace streamwright::test::demo_faulty_detail {

namespace {

/// A switch on either side of a link that carries nothing.
struct Sides {
    DeviceId a, b;
};
Sides sides(Faulty& f, const std::string& type, const std::string& number) {
    const Sides both{f.device(type, "SW-" + number + "A"), f.device(type, "SW-" + number + "B")};
    f.make.configure(both.a, [](model::Device& row) { row.bridging.priority = 4096; });
    return both;
}

/// From cage to cage through a panel at either side, with these leads.
model::CableId through_panels(Faulty& f, const std::string& number, const std::string& module, const std::string& lead,
                              const std::string& fixed, int metres) {
    const auto [a, b] = sides(f, "switch-access-24", number);
    f.make.module(a, "25", module);
    f.make.module(b, "25", module);
    const auto near = f.device("panel-fibre-12", "PF-" + number + "A"),
               far = f.device("panel-fibre-12", "PF-" + number + "B");
    f.make.cable(lead, a, "25", near, "front-1");
    const auto cable = f.make.cable(fixed, near, "rear-1", far, "rear-1", metres);
    f.make.cable(lead, far, "front-1", b, "25");
    return cable;
}

void work(Faulty& f, model::CableId cable, const model::FibreWork& work) {
    f.make.run(model::SetFibreWork{cable, work});
}

/// Four joints that nobody drew, two strands that change places twice, two kinds of core.
void joints_and_kinds(Faulty& f) {
    work(f, through_panels(f, "801", "sfp-10gbase-sr", "patch-om4-2m", "fibre-om4", 60), {1, 0, 2});
    work(f, through_panels(f, "802", "sfp-10gbase-sr", "patch-om4-2m", "fibre-om4", 60), {0, 0, 0});
    work(f, through_panels(f, "803", "sfp-1000base-sx", "patch-om4-2m", "fibre-om1", 60), {1, 0, 0});
}

/// An angled lead in flat sockets.
void polish(Faulty& f) {
    const auto [a, b] = sides(f, "switch-access-24", "804");
    f.fibre(a, "25", "sfp-10gbase-lr", b, "25", "sfp-10gbase-lr", "patch-os2-apc-3m", 3);
}

/// Four lanes each way over a lead of four strands in all.
void strands(Faulty& f) {
    auto thin = *f.make.cable_type("patch-mpo-om4-3m");
    thin.key = {"patch-mpo-om4-4-strands-3m"};
    thin.name = "Fibre lead, OM4, 4 strands, MPO, 3 m";
    thin.strands = 4;
    f.make.run(model::EmbedTypes{{}, {std::make_shared<const catalogue::CableType>(thin)}});
    const auto [a, b] = sides(f, "switch-aggregation-24", "805");
    f.fibre(a, "25", "qsfp-40gbase-sr4", b, "25", "qsfp-40gbase-sr4", thin.key.text, 3);
}

/// 90 m of fixed cable leave 8 m for thin leads; these are 10 m.
void cords(Faulty& f) {
    const auto [a, b] = sides(f, "switch-access-8", "806");
    const auto near = f.device("panel-copper-24", "PC-806A"), far = f.device("panel-copper-24", "PC-806B");
    f.make.cable("patch-cat6a-5m", a, "1", near, "front-1");
    f.make.cable("copper-cat6a", near, "rear-1", far, "rear-1", 90);
    f.make.cable("patch-cat6a-5m", far, "front-1", b, "1");
}

/// A heated camera at the end of slim cable.
void far_camera(Faulty& f) {
    auto camera = *f.make.device_type("camera-ptz");
    camera.key = {"camera-heated"};
    camera.name = "PTZ camera, heated";
    for (auto& port : camera.ports)
        if (port.poe) port.poe->draw = base::Power::from_count(25'000);
    auto slim = *f.make.cable_type("copper-cat6a");
    slim.key = {"copper-slim"};
    slim.name = "Installed cable, slim, 28 AWG";
    slim.awg = 28;
    f.make.run(model::EmbedTypes{{std::make_shared<const catalogue::DeviceType>(camera)},
                                 {std::make_shared<const catalogue::CableType>(slim)}});
    const auto bridge = f.device("switch-access-24-poe", "SW-807");
    f.make.cable("copper-slim", f.device("camera-heated", "CAM-807"), "lan", bridge, "1", 90);
}

/// A picture over 8 m of plain cable, and a loudspeaker at the end of a long line.
void lines(Faulty& f) {
    auto lead = *f.make.cable_type("hdmi-5m");
    lead.key = {"hdmi-8m"};
    lead.name = "HDMI lead, 8 m";
    lead.made_length = base::Length::from_count(8'000'000);
    lead.most_length.reset();
    f.make.run(model::EmbedTypes{{}, {std::make_shared<const catalogue::CableType>(lead)}});
    f.make.cable("hdmi-8m", f.device("signage-player", "SP-808"), "hdmi-out", f.device("display-55", "DSP-808"),
                 "hdmi-in-1");
    f.make.cable("audio-line", f.device("media-player", "MP-809"), "audio-out", f.device("amplifier", "AMP-809"),
                 "audio-in-1", 3);
    f.make.cable("speaker-2x2-5", f.make.tagged("AMP-809"), "speaker-1", f.device("speaker-column", "SPK-809"),
                 "audio-in", 58);
}

}  // namespace

void cabling_faults(Faulty& f) {
    joints_and_kinds(f);
    polish(f);
    strands(f);
    cords(f);
    far_camera(f);
    lines(f);
}

void cabling_fault_sheet(Faulty& f) {
    SheetPlan cabling(f.make, f.make.sheet(7, "Faulty design", "cabling", model::PaperSize::a1));
    cabling.rows({60, 160, 260, 360}, 60,
                 {{"SW-801A", "PF-801A", "PF-801B", "SW-801B"},
                  {"SW-802A", "PF-802A", "PF-802B", "SW-802B"},
                  {"SW-803A", "PF-803A", "PF-803B", "SW-803B"}},
                 10);
    cabling.rows({480, 580, 680, 760}, 60,
                 {{"SW-804A", "MP-809", "SW-804B", ""},
                  {"SW-805A", "", "SW-805B", ""},
                  {"SW-806A", "PC-806A", "PC-806B", "SW-806B"},
                  {"SW-807", "CAM-807", "", ""},
                  {"SP-808", "DSP-808", "AMP-809", "SPK-809"}},
                 10);
    cabling.finish();
}

}  // namespace streamwright::test::demo_faulty_detail
