// The faulty design's faults of walls of displays and of LED, and of images too small, on a sheet of their own.
#include "tests/support/demo_faulty.h"

namespace streamwright::test::demo_faulty_detail {

namespace {

model::Wall wall_of(Faulty& f, const std::string& name, const std::vector<std::string>& tags) {
    auto wall = model::Wall::blank(f.make.fresh<model::WallId>());
    wall.name = name;
    wall.room = f.room;
    wall.columns = static_cast<int>(tags.size());
    wall.rows = 1;
    for (const auto& tag : tags) wall.tiles.push_back(tag.empty() ? std::nullopt : std::optional(f.make.tagged(tag)));
    return wall;
}

/// One stream on two monitors side by side, one of them through a decoder that takes 50 ms longer.
void out_of_step(Faulty& f) {
    f.variant("tern-decoder", "slow-decoder", "Decoder that takes its time", [](auto& type) {
        type.codec->decode_latency = *type.codec->decode_latency + base::Duration::from_count(50'000'000);
    });
    const auto near = f.make.tagged("SW-902");
    f.encoder("tern-encoder", "801", "239.192.9.171", near, "21");
    auto row = *f.make.design().streams.find(f.streams.at("801"));
    row.payload_rate = base::BitRate::from_count(5000000);  // beside the others of the switch it weighs nothing
    f.make.run(model::SetStream{row});
    f.make.configure_port(f.make.tagged("ENC-801"), "hdmi-in", [](auto& port) {
        port.edid = model::EdidPolicy{model::EdidWay::fixed, standards::parse_video_format("1080p60").value(), {}, {}};
    });
    f.decoder("tern-decoder", "801", near, "22");
    f.decoder("slow-decoder", "802", near, "23");
    f.show("801", "801");
    f.show("802", "801");
    f.make.run(model::SetWall{wall_of(f, "Wall of monitors", {"MON-801", "MON-802"})});
}

/// Two unlike displays and a place where none stands.
void unlike_and_missing(Faulty& f) {
    const auto player = f.device("signage-player", "SP-803"), splitter = f.device("splitter-hdmi-4", "SPL-803");
    f.make.cable("hdmi-2m", player, "hdmi-out", splitter, "hdmi-in");
    f.make.cable("hdmi-2m", splitter, "hdmi-out-1", f.device("display-55", "DSP-803"), "hdmi-in-1");
    f.make.cable("hdmi-2m", splitter, "hdmi-out-2", f.device("wall-tile-55", "WT-803"), "hdmi-in");
    f.make.run(model::SetWall{wall_of(f, "Wall with a hole", {"DSP-803", "WT-803", ""})});
}

/// A small processor: one output on a switch, another with a cabinet too many.
void led(Faulty& f) {
    f.variant("led-processor", "small-led-processor", "LED wall processor, small", [](auto& type) {
        type.controlled_by.clear();
        for (auto& port : type.ports)
            if (port.most_pixels) port.most_pixels = 100'000;
    });
    const auto processor = f.device("small-led-processor", "LED-804");
    f.make.cable("hdmi-2m", f.device("signage-player", "SP-804"), "hdmi-out", processor, "hdmi-in-1");
    f.make.cable("copper-cat6a", processor, "data-1", f.make.tagged("SW-903"), "8", 20);
    const auto first = f.device("led-cabinet", "LEDC-804"), second = f.device("led-cabinet", "LEDC-805");
    f.make.cable("copper-cat6a", processor, "data-2", first, "data-in", 5);
    f.make.cable("copper-cat6a", first, "data-out", second, "data-in", 5);
}

/// A display of 0.68 m for viewers at 12 m.
void too_small(Faulty& f) {
    const auto hall = f.make.room("9.02", "Test hall", "9");
    auto row = *f.make.design().rooms.find(hall);
    row.farthest_viewer = base::Length::from_count(12'000'000);
    row.viewing = standards::ViewingCategory::basic;
    row.element_height = standards::ElementHeight::from_count(4000);
    f.make.run(model::AddRows{{row}});
    f.make.cable("hdmi-2m", f.make.device("signage-player", "SP-806", hall), "hdmi-out",
                 f.make.device("display-55", "DSP-806", hall), "hdmi-in-1");
}

}  // namespace

void wall_faults(Faulty& f) {
    out_of_step(f);
    unlike_and_missing(f);
    led(f);
    too_small(f);
}

void wall_fault_sheet(Faulty& f) {
    SheetPlan plan(f.make, f.make.sheet(10, "Faulty design", "walls, LED and viewing", model::PaperSize::a2));
    plan.rows({40, 130}, 60, {{"LP-801", "ENC-801"}, {"SP-806", "DSP-806"}}, 10);
    plan.rows({240, 320}, 60, {{"DEC-801", "MON-801"}, {"DEC-802", "MON-802"}}, 10);
    plan.rows({40, 130, 230}, 190, {{"SP-803", "SPL-803", "DSP-803"}, {"", "", "WT-803"}}, 10);
    plan.rows({315, 395, 515}, 190, {{"SP-804", "LED-804", "LEDC-804"}, {"", "", "LEDC-805"}}, 10);
    plan.finish();
}

}  // namespace streamwright::test::demo_faulty_detail
