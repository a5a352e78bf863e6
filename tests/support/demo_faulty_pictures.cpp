// The faulty design's faults of pictures: formats, EDID, HDR and content protection, on a sheet of their own.
#include "tests/support/demo_faulty.h"

namespace streamwright::test::demo_faulty_detail {

namespace {

standards::VideoFormat format_of(const char* text) { return standards::parse_video_format(text).value(); }

/// A source on a lead to a display's first input, its output set up by a function.
template <class Set>
void pair(Faulty& f, const std::string& type, const std::string& tag, const std::string& display_type,
          const std::string& display_tag, const std::string& input, Set&& set) {
    const auto source = f.device(type, tag), display = f.device(display_type, display_tag);
    f.make.cable("hdmi-2m", source, "hdmi-out", display, input);
    f.make.configure_port(source, "hdmi-out", set);
}

/// More bits than HDMI 2.0 carries; HDR squeezed into 8 bits; a monitor that says nothing of itself.
void formats(Faulty& f) {
    pair(f, "media-player", "MP-981", "display-55", "DSP-981", "hdmi-in-1",
         [](auto& row) { row.picture = format_of("2160p60 4:4:4 10-bit PQ"); });
    pair(f, "media-player", "MP-983", "display-55", "DSP-983", "hdmi-in-1",
         [](auto& row) { row.picture = format_of("1080p60 RGB 8-bit PQ"); });
    // The monitor of a fault of roles takes 1080p at most: its picture is sound.
    f.make.configure_port(f.make.tagged("ENC-915"), "hdmi-in-1", [](auto& row) {
        row.edid = model::EdidPolicy{model::EdidWay::fixed, format_of("1080p60"), {}, {}};
    });
    f.variant("display-24", "silent-monitor", "Monitor that states nothing",
              [](auto& type) { type.ports[0].picture.reset(); });
    pair(f, "signage-player", "SP-984", "silent-monitor", "MON-984", "hdmi-in",
         [](auto& row) { row.picture = format_of("1080p60"); });
}

/// A small monitor and a large screen on one stream, whose EDID is merged from both.
void held_back(Faulty& f) {
    f.variant("tern-decoder", "plain-decoder", "Decoder without scaler",
              [](auto& type) { type.codec->scales = false; });
    const auto near = f.make.tagged("SW-902");
    const auto encoder = f.encoder("tern-encoder", "982", "239.192.9.82", near, "18");
    auto row = *f.make.design().streams.find(f.streams.at("982"));
    row.payload_rate = base::BitRate::from_count(5000000);  // beside the others of the switch it weighs nothing
    f.make.run(model::SetStream{row});
    f.make.configure_port(encoder, "hdmi-in", [](auto& port) {
        port.edid = model::EdidPolicy{model::EdidWay::merged, {}, {}, {}};
    });
    f.decoder("plain-decoder", "982", near, "19");
    const auto large = f.device("plain-decoder", "DEC-983");
    f.make.cable("hdmi-2m", large, "hdmi-out", f.device("display-55", "DSP-982"), "hdmi-in-1");
    f.make.cable("copper-cat6a", large, "net", near, "20", 30);
    f.show("982", "982");
    f.show("983", "982");
}

/// A display that announces the EDID of its own network port.
void copied_from_nothing(Faulty& f) {
    pair(f, "signage-player", "SP-985", "display-55", "DSP-985", "hdmi-in-1", [](auto&) {});
    const auto display = f.make.tagged("DSP-985");
    f.make.configure_port(display, "hdmi-in-1", [&](auto& port) {
        port.edid = model::EdidPolicy{model::EdidWay::copied, {}, model::PortRef{display, {"lan"}}, {}};
    });
}

/// Content of type 1 for a monitor of HDCP 1.4; a player that takes two receivers, with a splitter and two displays.
void protection(Faulty& f) {
    using standards::HdcpContent;
    pair(f, "media-player", "MP-986", "display-24", "MON-986", "hdmi-in",
         [](auto& row) { row.protection = HdcpContent::type_1; });
    f.variant("media-player", "short-player", "Media player for two receivers",
              [](auto& type) { type.ports[0].picture->hdcp_most_devices = 2; });
    const auto player = f.device("short-player", "MP-987"), splitter = f.device("splitter-hdmi-4", "SPL-987");
    f.make.cable("hdmi-2m", player, "hdmi-out", splitter, "hdmi-in");
    f.make.cable("hdmi-2m", splitter, "hdmi-out-1", f.device("display-55", "DSP-987"), "hdmi-in-1");
    f.make.cable("hdmi-2m", splitter, "hdmi-out-2", f.device("display-55", "DSP-988"), "hdmi-in-1");
    f.make.configure_port(player, "hdmi-out", [](auto& row) { row.protection = HdcpContent::type_0; });
}

}  // namespace

void picture_faults(Faulty& f) {
    formats(f);
    held_back(f);
    copied_from_nothing(f);
    protection(f);
}

void picture_fault_sheet(Faulty& f) {
    SheetPlan plan(f.make,
                   f.make.sheet(8, "Faulty design", "formats, EDID and content protection", model::PaperSize::a2));
    plan.rows({40, 130}, 60,
              {{"MP-981", "DSP-981"},
               {"MP-983", "DSP-983"},
               {"SP-984", "MON-984"},
               {"SP-985", "DSP-985"},
               {"MP-986", "MON-986"}},
              10);
    plan.rows({240, 320}, 60, {{"LP-982", "ENC-982"}}, 10);
    plan.rows({400, 480}, 60, {{"DEC-982", "MON-982"}, {"DEC-983", "DSP-982"}}, 10);
    plan.rows({240, 330, 430}, 190, {{"MP-987", "SPL-987", "DSP-987"}, {"", "", "DSP-988"}}, 10);
    plan.finish();
}

}  // namespace streamwright::test::demo_faulty_detail
