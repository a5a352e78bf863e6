#include "tests/support/design_builder.h"

#include <cassert>

namespace streamwright::test {

namespace sm = streamwright::model;

sm::SecurityPlan answered_plan() { return {true, true, "2028-06-30", true}; }

DesignBuilder::DesignBuilder(std::uint64_t seed) : ids_(seed) {
    sm::Settings settings;
    settings.security = answered_plan();
    put(std::move(settings));
}

void DesignBuilder::embed(const types::DevicePtr& type) { put(sm::DeviceTypeRow{type}); }
void DesignBuilder::embed(const types::CablePtr& type) { put(sm::CableTypeRow{type}); }

sm::DeviceId DesignBuilder::device(const types::DevicePtr& type, const std::string& tag) {
    embed(type);
    auto row = sm::Device::blank(fresh<sm::DeviceId>());
    row.type = type->key;
    row.tag = tag;
    put(row);
    return row.id;
}

sm::DeviceId DesignBuilder::device(const catalogue::DeviceType& type, const std::string& tag) {
    return device(std::make_shared<const catalogue::DeviceType>(type), tag);
}

sm::CableId DesignBuilder::cable(const types::CablePtr& type, const sm::PortRef& a, const sm::PortRef& b,
                                 std::optional<base::Length> length, const std::string& tag) {
    const auto id = open_cable(type, a);
    change<sm::Cable>(id, [&](sm::Cable& row) {
        row.b = sm::CableEnd{b};
        row.length = length;
        if (!tag.empty()) row.tag = tag;
    });
    return id;
}

sm::CableId DesignBuilder::open_cable(const types::CablePtr& type, const sm::PortRef& a) {
    embed(type);
    auto row = sm::Cable::blank(fresh<sm::CableId>());
    row.type = type->key;
    row.tag = catalogue::signal_letter(type->signal) + std::to_string(design.cables.size() + 1);
    row.a = sm::CableEnd{a};
    put(row);
    return row.id;
}

sm::VlanId DesignBuilder::vlan(int vid, const std::string& name, const std::string& subnet) {
    auto row = sm::Vlan::blank(fresh<sm::VlanId>());
    row.vid = vid;
    row.name = name;
    if (!subnet.empty()) {
        row.subnet = base::parse_ipv4_prefix(subnet);
        assert(row.subnet);
    }
    put(row);
    return row.id;
}

sm::RoomId DesignBuilder::room(const std::string& number, const std::string& name) {
    auto row = sm::Room::blank(fresh<sm::RoomId>());
    row.number = number;
    row.name = name;
    put(row);
    return row.id;
}

sm::RackId DesignBuilder::rack(const std::string& name) {
    const auto type = std::make_shared<const catalogue::DeviceType>(types::make_rack_type());
    embed(type);
    auto row = sm::Rack::blank(fresh<sm::RackId>());
    row.name = name;
    row.type = type->key;
    put(row);
    return row.id;
}

sm::SheetId DesignBuilder::sheet(int number) {
    auto row = sm::Sheet::blank(fresh<sm::SheetId>());
    row.number = number;
    row.title = "Sheet " + std::to_string(number);
    put(row);
    return row.id;
}

void DesignBuilder::place(sm::SheetId sheet, sm::DeviceId device, base::Length x, base::Length y) {
    auto row = sm::Place::blank({sheet, device});
    row.at = {x, y};
    put(row);
}

sm::StreamId DesignBuilder::stream(sm::DeviceId encoder, base::BitRate payload, const std::string& group,
                                   std::optional<sm::VlanId> vlan) {
    auto row = sm::Stream::blank(fresh<sm::StreamId>());
    row.tag = "S-" + std::to_string(design.streams.size() + 1);
    row.encoder = encoder;
    row.vlan = vlan;
    row.payload_rate = payload;
    if (!group.empty()) {
        row.group = base::parse_ipv4(group);
        assert(row.group);
    }
    put(row);
    return row.id;
}

sm::PresetId DesignBuilder::preset(const std::string& name) {
    auto row = sm::Preset::blank(fresh<sm::PresetId>());
    row.number = static_cast<int>(design.presets.size()) + 1;
    row.name = name;
    put(row);
    return row.id;
}

sm::SubscriptionId DesignBuilder::subscribe(sm::PresetId preset, sm::StreamId stream, sm::DeviceId decoder,
                                            const std::string& input) {
    const auto id = fresh<sm::SubscriptionId>();
    put(sm::Subscription{id, preset, stream, decoder, {input}, {}});
    return id;
}

void DesignBuilder::usual_vlan(sm::VlanId vlan) {
    change<sm::Settings>({}, [&](sm::Settings& row) { row.usual_vlan = vlan; });
}

void DesignBuilder::querier(sm::DeviceId network_switch, sm::VlanId vlan, const std::string& address) {
    change<sm::Device>(network_switch, [&](sm::Device& row) {
        row.bridging.queriers.push_back({vlan, address.empty() ? std::nullopt : base::parse_ipv4(address)});
    });
}

void DesignBuilder::address(sm::DeviceId device, const std::string& address, std::optional<sm::VlanId> vlan) {
    change<sm::Device>(device, [&](sm::Device& row) {
        sm::HostAddress host;
        host.vlan = vlan;
        host.address = base::parse_ipv4(address);
        assert(host.address);
        row.addresses.push_back(host);
    });
}

}  // namespace streamwright::test
