// Worst cases per direction. Expected values: every routing of small random networks walked step by step; the trunk of
// 40 encoders and 40 decoders as common practice states it; stored answers of another program are in tests/lab.
#include "core/analysis/facts/worst_case.h"

#include "tests/graph/switched_room.h"

#include <gtest/gtest.h>

#include <random>

namespace streamwright::analysis {
namespace {

using namespace base::literals;
using test::megabits;
using test::NetworkFacts;
using test::SwitchedRoom;
namespace types = test::types;

// Common practice: 40 encoders of up to 1 Gb/s on one switch and 40 decoders on another need 40 Gb/s between them.
TEST(WorstCase, FortyByFortyNeedsFortyGigabits) {
    SwitchedRoom room;
    room.chain({"A", "B"});
    room.querier("A");
    for (int i = 1; i <= 40; ++i) {
        room.add_encoder("E" + std::to_string(i), "A", 1000);
        room.add_decoder("D" + std::to_string(i), "B");
    }
    const auto facts = room.facts();
    const auto worst = facts.worst();
    const auto& trunk = worst.arcs.at(facts.arc("A", "B"));
    EXPECT_EQ(trunk.wire, megabits(40000));
    EXPECT_TRUE(trunk.unasked.empty());
    EXPECT_EQ(trunk.routed.size(), 40U);
    EXPECT_EQ(trunk.witness.size(), 40U);
    EXPECT_EQ(trunk.inputs_beyond, 40);
    EXPECT_EQ(worst.arcs.at(facts.arc("B", "A")).wire, megabits(0));
}

// F52: 24 streams of 450 Mb/s can be routed over an uplink: 10.8 Gb/s.
TEST(WorstCase, F52AllStreamsThatCanBeRoutedCount) {
    SwitchedRoom room;
    room.chain({"A", "B"});
    room.querier("A");
    for (int i = 1; i <= 24; ++i) {
        room.add_encoder("E" + std::to_string(i), "A", 450);
        room.add_decoder("D" + std::to_string(i), "B");
    }
    const auto facts = room.facts();
    EXPECT_EQ(facts.worst().arcs.at(facts.arc("A", "B")).wire, megabits(10800));
}

TEST(WorstCase, TowardTheQuerierEverythingIsThereUnasked) {
    SwitchedRoom room;
    room.chain({"A", "B"});
    room.querier("B");
    for (int i = 1; i <= 3; ++i) room.add_encoder("E" + std::to_string(i), "A", 300);
    room.add_decoder("D", "B");
    const auto facts = room.facts();
    const auto worst = facts.worst();
    const auto& trunk = worst.arcs.at(facts.arc("A", "B"));
    EXPECT_EQ(trunk.wire, megabits(900));
    EXPECT_EQ(trunk.unasked.size(), 3U);
    EXPECT_TRUE(trunk.routed.empty());
}

TEST(WorstCase, WhereUnknownGroupsAreFloodedEverythingBehindArrives) {
    SwitchedRoom room;
    for (const char* tag : {"A", "B"}) {
        auto type = SwitchedRoom::switch_type();
        type.bridging->unknown_groups = catalogue::UnknownGroups::flood;
        room.add_switch(tag, type);
    }
    room.join("A", "B");
    room.querier("A");
    for (int i = 1; i <= 3; ++i) room.add_encoder("E" + std::to_string(i), "A", 300);
    const auto facts = room.facts();
    EXPECT_EQ(facts.worst().arcs.at(facts.arc("A", "B")).wire, megabits(900));
}

TEST(WorstCase, StopsWhenAsked) {
    SwitchedRoom room;
    room.chain({"A", "B"});
    const auto facts = room.facts();
    std::stop_source stop;
    stop.request_stop();
    EXPECT_FALSE(find_worst_case(facts.wiring, facts.network, facts.paths, facts.trees, facts.forwarding, facts.loads,
                                 stop.get_token()));
}

/// A tiny network with decoders of one or two inputs in two codec families, some with an audio input.
struct TinyRoom : SwitchedRoom {
    std::mt19937_64 random;
    struct Input {
        std::string decoder, input, family;
        catalogue::StreamKind kind;
    };
    struct Sent {
        std::string tag, family;
        catalogue::StreamKind kind;
    };
    std::vector<Input> inputs;
    std::vector<Sent> sent;

    int below(int count) { return static_cast<int>(random() % static_cast<std::uint64_t>(count)); }
    static std::string name(int s) { return "S" + std::to_string(s); }

    explicit TinyRoom(std::uint64_t seed) : random(seed) {
        const int switches = 1 + below(4);
        for (int s = 0; s < switches; ++s) add_switch(name(s));
        for (int s = 1; s < switches; ++s) join(name(s), name(below(s)));
        if (switches > 2 && below(3) == 0) join(name(0), name(switches - 1));  // now and then a loop, cut by the tree
        querier(name(below(switches)));
        for (int i = 0; i < 4; ++i) add_source(i, name(below(switches)));
        for (int i = 0; i < 3; ++i) add_sink(i, name(below(switches)));
    }
    void add_source(int i, const std::string& at) {
        auto type = types::make_encoder();
        const std::string family = below(2) == 0 ? "light" : "dense";
        type.key = {"tiny.enc." + family};
        type.codec->family = family;
        const auto tag = "E" + std::to_string(i);
        add_leaf(std::make_shared<const catalogue::DeviceType>(type), tag, at);
        add_stream(tag, tag, 10 * (1 + below(9)));
        sent.push_back({tag, family, catalogue::StreamKind::video});
        if (below(3) != 0) return;
        add_stream(tag + "a", tag, 1 + below(9));
        b.change<model::Stream>(streams.at(tag + "a"), [](auto& row) { row.kind = catalogue::StreamKind::audio; });
        sent.push_back({tag + "a", family, catalogue::StreamKind::audio});
    }
    void add_sink(int i, const std::string& at) {
        auto type = types::make_decoder();
        const std::string family = below(2) == 0 ? "light" : "dense";
        const int shape = below(3);  // one window; two windows; a window and audio
        type.key = {"tiny.dec." + family + std::to_string(shape)};
        type.codec->family = family;
        if (shape > 0)
            type.codec->inputs.push_back(
                {{"second"}, {}, shape == 1 ? catalogue::StreamKind::video : catalogue::StreamKind::audio});
        const auto tag = "D" + std::to_string(i);
        add_leaf(std::make_shared<const catalogue::DeviceType>(type), tag, at);
        for (const auto& input : type.codec->inputs) inputs.push_back({tag, input.key.text, family, input.kind});
    }

    /// The greatest load of each arc over every routing, each walked step by step.
    std::vector<base::Rate> by_trial(std::size_t input, SwitchedRoom& work) {
        if (input == inputs.size()) {
            std::vector<base::Rate> loads;
            const auto facts = work.facts();
            for (const auto& arc : facts.loads.presets.at(0).arcs) loads.push_back(arc.wire);
            return loads;
        }
        auto best = by_trial(input + 1, work);
        const auto& in = inputs[input];
        for (const auto& stream : sent) {
            if (stream.family != in.family || stream.kind != in.kind) continue;
            const auto id =
                work.b.subscribe(work.preset, work.streams.at(stream.tag), work.devices.at(in.decoder), in.input);
            const auto loads = by_trial(input + 1, work);
            for (std::size_t i = 0; i < best.size(); ++i) best[i] = std::max(best[i], loads[i]);
            work.b.design.subscriptions.erase(id);
        }
        return best;
    }
};

TEST(WorstCase, EqualsEveryRoutingOfTinyNetworks) {
    int compared = 0, routed = 0;
    for (std::uint64_t seed = 0; seed < 40; ++seed) {
        TinyRoom room(seed);
        if (room.inputs.size() > 5) continue;
        const auto facts = room.facts();
        const auto worst = facts.worst();
        SwitchedRoom work = room;
        const auto expected = room.by_trial(0, work);
        for (int arc = 0; arc < facts.network.arc_count(); ++arc) {
            EXPECT_EQ(worst.arcs[arc].wire, expected[arc]) << "seed " << seed << " arc " << arc;
            ++compared;
            routed += worst.arcs[arc].routed.empty() ? 0 : 1;
        }
    }
    EXPECT_GT(compared, 200);
    EXPECT_GT(routed, 40);
}

TEST(WorstCase, TheWitnessReachesIt) {
    for (std::uint64_t seed = 100; seed < 130; ++seed) {
        const TinyRoom room(seed);
        const auto facts = room.facts();
        const auto worst = facts.worst();
        std::vector<model::StreamId> streams;
        for (const auto& row : facts.wiring.design.streams) streams.push_back(row.id);
        for (int arc = 0; arc < facts.network.arc_count(); ++arc) {
            SwitchedRoom work = room;
            for (const auto& each : worst.arcs[arc].witness) {
                const auto& device = facts.wiring.devices[each.decoder];
                work.b.subscribe(work.preset, streams[each.stream], device.row->id,
                                 device.type->codec->inputs[each.input].key.text);
            }
            EXPECT_EQ(work.facts().loads.presets.at(0).arcs[arc].wire, worst.arcs[arc].wire) << seed << ' ' << arc;
        }
    }
}

}  // namespace
}  // namespace streamwright::analysis
