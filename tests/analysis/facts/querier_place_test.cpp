// Where the querier stands best: a star worked out by hand, and random trees against a walk of plain lists.
#include "core/analysis/facts/querier_place.h"

#include "tests/support/design_builder.h"
#include "tests/support/network_facts.h"

#include <gtest/gtest.h>

#include <map>
#include <random>
#include <set>

namespace streamwright::test::querier_place_fact_test {

using namespace base::literals;

analysis::QuerierPlaces places_of(const model::Design& design) {
    const NetworkFacts f(design);
    return *analysis::find_querier_places(f.wiring, f.network, f.paths, f.trees, f.forwarding, f.loads, {});
}

TEST(QuerierPlaceFact, NothingIsJudgedWithoutStreamsOrWithoutOneAskerWithAnAddress) {
    DesignBuilder b;
    const auto vlan = b.vlan(1, "AV", "10.1.0.0/24");
    b.usual_vlan(vlan);
    const auto one = b.device(types::switch_24(), "SW-1"), two = b.device(types::switch_24(), "SW-2");
    b.cable(types::cat6a(), port_of(one, "24"), port_of(two, "24"), 10_m);
    b.querier(one, vlan, "10.1.0.2");
    EXPECT_TRUE(places_of(b.design).places.empty()) << "no streams";
    const auto encoder = b.device(types::encoder(), "ENC");
    b.cable(types::cat6a(), port_of(encoder, "net"), port_of(two, "1"), 10_m);
    b.stream(encoder, 100_Mbps, "239.192.0.1");
    ASSERT_EQ(places_of(b.design).places.size(), 1u);
    EXPECT_NE(places_of(b.design).places[0].best, places_of(b.design).places[0].now);
    auto other = b;
    other.querier(two, vlan, "10.1.0.3");
    EXPECT_TRUE(places_of(other.design).places.empty()) << "two would ask";
    b.change<model::Device>(one, [](auto& row) { row.bridging.queriers.front().address.reset(); });
    EXPECT_TRUE(places_of(b.design).places.empty()) << "no address: others do not follow (RFC 4541 2.1.1)";
}

/// A tree of switches with what hangs on it, in plain lists.
struct Tree {
    DesignBuilder b;
    std::vector<model::DeviceId> switches;
    std::vector<int> parent;                           // of each switch but the first
    std::vector<std::pair<int, base::Rate>> streams;   // where it enters, its rate on the wire
    std::vector<std::map<int, std::set<int>>> wanted;  // per preset: per stream, switches that it is wanted at
    int querier = 0;

    explicit Tree(unsigned seed) : b(seed) {
        std::mt19937_64 random(seed);
        const auto below = [&](std::size_t n) { return static_cast<int>(random() % n); };
        const auto vlan = b.vlan(1, "AV", "10.1.0.0/16");
        b.usual_vlan(vlan);
        const int count = 2 + below(5);
        for (int i = 0; i < count; ++i) {
            switches.push_back(b.device(types::switch_24(), "SW-" + std::to_string(i)));
            parent.push_back(i == 0 ? -1 : below(static_cast<std::size_t>(i)));
            if (i == 0) continue;
            b.cable(types::cat6a(), port_of(switches.back(), "24"),
                    port_of(switches[static_cast<std::size_t>(parent.back())], std::to_string(24 - i)), 10_m);
        }
        querier = below(switches.size());
        b.querier(switches[static_cast<std::size_t>(querier)], vlan, "10.1.0.9");
        std::vector<int> port(switches.size(), 1);
        const auto hang = [&](model::DeviceId device, int where) {
            const auto w = static_cast<std::size_t>(where);
            b.cable(types::cat6a(), port_of(device, "net"), port_of(switches[w], std::to_string(port[w]++)), 10_m);
        };
        std::vector<model::StreamId> ids;
        for (int i = 0, n = 1 + below(8); i < n; ++i) {
            const int where = below(switches.size());
            const auto encoder = b.device(types::encoder(), "ENC-" + std::to_string(i));
            hang(encoder, where);
            const auto payload = base::BitRate::from_count((50 + below(300)) * 1'000'000LL);
            ids.push_back(b.stream(encoder, payload, "239.192.1." + std::to_string(i + 1)));
            // 1400 octets: RTP 12, UDP 8, IPv4 20, Ethernet 18, preamble and gap 20 make 1478.
            streams.emplace_back(where, base::Rate::scaled(payload, 1478, 1400));
        }
        std::vector<model::PresetId> presets;
        for (int i = 0; i < 2; ++i) presets.push_back(b.preset("P" + std::to_string(i)));
        wanted.resize(presets.size());
        for (int i = 0, n = below(7); i < n; ++i) {
            const int where = below(switches.size());
            const auto decoder = b.device(types::decoder(), "DEC-" + std::to_string(i));
            hang(decoder, where);
            for (std::size_t p = 0; p < presets.size(); ++p) {
                const int stream = below(streams.size());
                b.subscribe(presets[p], ids[static_cast<std::size_t>(stream)], decoder);
                wanted[p][stream].insert(where);
            }
        }
    }

    /// Whether switch `at` is in the branch below `top`.
    bool below_of(int at, int top) const {
        for (; at >= 0; at = parent[static_cast<std::size_t>(at)])
            if (at == top) return true;
        return false;
    }

    /// A stream goes over a direction when it enters behind it and the querier, or somebody who wants it, is beyond.
    base::Rate greatest(int asking) const {
        base::Rate most;
        for (int child = 1; child < static_cast<int>(switches.size()); ++child)
            for (const bool down : {true, false})
                for (std::size_t p = 0; p < wanted.size(); ++p) {
                    base::Rate sum;
                    const auto beyond = [&](int at) { return below_of(at, child) == down; };
                    for (std::size_t s = 0; s < streams.size(); ++s) {
                        if (beyond(streams[s].first)) continue;
                        bool goes = beyond(asking);
                        const auto found = wanted[p].find(static_cast<int>(s));
                        if (found != wanted[p].end())
                            for (const int at : found->second) goes = goes || beyond(at);
                        if (goes) sum += streams[s].second;
                    }
                    if (sum > most) most = sum;
                }
        return most;
    }
};

TEST(QuerierPlaceFact, OnRandomTreesItIsTheLeastOfAllPlaces) {
    int better = 0, equal = 0;
    for (unsigned seed = 1; seed <= 150; ++seed) {
        SCOPED_TRACE("seed " + std::to_string(seed));
        const Tree tree(seed);
        const NetworkFacts f(tree.b.design);
        const auto places = places_of(tree.b.design).places;
        ASSERT_EQ(places.size(), 1u);
        const auto index = [&](int bridge) {
            const auto id = f.wiring
                                .devices[static_cast<std::size_t>(
                                    f.network.bridges[static_cast<std::size_t>(bridge)].devices.front())]
                                .row->id;
            return static_cast<int>(std::find(tree.switches.begin(), tree.switches.end(), id) - tree.switches.begin());
        };
        base::Rate least = tree.greatest(tree.querier);
        for (int i = 0; i < static_cast<int>(tree.switches.size()); ++i) least = std::min(least, tree.greatest(i));
        EXPECT_EQ(index(places[0].now), tree.querier);
        EXPECT_EQ(places[0].with_now.wire, tree.greatest(tree.querier));
        EXPECT_EQ(places[0].with_best.wire, least);
        EXPECT_EQ(tree.greatest(index(places[0].best)), least);
        const bool no_better = tree.greatest(tree.querier) == least;
        EXPECT_EQ(places[0].best == places[0].now, no_better) << "never moved where that gains nothing";
        ++(no_better ? equal : better);
        if (testing::Test::HasFailure()) break;
    }
    EXPECT_GT(better, 30);
    EXPECT_GT(equal, 30);
}

}  // namespace streamwright::test::querier_place_fact_test
