// Worst cases in every mode of switches. Expected values: the greatest of the loads of every routing, each worked out
// by the load analysis step by step; and each routing named must reach the load named.
#include "tests/graph/mode_room.h"

#include <gtest/gtest.h>

namespace streamwright::analysis {
namespace {

using test::ModeRoom;
using test::NetworkFacts;
using test::RoomMode;

/// Each witness as a preset; per arc the load it reaches.
std::vector<base::Rate> reached(ModeRoom room, const NetworkFacts& facts, const WorstCase& worst) {
    std::vector<model::StreamId> streams;
    for (const auto& row : facts.wiring.design.streams) streams.push_back(row.id);
    std::vector<model::PresetId> presets;
    int number = 0;
    for (const auto& arc : worst.arcs) {
        presets.push_back(room.b.preset("witness"));
        room.b.change<model::Preset>(presets.back(), [&](auto& row) { row.number = ++number; });
        for (const auto& each : arc.witness) {
            const auto& device = facts.wiring.devices[static_cast<std::size_t>(each.decoder)];
            room.b.subscribe(presets.back(), streams[static_cast<std::size_t>(each.stream)], device.row->id,
                             device.type->codec->inputs[static_cast<std::size_t>(each.input)].key.text);
        }
    }
    const auto tried = room.facts();
    std::vector<base::Rate> loads(worst.arcs.size());
    for (const auto& preset : tried.loads.presets)
        for (std::size_t arc = 0; arc < presets.size(); ++arc)
            if (presets[arc] == preset.preset) loads[arc] = preset.arcs[arc].wire;
    return loads;
}

struct Seen {
    int arcs = 0, routed = 0, bounds = 0, displaced = 0;
};

void hold_against_every_routing(const ModeRoom& room, const std::string& name, Seen& seen) {
    auto all = room;
    all.add_every_routing();
    const auto facts = all.facts();
    const auto worst = facts.worst();
    const auto witness = reached(room, facts, worst);
    for (std::size_t arc = 0; arc < worst.arcs.size(); ++arc) {
        base::Rate best;
        for (const auto& preset : facts.loads.presets) best = std::max(best, preset.arcs[arc].wire);
        const auto& told = worst.arcs[arc];
        if (told.at_most) {
            EXPECT_GE(told.wire, best) << name << " arc " << arc;
            EXPECT_LE(witness[arc], best) << name << " arc " << arc;
        } else {
            EXPECT_EQ(told.wire, best) << name << " arc " << arc;
            EXPECT_EQ(witness[arc], told.wire) << name << " arc " << arc;
        }
        ++seen.arcs;
        seen.routed += told.routed.empty() ? 0 : 1;
        seen.bounds += told.at_most ? 1 : 0;
        seen.displaced += told.unasked.size() < facts.loads.idle.arcs[arc].streams.size() ? 1 : 0;
    }
}

class WorstCaseModes : public testing::TestWithParam<RoomMode> {};

TEST_P(WorstCaseModes, EqualsEveryRoutingOfFiveHundredNetworks) {
    Seen seen;
    for (std::uint64_t seed = 0; seed < 500 && !HasFailure(); ++seed)
        hold_against_every_routing(ModeRoom(GetParam(), seed), "seed " + std::to_string(seed), seen);
    EXPECT_GT(seen.arcs, 4000);
    EXPECT_GT(seen.routed, GetParam() == RoomMode::flood ? -1 : 500);
    // Besides loops, only a twin whose group a third stream has too is told as a bound.
    EXPECT_LE(seen.bounds, GetParam() == RoomMode::looped ? seen.arcs : seen.arcs / 20);
    RecordProperty("routed", seen.routed);
    RecordProperty("bounds", seen.bounds);
    RecordProperty("displaced", seen.displaced);
}

std::string mode_name(const testing::TestParamInfo<RoomMode>& param) {
    const char* names[] = {"flood", "router_ports", "drop", "mixed", "looped"};
    return names[static_cast<int>(param.param)];
}

const auto modes =
    testing::Values(RoomMode::flood, RoomMode::router_ports, RoomMode::drop, RoomMode::mixed, RoomMode::looped);
INSTANTIATE_TEST_SUITE_P(All, WorstCaseModes, modes, mode_name);

/// Two switches that drop unknown groups, the querier away from the sources.
struct Dropping : test::SwitchedRoom {
    Dropping() {
        for (const char* tag : {"A", "B"}) {
            auto type = switch_type();
            type.bridging->unknown_groups = catalogue::UnknownGroups::drop;
            add_switch(tag, type);
        }
        join("A", "B");
        querier("B");
    }
    WorstCase worst_of(const Compatibility& compatibility) const {
        const auto f = facts();
        return *find_worst_case(f.wiring, f.network, f.paths, f.trees, f.forwarding, f.loads, compatibility, {});
    }
};

// Toward the querier a stream that A drops needs an input on A: there is one, so one of the three streams comes.
TEST(WorstCaseDropping, OneInputOnTheSourcesSideLetsOneStreamOut) {
    Dropping room;
    for (const int rate : {300, 200, 100}) room.add_encoder("E" + std::to_string(rate), "A", rate);
    for (const char* tag : {"D1", "D2", "D3"}) room.add_decoder(tag, "B");
    EXPECT_EQ(room.facts().worst().arcs.at(room.facts().arc("A", "B")).wire, test::megabits(0));
    room.add_decoder("D0", "A");
    const auto facts = room.facts();
    const auto worst = facts.worst();
    EXPECT_EQ(worst.arcs.at(facts.arc("A", "B")).wire, test::megabits(300));
    // And the display on B needs both: D0 to open the way, and itself.
    EXPECT_EQ(worst.arcs.at(facts.arc("B", "D1")).witness.size(), 2U);
}

TEST(WorstCaseDropping, DecodersThatMayShowNothingAndNoInputsAtAll) {
    Dropping room;
    room.add_encoder("E", "A", 100);
    room.add_decoder("D", "A");
    Compatibility nobody = usual_compatibility(room.facts().wiring);
    for (auto& row : nobody.takes) row.assign(row.size(), false);
    for (const auto& arc : room.worst_of(nobody).arcs) EXPECT_TRUE(arc.routed.empty() && arc.witness.empty());
    nobody.slots.clear();
    for (const auto& arc : room.worst_of(nobody).arcs) EXPECT_TRUE(arc.routed.empty());
    EXPECT_TRUE(Dropping().facts().worst().arcs.at(0).unasked.empty());
}

// 100,000 streams of one encoder, every tenth of them in pairs on a group; two inputs, one on either side.
TEST(WorstCaseDropping, AHundredThousandStreamsAreAnswered) {
    Dropping room;
    room.add_leaf(test::types::encoder(), "E", "A");
    for (int s = 0; s < 100'000; ++s) {
        const int group = s % 10 == 1 ? s - 1 : s;
        const auto id = room.b.stream(room.devices.at("E"), base::BitRate::from_count(1000 + s),
                                      "239." + std::to_string(group >> 16) + '.' + std::to_string(group >> 8 & 255) +
                                          '.' + std::to_string(group & 255));
        static_cast<void>(id);
    }
    room.add_decoder("D1", "A");
    room.add_decoder("D2", "B");
    const auto facts = room.facts();
    const auto worst = facts.worst();
    const auto& trunk = worst.arcs.at(facts.arc("A", "B"));
    EXPECT_FALSE(trunk.at_most);
    // A pair on one group weighs 1,000 + s - 1 and 1,000 + s: the last, of s = 99,991, beats any single stream.
    EXPECT_EQ(trunk.routed.size(), 2U);
    EXPECT_EQ(trunk.witness.size(), 1U);
}

}  // namespace
}  // namespace streamwright::analysis
