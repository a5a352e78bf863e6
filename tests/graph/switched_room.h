// Small switched networks for the tests of forwarding, loads and worst cases: switches, encoders, decoders by tag.
#pragma once

#include "tests/support/design_builder.h"
#include "tests/support/network_facts.h"

#include <map>
#include <string>
#include <vector>

namespace streamwright::test {

struct SwitchedRoom {
    DesignBuilder b;
    model::VlanId vlan = b.vlan(30, "Video");
    model::PresetId preset = b.preset("Show");
    std::map<std::string, model::DeviceId> devices;
    std::map<std::string, model::StreamId> streams;
    std::map<std::string, int> ports;
    int groups = 0;

    SwitchedRoom() { b.usual_vlan(vlan); }

    static catalogue::DeviceType switch_type() {
        using namespace base::literals;
        return types::make_switch(60, 10_Gbps, 0);
    }
    void add_switch(const std::string& tag, catalogue::DeviceType type = switch_type()) {
        type.key = {"test.room." + tag};
        devices.insert_or_assign(tag, b.device(type, tag));
    }
    model::PortRef next_port(const std::string& tag) { return port_of(devices.at(tag), std::to_string(++ports[tag])); }
    /// Returns the ports at both ends.
    std::pair<model::PortRef, model::PortRef> join(const std::string& a, const std::string& c) {
        const auto from = next_port(a), to = next_port(c);
        b.cable(types::cat6a(), from, to);
        return {from, to};
    }
    void chain(const std::vector<std::string>& tags) {
        for (const auto& tag : tags) add_switch(tag);
        for (std::size_t i = 1; i < tags.size(); ++i) join(tags[i - 1], tags[i]);
    }
    /// Returns the port of the switch.
    model::PortRef add_leaf(const types::DevicePtr& type, const std::string& tag, const std::string& at) {
        devices.insert_or_assign(tag, b.device(type, tag));
        const auto port = next_port(at);
        b.cable(types::cat6a(), port_of(devices.at(tag), "net"), port);
        return port;
    }
    model::PortRef add_decoder(const std::string& tag, const std::string& at) {
        return add_leaf(types::decoder(), tag, at);
    }
    /// An encoder and its stream of the same tag, which takes so many megabits a second on an untagged wire: with 1,422
    /// octets a packet, 1,422 of 1,500 on the wire are payload (12 + 8 + 20 + 18 + 20 octets are not).
    void add_encoder(const std::string& tag, const std::string& at, int wire_mbps = 100,
                     const std::string& group = {}) {
        add_leaf(types::encoder(), tag, at);
        add_stream(tag, tag, wire_mbps, group);
    }
    void add_stream(const std::string& tag, const std::string& encoder, int wire_mbps, std::string group = {}) {
        if (group.empty()) group = "239.20.7." + std::to_string(++groups);
        const auto id = b.stream(devices.at(encoder), base::BitRate::from_count(wire_mbps * 948000LL), group);
        b.change<model::Stream>(id, [&](auto& row) {
            row.tag = tag;
            row.payload_octets = 1422;
        });
        streams.insert_or_assign(tag, id);
    }
    void show(const std::string& stream, const std::string& decoder, const std::string& input = "main") {
        b.subscribe(preset, streams.at(stream), devices.at(decoder), input);
    }
    void querier(const std::string& tag, const std::string& address = "10.0.0.1") {
        b.querier(devices.at(tag), vlan, address);
    }
    NetworkFacts facts() const { return NetworkFacts(b.design); }
    /// Streams from one device to another, by tag; in the preset.
    static std::vector<std::string> on(const NetworkFacts& facts, const std::string& from, const std::string& to) {
        return facts.tags(facts.loads.presets.at(0).arcs.at(facts.arc(from, to)).streams);
    }
    static base::Rate load(const NetworkFacts& facts, const std::string& from, const std::string& to) {
        return facts.loads.presets.at(0).arcs.at(facts.arc(from, to)).wire;
    }
};

inline base::Rate megabits(int count) { return base::Rate(base::BitRate::from_count(count * 1000000LL)); }

}  // namespace streamwright::test
