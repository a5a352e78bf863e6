#include "tests/cases/field_room.h"

namespace streamwright::test {

using namespace base::literals;

FieldRoom::FieldRoom() {
    vlan = b.vlan(30, "AV media", "10.30.0.0/23");
    b.usual_vlan(vlan);
    preset = b.preset("Lecture");
}

std::string FieldRoom::number() { return std::to_string(++numbers_); }

model::DeviceId FieldRoom::add_switch(const std::string& tag,
                                      const std::function<void(catalogue::DeviceType&)>& change) {
    auto type = types::make_switch(48, 1_Gbps, 4);
    if (change) {
        type.key.text += '.' + tag;
        change(type);
    }
    return b.device(type, tag);
}

void FieldRoom::querier(model::DeviceId bridge) {
    b.address(bridge, "10.30.0.1", vlan);
    b.querier(bridge, vlan, "10.30.0.1");
    b.change<model::Device>(bridge, [](auto& row) { row.bridging.priority = 4096; });
}

model::CableId FieldRoom::trunk(model::DeviceId a, model::DeviceId end, const types::CablePtr& cable) {
    b.embed(types::module_sr());
    const auto cage = [&](model::DeviceId bridge) {
        const auto port = port_of(bridge, 's' + std::to_string(++cages_[bridge]));
        b.port(port, [](auto& row) { row.module = types::module_sr()->key; });
        return port;
    };
    const auto near = cage(a), far = cage(end);
    return b.cable(cable, near, far, 60_m);
}

model::PortRef FieldRoom::next_port(model::DeviceId bridge) {
    return port_of(bridge, std::to_string(++ports_[bridge]));
}

model::StreamId FieldRoom::encoder(model::DeviceId bridge, base::BitRate wire, const std::string& group) {
    const auto n = number();
    const auto source = b.device(types::source(), "SRC-" + n);
    last_encoder = b.device(types::encoder(), "ENC-" + n);
    b.cable(types::hdmi(), port_of(source, "out"), port_of(last_encoder, "in"), 2_m);
    last_cable = b.cable(types::cat6a(), port_of(last_encoder, "net"), next_port(bridge), 20_m);
    return b.stream(last_encoder, payload_of(wire), group.empty() ? "239.192.1." + n : group);
}

model::DeviceId FieldRoom::with_display(const types::DevicePtr& type, const std::string& tag) {
    const auto device = b.device(type, tag), display = b.device(types::display(), "DSP-of-" + tag);
    b.cable(types::hdmi(), port_of(device, "out"), port_of(display, "in"), 2_m);
    return device;
}

model::DeviceId FieldRoom::decoder(model::DeviceId bridge, std::optional<model::StreamId> shown,
                                   const types::DevicePtr& type) {
    const auto device = with_display(type, "DEC-" + number());
    last_cable = b.cable(types::cat6a(), port_of(device, "net"), next_port(bridge), 20_m);
    if (shown) b.subscribe(preset, *shown, device);
    return device;
}

base::BitRate payload_of(base::BitRate wire) { return base::BitRate::from_count(wire.count() * 1400 / 1478); }

Found found_by_rule(const model::Design& design) {
    Found counts;
    for (const auto& rule : rules_found(design)) ++counts[rule];
    return counts;
}

std::string sentence(const FieldRoom& room, std::string_view rule) {
    return english_sentence(room.b.design, finding_of(room.b.design, rule));
}

}  // namespace streamwright::test
