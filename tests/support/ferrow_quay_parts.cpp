#include "tests/support/ferrow_quay_parts.h"

namespace streamwright::test::ferrow_quay_parts {

Quay::Quay(DemoMaker& maker)
    : make(maker),
      hall(make.room("1.01", "Quay Hall", "1")),
      board(make.room("3.01", "Board room", "3")),
      foyer(make.room("0.01", "Foyer", "0")),
      control(make.room("1.10", "Control room", "1")),
      marquee(make.room("X.01", "Overflow marquee", "outside")),
      north(make.room("0.10", "Comms North", "0")),
      south(make.room("0.11", "Comms South", "0")),
      seminars{make.room("2.01", "Seminar 1", "2"), make.room("2.02", "Seminar 2", "2"),
               make.room("2.03", "Seminar 3", "2"), make.room("2.04", "Seminar 4", "2"),
               make.room("2.05", "Seminar 5", "2"), make.room("2.06", "Seminar 6", "2")},
      north_a(make.rack("North A", "rack-42u", north)),
      north_b(make.rack("North B", "rack-42u", north)),
      south_a(make.rack("South A", "rack-42u", south)),
      control_rack(make.rack("Control", "rack-24u", control)),
      av(make.vlan(10, "AV media", model::VlanPurpose::av, "10.20.0.0/23")),
      control_vlan(make.vlan(20, "AV control", model::VlanPurpose::control, "10.20.2.0/24", "10.20.2.1")),
      corporate(make.vlan(30, "Corporate", model::VlanPurpose::corporate, "10.20.8.0/22", "10.20.8.1")),
      lecture(make.preset(1, "Lecture", "Hall to its own screens, the marquee and the monitors")),
      conference(make.preset(2, "Conference", "Hall plenary, seminar rooms follow Seminar 1")),
      evening(make.preset(3, "Evening event", "Wall and foyer play the evening loop")),
      all_off(make.preset(4, "All off")) {}

std::string Quay::next_port(model::DeviceId on_switch, PortSide side) {
    auto& last = ports_used[{on_switch, side}];
    last = last == 0 ? (side == PortSide::odd ? 1 : 2) : last + 2;
    return std::to_string(last);
}

void Quay::media_address(model::DeviceId device) {
    ++av_hosts;
    make.address(device, av, "10.20." + std::to_string(av_hosts / 256) + '.' + std::to_string(av_hosts % 256));
}

void Quay::control_address(model::DeviceId device) {
    make.address(device, control_vlan, "10.20.2." + std::to_string(++control_hosts));
}

std::string Quay::wire(const std::string& tag, const std::string& port, const std::string& to_switch, PortSide side,
                       int metres) {
    const auto bridge = make.tagged(to_switch);
    const auto at = next_port(bridge, side);
    make.cable("copper-cat6a", make.tagged(tag), port, bridge, at, metres);
    return at;
}

std::string Quay::wire_by_panel(const std::string& tag, const std::string& port, const std::string& panel,
                                const std::string& to_switch, PortSide side, std::optional<int> metres) {
    const auto bridge = make.tagged(to_switch);
    const auto at = next_port(bridge, side);
    make.cable("copper-cat6a", make.tagged(tag), port, make.tagged(panel), "rear-" + at, metres);
    make.cable("patch-cat6a-1m", make.tagged(panel), "front-" + at, bridge, at);
    return at;
}

void Quay::set_vlan(const std::string& to_switch, const std::string& port, model::VlanId vlan) {
    make.configure_port(make.tagged(to_switch), port, [&](model::PortOverride& row) {
        row.untagged = vlan;
        row.edge = true;
    });
}

void Quay::encode(const std::string& source, const std::string& source_port, const std::string& encoder,
                  const std::string& input, const std::string& stream, const std::string& group,
                  const std::string& note) {
    make.cable("hdmi-2m", make.tagged(source), source_port, make.tagged(encoder), input);
    encode_later(encoder, stream, group, note);
}

void Quay::encode_later(const std::string& encoder, const std::string& stream, const std::string& group,
                        const std::string& note) {
    const auto device = make.tagged(encoder);
    media_address(device);
    streams_.emplace(stream, make.stream(device, stream, group, note));
}

void Quay::decode(const std::string& decoder, const std::string& display, const std::string& input) {
    make.cable("hdmi-2m", make.tagged(decoder), "hdmi-out", make.tagged(display), input);
    media_address(make.tagged(decoder));
}

void Quay::announce(const std::string& tag, const std::string& input, const std::string& format) {
    make.configure_port(make.tagged(tag), input, [&](model::PortOverride& row) {
        row.edid = model::EdidPolicy{model::EdidWay::fixed, standards::parse_video_format(format).value(), {}, {}};
    });
}

void Quay::plays_protected(const std::string& source, const std::string& output) {
    make.configure_port(make.tagged(source), output,
                        [](model::PortOverride& row) { row.protection = standards::HdcpContent::type_0; });
}

void Quay::show(model::PresetId preset, const std::string& decoder, const std::string& stream) {
    make.show(preset, make.tagged(decoder), streams_.at(stream));
}

}  // namespace streamwright::test::ferrow_quay_parts
