// A room for tests of pictures: sources, extenders, displays and endpoints that state what they take, on one sound
// switch, so that only faults of pictures are found.
#pragma once

#include "core/analysis/analyser.h"
#include "tests/support/clean_design.h"

#include <string>
#include <vector>

namespace streamwright::test {

standards::VideoFormat picture_format(const std::string& text);
/// Takes or gives these rasters in every sampling, to 16 bits, SDR and HDR; HDCP 2.2.
catalogue::PictureFacts picture_facts(const std::vector<std::string>& rasters);

/// A picture port as tests need it: what it states, and its link.
struct PicturePort {
    std::optional<catalogue::PictureFacts> facts;
    std::string link;  // "HDMI 2.0"; empty: none named
};

class PictureRoom {
public:
    PictureRoom();

    model::DeviceId source(const std::string& tag, const PicturePort& out);
    model::DeviceId display(const std::string& tag, const PicturePort& in);
    /// Passes pictures from "in" on to "out-1", "out-2", ...
    model::DeviceId passer(const std::string& tag, const PicturePort& in, const PicturePort& out, int outs = 1);
    /// "in", "loop"; on the switch.
    model::DeviceId encoder(const std::string& tag, const PicturePort& in, const catalogue::CodecPicture& codec = {});
    /// "out"; on the switch.
    model::DeviceId decoder(const std::string& tag, const PicturePort& out, bool scales,
                            const catalogue::CodecPicture& codec = {});
    model::CableId join(model::DeviceId from, const std::string& out, model::DeviceId to, const std::string& in = "in");
    model::StreamId stream(model::DeviceId encoder);
    void show(model::StreamId stream, model::DeviceId decoder);
    /// A decoder of that tag with a display behind it, shown the stream; the display.
    model::DeviceId member(const std::string& tag, model::StreamId stream, const PicturePort& display, bool scales);

    void set(model::DeviceId device, const std::string& port, const std::string& format);
    void play(model::DeviceId source, standards::HdcpContent content);
    void announce(model::DeviceId device, const std::string& port, const model::EdidPolicy& policy);

    DesignBuilder b{13};
    model::DeviceId bridge{0};
    model::PresetId preset{0};

private:
    model::DeviceId device(catalogue::DeviceType type, const std::string& tag);
    void to_switch(model::DeviceId device);
    int ports_ = 0, groups_ = 0;
};

model::EdidPolicy fixed_edid(const std::string& format);
model::EdidPolicy copied_edid(model::DeviceId device, const std::string& port = "in");
model::EdidPolicy merged_edid();

/// The port's index in the wiring of these facts.
graph::PortAt at_port(const analysis::Facts& facts, model::DeviceId device, const std::string& port);

}  // namespace streamwright::test
