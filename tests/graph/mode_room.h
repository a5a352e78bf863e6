// Tiny networks in every mode of switches, drawn at random, with every routing that their inputs allow as a preset of
// its own: the load analysis then tries them all. For the worst case.
#pragma once

#include "tests/graph/switched_room.h"

#include <algorithm>
#include <random>
#include <string>
#include <vector>

namespace streamwright::test {

enum class RoomMode { flood, router_ports, drop, mixed, looped };

struct ModeRoom : SwitchedRoom {
    struct Input {
        std::string decoder, input, family;
    };
    struct Sent {
        std::string tag, family;
    };
    RoomMode mode;
    std::mt19937_64 random;
    int switches = 1;
    std::vector<Input> inputs;
    std::vector<Sent> sent;

    int below(int count) { return static_cast<int>(random() % static_cast<std::uint64_t>(count)); }
    bool now_and_then(int one_in) { return below(one_in) == 0; }
    bool wild() const { return mode == RoomMode::mixed || mode == RoomMode::looped; }
    static std::string name(int s) { return "S" + std::to_string(s); }
    std::string any_switch() { return name(below(switches)); }

    ModeRoom(RoomMode of, std::uint64_t seed) : mode(of), random(seed * 8 + static_cast<std::uint64_t>(of)) {
        switches = 1 + below(5);
        for (int s = 0; s < switches; ++s) add_switch(name(s), drawn_switch());
        for (int s = 1; s < switches; ++s) join_drawn(name(s), name(below(s)));
        if (switches > 2 && (mode == RoomMode::looped || now_and_then(4))) join_drawn(name(0), name(switches - 1));
        if (mode == RoomMode::looped)
            for (int s = 0; s < switches; ++s) settings(name(s), [](auto& set) { set.tree_off = true; });
        set_queriers();
        const int decoders = 1 + below(3), encoders = 2 + below(3);
        for (int i = 0; i < encoders; ++i) add_source(i);
        for (int i = 0; i < decoders && inputs.size() < 4; ++i) add_sink(i);
    }

    template <class F>
    void settings(const std::string& tag, F&& f) {
        b.change<model::Device>(devices.at(tag), [&](auto& row) { f(row.bridging); });
    }
    catalogue::DeviceType drawn_switch() {
        using catalogue::UnknownGroups;
        auto type = switch_type();
        auto& facts = *type.bridging;
        const auto any = std::array{UnknownGroups::flood, UnknownGroups::router_ports, UnknownGroups::drop};
        facts.unknown_groups = wild() ? any[static_cast<std::size_t>(below(3))] : any[static_cast<std::size_t>(mode)];
        if (!wild()) return type;
        facts.snooping = !now_and_then(5);
        facts.lookup = now_and_then(3) ? catalogue::GroupLookup::mac : catalogue::GroupLookup::ip;
        facts.floods_without_querier = now_and_then(2);
        facts.zero_query_makes_router_port = now_and_then(2);
        facts.queries_without_snooping = now_and_then(2);
        return type;
    }
    void join_drawn(const std::string& a, const std::string& c) {
        const auto [from, to] = join(a, c);
        for (const auto& port : {from, to})
            if (wild() && now_and_then(6)) b.port(port, [](auto& row) { row.router_port = true; });
    }
    void set_queriers() {
        if (!wild()) return querier(any_switch());
        if (!now_and_then(5)) querier(any_switch(), now_and_then(3) ? "" : "10.0.0.1");
        if (now_and_then(4)) querier(any_switch(), now_and_then(2) ? "" : "10.0.0.2");
        for (int i = 0; i < 2; ++i)
            if (now_and_then(4)) settings(any_switch(), [&](auto& set) { set.multicast_router_vlans.push_back(vlan); });
    }
    /// Fresh, or one that shares the group or the low 23 bits of the first (239.20.7.1 and 239.148.7.1 do), or one of
    /// the addresses that share theirs with 224.0.0.0/24.
    std::string drawn_group() {
        if (mode != RoomMode::mixed ? !now_and_then(5) : now_and_then(2)) return {};
        const char* drawn[] = {"239.20.7.1", "239.20.7.1", "239.148.7.1", "239.128.0.9", "224.0.0.9"};
        return drawn[below(wild() ? 5 : 3)];
    }
    void add_source(int i) {
        auto type = types::make_encoder();
        const std::string family = now_and_then(3) ? "light" : "dense";
        type.key = {"mode.enc." + family};
        type.codec->family = family;
        const auto tag = "E" + std::to_string(i);
        const auto port = add_leaf(std::make_shared<const catalogue::DeviceType>(type), tag, any_switch());
        if (wild() && now_and_then(12)) b.port(port, [](auto& row) { row.router_port = true; });
        add_stream(tag, tag, 10 * (1 + below(9)), drawn_group());
        if (i > 0 && sent.back().family == family && now_and_then(6))
            b.change<model::Stream>(streams.at(tag), [&](auto& row) { row.twin = streams.at(sent.back().tag); });
        sent.push_back({tag, family});
    }
    void add_sink(int i) {
        const bool chained = wild() && now_and_then(4);
        auto type = chained ? types::make_chained_decoder() : types::make_decoder();
        const std::string family = now_and_then(3) ? "light" : "dense";
        const bool two = now_and_then(3) && inputs.size() < 3;
        type.key = {"mode.dec." + family + (two ? "2" : "1") + (chained ? "c" : "")};
        type.codec->family = family;
        if (two) type.codec->inputs.push_back({{"second"}, {}, catalogue::StreamKind::video});
        if (chained) type.bridging->snooping = false;
        const auto tag = "D" + std::to_string(i);
        add_leaf(std::make_shared<const catalogue::DeviceType>(type), tag, any_switch());
        for (const auto& input : type.codec->inputs) inputs.push_back({tag, input.key.text, family});
    }

    /// Each as a preset.
    void add_every_routing() {
        std::vector<std::vector<int>> choices;  // per input: -1 and the streams it may take
        for (const auto& input : inputs) {
            auto& list = choices.emplace_back(1, -1);
            for (int s = 0; s < static_cast<int>(sent.size()); ++s)
                if (sent[static_cast<std::size_t>(s)].family == input.family) list.push_back(s);
        }
        std::vector<std::size_t> at(inputs.size(), 0);
        for (;;) {
            const auto id = b.preset("routing");
            for (std::size_t i = 0; i < inputs.size(); ++i)
                if (const int s = choices[i][at[i]]; s >= 0)
                    b.subscribe(id, streams.at(sent[static_cast<std::size_t>(s)].tag), devices.at(inputs[i].decoder),
                                inputs[i].input);
            std::size_t i = 0;
            while (i < at.size() && ++at[i] == choices[i].size()) at[i++] = 0;
            if (i == at.size()) return;
        }
    }
};

}  // namespace streamwright::test
