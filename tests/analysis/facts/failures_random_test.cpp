// Every failure of random designs against the analysis of a design whose rows were really taken out: the same pictures
// lost, the same overfull directions with the same load, the same parts.
#include "core/analysis/facts/failures.h"
#include "core/graph/islands.h"
#include "tests/support/network_facts.h"
#include "tests/support/random_network.h"

#include <gtest/gtest.h>

#include <map>
#include <set>
#include <tuple>

namespace streamwright::test::failures_random_test {

namespace {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

analysis::Failures outcomes_of(const NetworkFacts& f) {
    const auto power = analysis::find_power_budget(f.wiring, f.runs);
    return *analysis::find_outcomes({f.wiring, f.runs, f.network, f.capacity, f.paths, f.trees, f.forwarding}, f.loads,
                                    analysis::list_failing(f.wiring, f.runs, f.network, power), {});
}

/// The rows are taken out of the tables; streams and subscriptions stay, so that both count them alike.
model::Design without(const NetworkFacts& f, const graph::Lost& lost) {
    auto design = f.wiring.design;
    std::set<model::DeviceId> gone;
    for (const int device : lost.devices) gone.insert(f.wiring.devices[at(device)].row->id);
    for (const auto id : gone) design.devices.erase(id);
    for (const int cable : lost.cables) design.cables.erase(f.wiring.cables[at(cable)].row->id);
    for (const auto& cable : f.wiring.design.cables)
        if ((cable.a && gone.contains(cable.a->port.device)) || (cable.b && gone.contains(cable.b->port.device)))
            design.cables.erase(cable.id);
    return design;
}

/// A direction by the cables of its runs and the ports it leaves from: names that do not depend on what is first.
using Direction = std::pair<std::set<model::CableId>, std::set<model::PortRef>>;
Direction direction(const NetworkFacts& f, int arc, const model::Design& standing) {
    Direction d;
    const auto add = [&](int run, graph::PortAt from) {
        const auto id = f.wiring.cables[at(f.runs.list[at(run)].cables.front())].row->id;
        const auto port = f.wiring.ref(from);
        const auto& cables = f.runs.list[at(run)].cables;
        const bool whole = std::all_of(cables.begin(), cables.end(), [&](int cable) {
            return standing.cables.contains(f.wiring.cables[at(cable)].row->id);
        });
        if (!whole) return;
        d.first.insert(id);
        d.second.insert(port);
    };
    if (f.network.is_link_arc(arc)) {
        const auto& link = f.network.links[at(arc / 2)];
        for (std::size_t i = 0; i < link.runs.size(); ++i)
            add(link.runs[i], arc % 2 == 0 ? link.a_ports[i] : link.b_ports[i]);
    } else {
        const auto& leaf = f.network.leaves[at(arc / 2) - f.network.links.size()];
        add(leaf.run, arc % 2 == 0 ? leaf.device_port : leaf.bridge_port);
    }
    return d;
}

using Overfull = std::map<std::pair<int, Direction>, std::pair<base::Rate, base::BitRate>>;

Overfull overfull_in(const NetworkFacts& f) {
    Overfull all;
    const auto read = [&](int preset, const analysis::PresetLoad& load) {
        for (int arc = 0; arc < f.network.arc_count(); ++arc)
            if (const auto capacity = f.capacity.arcs[at(arc)]; capacity && load.arcs[at(arc)].wire.ceil() > *capacity)
                all[{preset, direction(f, arc, f.wiring.design)}] = {load.arcs[at(arc)].wire, *capacity};
    };
    for (std::size_t p = 0; p < f.loads.presets.size(); ++p) read(static_cast<int>(p), f.loads.presets[p]);
    if (f.loads.presets.empty()) read(-1, f.loads.idle);
    return all;
}

/// Preset and subscription, by index: those whose stream does not arrive, and its twin, if there is one, neither.
std::set<std::pair<int, int>> unserved_in(const NetworkFacts& f) {
    std::map<model::StreamId, std::size_t> indices;
    std::map<std::size_t, std::size_t> twins;
    for (const auto& row : f.wiring.design.streams) indices.emplace(row.id, indices.size());
    for (const auto& row : f.wiring.design.streams)
        if (row.twin) {
            twins[indices[row.id]] = indices[*row.twin];
            twins[indices[*row.twin]] = indices[row.id];
        }
    std::set<std::pair<int, int>> all;
    int index = 0;
    for (const auto& row : f.wiring.design.subscriptions) {
        for (std::size_t p = 0; p < f.loads.presets.size(); ++p) {
            const auto lacks = [&](std::size_t stream) {
                const auto& unserved = f.loads.presets[p].unserved[stream];
                return std::find(unserved.begin(), unserved.end(), index) != unserved.end();
            };
            const auto stream = indices.at(row.stream);
            if (f.loads.presets[p].preset == row.preset && lacks(stream) &&
                (!twins.contains(stream) || lacks(twins.at(stream))))
                all.emplace(p, index);
        }
        ++index;
    }
    return all;
}

int parts_of(const NetworkFacts& f) {
    std::vector<bool> up;
    for (std::size_t i = 0; i < f.network.links.size(); ++i) up.push_back(f.capacity.arcs[2 * i].has_value());
    return graph::find_islands(f.network, up).count;
}

struct Seen {
    int lost = 0, overfull = 0, moved = 0, anew = 0;
};

void expect_as_if_taken_out(const NetworkFacts& whole, const analysis::Outcome& outcome, Seen& seen) {
    const auto design = without(whole, outcome.failing.lost);
    const NetworkFacts rest(design);
    std::set<std::pair<int, int>> lost, expected = unserved_in(rest);
    for (const auto& each : unserved_in(whole)) expected.erase(each);
    for (const auto& each : outcome.lost) lost.emplace(each.preset, each.subscription);
    EXPECT_EQ(lost, expected);
    Overfull overfull;
    for (const auto& each : outcome.overfull)
        overfull[{each.preset, direction(whole, each.arc, design)}] = {each.wire, each.capacity};
    EXPECT_EQ(overfull, overfull_in(rest));
    EXPECT_EQ(outcome.parts, parts_of(rest));
    seen.lost += static_cast<int>(lost.size());
    seen.overfull += static_cast<int>(overfull.size());
    seen.moved += static_cast<int>(outcome.moved.size());
}

}  // namespace

TEST(FailuresRandom, AFailureIsAsIfTheRowsWereTakenOut) {
    Seen seen;
    int failures = 0;
    for (unsigned seed = 1; seed <= 300; ++seed) {
        const NetworkFacts whole(random_network(seed));
        for (const auto& outcome : outcomes_of(whole).outcomes) {
            expect_as_if_taken_out(whole, outcome, seen);
            ++failures;
            if (HasFailure()) {
                const auto& f = outcome.failing;
                FAIL() << "seed " << seed << " kind " << static_cast<int>(f.kind) << " cable " << f.cable << " device "
                       << f.device << " duct " << f.duct;
            }
        }
    }
    // Measured when written; a test that meets nothing proves nothing.
    EXPECT_GT(failures, 3000);
    EXPECT_GT(seen.lost, 1000);
    EXPECT_GT(seen.overfull, 1000);
    EXPECT_GT(seen.moved, 100);
}

}  // namespace streamwright::test::failures_random_test
