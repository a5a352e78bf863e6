// VLANs share links and nothing else: what n of them put on a link is the sum of what each would put there alone.
#include "core/model/edits/all_edits.h"
#include "tests/support/design_builder.h"
#include "tests/support/network_facts.h"

#include <gtest/gtest.h>

#include <map>
#include <random>

namespace streamwright::test::vlan_sum_test {

constexpr int vlan_count = 3, switch_count = 4, each_vlan_has = 4;

/// A ring of switches with a chord, every trunk tagged in every VLAN; encoders and decoders of each VLAN anywhere, one
/// querier a VLAN. Which switch leads the tree is drawn too.
struct Ring {
    DesignBuilder b;
    std::mt19937_64 random;
    std::vector<model::DeviceId> switches;
    std::vector<model::VlanId> vlans;
    std::map<model::VlanId, std::vector<model::DeviceId>> devices;
    std::vector<int> next_port = std::vector<int>(switch_count, 1);

    explicit Ring(std::uint64_t seed) : random(seed) {
        for (int v = 0; v < vlan_count; ++v)
            vlans.push_back(b.vlan(10 * (v + 1), "V" + std::to_string(v), "10." + std::to_string(v) + ".0.0/24"));
        for (int s = 0; s < switch_count; ++s) {
            switches.push_back(b.device(types::switch_24(), "SW" + std::to_string(s)));
            b.change<model::Device>(switches.back(),
                                    [&](auto& row) { row.bridging.priority = static_cast<int>(random() % 16) * 4096; });
        }
        for (int s = 0; s < switch_count; ++s) join(s, (s + 1) % switch_count);
        join(0, 2);
        const auto preset = b.preset("all");
        for (int v = 0; v < vlan_count; ++v) fill(v, preset);
    }

    model::PortRef free_port(int at) { return port_of(switches[at], std::to_string(next_port[at]++)); }

    void join(int one, int other) {
        const auto a = free_port(one), z = free_port(other);
        b.cable(types::cat6a(), a, z, base::Length::from_count(20'000'000));
        for (const auto& port : {a, z}) b.port(port, [&](auto& row) { row.no_untagged = true, row.tagged = vlans; });
    }

    model::DeviceId hang(const types::DevicePtr& type, const std::string& tag, model::VlanId vlan) {
        const auto device = b.device(type, tag);
        const auto port = free_port(static_cast<int>(random() % switch_count));
        b.cable(types::cat6a(), port_of(device, "net"), port, base::Length::from_count(10'000'000));
        b.port(port, [&](auto& row) { row.untagged = vlan; });
        devices[vlan].push_back(device);
        return device;
    }

    void fill(int v, model::PresetId preset) {
        b.querier(switches[random() % switch_count], vlans[v], "10." + std::to_string(v) + ".0.1");
        std::vector<model::StreamId> streams;
        for (int i = 0; i < each_vlan_has; ++i) {
            const auto n = std::to_string(v) + std::to_string(i);
            const auto encoder = hang(types::encoder(), "E" + n, vlans[v]);
            const auto rate = base::BitRate::from_count(static_cast<std::int64_t>(100 + random() % 300) * 1'000'000);
            // VLANs keep their groups apart: the same ones in each.
            streams.push_back(b.stream(encoder, rate, "239.192.7." + std::to_string(i + 1), vlans[v]));
        }
        for (int i = 0; i < each_vlan_has; ++i)
            b.subscribe(preset, streams[random() % streams.size()],
                        hang(types::decoder(), "D" + std::to_string(v) + std::to_string(i), vlans[v]));
    }

    /// The design with the devices of one VLAN alone; trunks and queriers stay as they are.
    model::Design alone(model::VlanId kept) const {
        model::Remove edit;
        for (const auto& [vlan, those] : devices)
            if (vlan != kept)
                for (const auto device : those) edit.rows.emplace_back(device);
        auto design = b.design;
        model::apply(design, *model::make(design, edit));
        return design;
    }
};

using Arc = std::tuple<model::CableId, model::DeviceId>;  // the link and where the arc comes from
using Loads = std::map<Arc, base::Rate>;

Loads loads_of(const model::Design& design) {
    const NetworkFacts facts(design);
    Loads loads;
    for (int arc = 0; arc < facts.network.arc_count(); ++arc) {
        const auto ends = graph::arc_ends(facts.wiring, facts.runs, facts.network, arc);
        const auto& wire = facts.loads.presets.front().arcs[static_cast<std::size_t>(arc)].wire;
        if (!wire.is_zero()) loads[{ends.link, ends.from}] += wire;
    }
    return loads;
}

TEST(VlanSum, LoadsOfSeveralVlansAreTheSumOfTheirOwn) {
    int shared = 0;
    for (std::uint64_t seed = 0; seed < 100; ++seed) {
        const Ring ring(seed);
        Loads sum;
        std::map<Arc, int> vlans_on;
        for (const auto vlan : ring.vlans)
            for (const auto& [arc, wire] : loads_of(ring.alone(vlan))) sum[arc] += wire, ++vlans_on[arc];
        EXPECT_EQ(loads_of(ring.b.design), sum) << "seed " << seed;
        for (const auto& [arc, count] : vlans_on) shared += count > 1 ? 1 : 0;
    }
    EXPECT_GT(shared, 300) << "arcs that several VLANs load, or nothing was summed";
}

}  // namespace streamwright::test::vlan_sum_test
