#include "tests/support/picture_room.h"

namespace streamwright::test {

using namespace base::literals;
using catalogue::Way;

standards::VideoFormat picture_format(const std::string& text) { return standards::parse_video_format(text).value(); }

catalogue::PictureFacts picture_facts(const std::vector<std::string>& rasters) {
    catalogue::PictureFacts facts;
    for (const auto& raster : rasters) facts.formats.push_back(picture_format(raster));
    facts.hdcp = standards::HdcpVersion::hdcp_2_2;
    return facts;
}

namespace picture_room_detail {

catalogue::PortType picture_port(const std::string& key, Way way, const PicturePort& port) {
    auto type = types::make_port(key, catalogue::Signal::video, way, catalogue::Connector::hdmi);
    type.picture = port.facts;
    if (!port.link.empty()) type.standards = {port.link};
    return type;
}

catalogue::DeviceType plain_type(catalogue::DeviceKind kind) {
    catalogue::DeviceType type = types::make_display();
    type.kind = kind;
    type.ports.clear();
    return type;
}

void put_port(catalogue::DeviceType& type, const catalogue::PortType& port) {
    std::erase_if(type.ports, [&](const auto& each) { return each.key == port.key; });
    type.ports.push_back(port);
}

}  // namespace picture_room_detail

using namespace picture_room_detail;

PictureRoom::PictureRoom() {
    const auto vlan = b.vlan(30, "AV media", "10.30.0.0/23");
    b.usual_vlan(vlan);
    preset = b.preset("Lecture");
    bridge = b.device(types::make_switch(48, 1_Gbps, 4), "SW-1");
    b.address(bridge, "10.30.0.1", vlan);
    b.querier(bridge, vlan, "10.30.0.1");
}

model::DeviceId PictureRoom::device(catalogue::DeviceType type, const std::string& tag) {
    type.key = {"picture." + tag};
    return b.device(type, tag);
}

void PictureRoom::to_switch(model::DeviceId device) {
    b.cable(types::cat6a(), port_of(device, "net"), port_of(bridge, std::to_string(++ports_)), 20_m);
}

model::DeviceId PictureRoom::source(const std::string& tag, const PicturePort& out) {
    auto type = plain_type(catalogue::DeviceKind::source);
    put_port(type, picture_port("out", Way::out, out));
    return device(type, tag);
}

model::DeviceId PictureRoom::display(const std::string& tag, const PicturePort& in) {
    auto type = plain_type(catalogue::DeviceKind::display);
    put_port(type, picture_port("in", Way::in, in));
    return device(type, tag);
}

model::DeviceId PictureRoom::passer(const std::string& tag, const PicturePort& in, const PicturePort& out, int outs) {
    auto type = plain_type(catalogue::DeviceKind::other);
    put_port(type, picture_port("in", Way::in, in));
    for (int i = 1; i <= outs; ++i) put_port(type, picture_port("out-" + std::to_string(i), Way::out, out));
    return device(type, tag);
}

model::DeviceId PictureRoom::encoder(const std::string& tag, const PicturePort& in,
                                     const catalogue::CodecPicture& codec) {
    auto type = types::make_encoder();
    put_port(type, picture_port("in", Way::in, in));
    auto loop = picture_port("loop", Way::out, in);
    if (loop.picture) loop.picture->repeats = loop.picture->captures = false;
    loop.local_output = true;
    put_port(type, loop);
    type.codec->picture = codec;
    const auto id = device(type, tag);
    to_switch(id);
    return id;
}

model::DeviceId PictureRoom::decoder(const std::string& tag, const PicturePort& out, bool scales,
                                     const catalogue::CodecPicture& codec) {
    auto type = types::make_decoder();
    put_port(type, picture_port("out", Way::out, out));
    type.codec->scales = scales;
    type.codec->picture = codec;
    const auto id = device(type, tag);
    to_switch(id);
    return id;
}

model::CableId PictureRoom::join(model::DeviceId from, const std::string& out, model::DeviceId to,
                                 const std::string& in) {
    return b.cable(types::hdmi(), port_of(from, out), port_of(to, in), 2_m);
}

model::StreamId PictureRoom::stream(model::DeviceId encoder) {
    return b.stream(encoder, 100_Mbps, "239.192.7." + std::to_string(++groups_));
}

void PictureRoom::show(model::StreamId stream, model::DeviceId decoder) { b.subscribe(preset, stream, decoder); }

model::DeviceId PictureRoom::member(const std::string& tag, model::StreamId stream, const PicturePort& in,
                                    bool scales) {
    const auto shows = decoder("DEC-" + tag, {catalogue::PictureFacts{}, "HDMI 2.0"}, scales);
    const auto screen = display(tag, in);
    join(shows, "out", screen);
    show(stream, shows);
    return screen;
}

void PictureRoom::set(model::DeviceId device, const std::string& port, const std::string& format) {
    b.port(port_of(device, port), [&](auto& row) { row.picture = picture_format(format); });
}

void PictureRoom::play(model::DeviceId source, standards::HdcpContent content) {
    b.port(port_of(source, "out"), [&](auto& row) { row.protection = content; });
}

void PictureRoom::announce(model::DeviceId device, const std::string& port, const model::EdidPolicy& policy) {
    b.port(port_of(device, port), [&](auto& row) { row.edid = policy; });
}

model::EdidPolicy fixed_edid(const std::string& format) {
    return {model::EdidWay::fixed, picture_format(format), {}, {}};
}

model::EdidPolicy copied_edid(model::DeviceId device, const std::string& port) {
    return {model::EdidWay::copied, {}, port_of(device, port), {}};
}

model::EdidPolicy merged_edid() { return {model::EdidWay::merged, {}, {}, {}}; }

graph::PortAt at_port(const analysis::Facts& facts, model::DeviceId device, const std::string& port) {
    return *facts.get<graph::Wiring>().port_at(port_of(device, port));
}

}  // namespace streamwright::test
