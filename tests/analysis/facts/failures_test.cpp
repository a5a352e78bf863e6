// Failures worked out by hand: a triangle of switches, a UPS, a stack, a duct with everything in it, no network at all.
#include "core/analysis/facts/failures.h"

#include "tests/support/design_builder.h"
#include "tests/support/network_facts.h"

#include <gtest/gtest.h>

namespace streamwright::test::failures_test {

using namespace base::literals;
using analysis::FailingKind;
using analysis::Outcome;
namespace cat = catalogue;

struct Known {
    explicit Known(const model::Design& design) : f(design) {
        const auto power = analysis::find_power_budget(f.wiring, f.runs);
        failures = *analysis::find_outcomes({f.wiring, f.runs, f.network, f.capacity, f.paths, f.trees, f.forwarding},
                                            f.loads, analysis::list_failing(f.wiring, f.runs, f.network, power), {});
    }
    /// By the tag of the cable or device, or the name of the duct.
    const Outcome& of(const std::string& tag) const {
        for (const auto& each : failures.outcomes) {
            const auto& failing = each.failing;
            if (failing.cable >= 0 && f.wiring.cables[static_cast<std::size_t>(failing.cable)].row->tag == tag)
                return each;
            if (failing.device >= 0 && f.wiring.devices[static_cast<std::size_t>(failing.device)].row->tag == tag)
                return each;
            if (failing.kind == FailingKind::duct && failing.duct == tag) return each;
        }
        throw std::out_of_range(tag);
    }
    NetworkFacts f;
    analysis::Failures failures;
};

/// SW-1 (root, asks), SW-2 and SW-3 in a triangle of 1 Gb/s; 2-3 is blocked. An encoder of 800 Mb/s on SW-2 and one on
/// SW-3; two decoders on SW-1 show them.
struct Triangle {
    DesignBuilder b;
    model::DeviceId s1{0}, s2{0}, s3{0};
    model::PresetId preset{0};

    explicit Triangle(std::optional<bool> rapid, std::optional<bool> query_on_change = {}) {
        auto type = types::make_switch(24, 1_Gbps, 0);
        type.bridging->rapid_tree = rapid;
        type.bridging->query_on_topology_change = query_on_change;
        const auto vlan = b.vlan(1, "AV", "10.1.0.0/24");
        b.usual_vlan(vlan);
        s1 = b.device(type, "SW-1"), s2 = b.device(type, "SW-2"), s3 = b.device(type, "SW-3");
        b.change<model::Device>(s1, [](auto& row) { row.bridging.priority = 4096; });
        b.change<model::Device>(s2, [](auto& row) { row.bridging.priority = 8192; });
        b.querier(s1, vlan, "10.1.0.1");
        b.cable(types::cat6a(), port_of(s1, "24"), port_of(s2, "24"), 10_m, "N12");
        b.cable(types::cat6a(), port_of(s2, "23"), port_of(s3, "23"), 10_m, "N23");
        b.cable(types::cat6a(), port_of(s3, "24"), port_of(s1, "23"), 10_m, "N31");
        preset = b.preset("P");
        show("2", s2);
        show("3", s3);
    }
    void show(const std::string& name, model::DeviceId from) {
        const auto encoder = b.device(types::encoder(), "ENC-" + name),
                   decoder = b.device(types::decoder(), "DEC-" + name);
        b.cable(types::cat6a(), port_of(encoder, "net"), port_of(from, "1"), 10_m, "E" + name);
        b.cable(types::cat6a(), port_of(decoder, "net"), port_of(s1, name), 10_m, "D" + name);
        b.subscribe(preset, b.stream(encoder, 800_Mbps, "239.0.1." + name), decoder);
    }
};

TEST(Failures, ACutLinkOfATriangleMovesThePicturesAndFillsTheOtherSide) {
    const Known known(Triangle(true).b.design);
    EXPECT_EQ(known.failures.parts, 1);
    const auto& cut = known.of("N12");
    EXPECT_TRUE(cut.lost.empty());
    EXPECT_EQ(cut.parts, 1);
    EXPECT_EQ(cut.opened.size(), 1u) << "N23";
    ASSERT_EQ(cut.moved.size(), 1u);
    ASSERT_EQ(cut.overfull.size(), 1u);
    EXPECT_EQ(cut.overfull[0].arc, known.f.arc("SW-3", "SW-1"));
    EXPECT_FALSE(cut.overfull[0].already);
    // Two of 800 Mb/s: 1400 octets with RTP 12, UDP 8, IPv4 20, Ethernet 18, preamble and gap 20 make 1478.
    EXPECT_EQ(cut.overfull[0].wire, base::Rate::scaled(1600_Mbps, 1478, 1400));
    EXPECT_EQ(cut.overfull[0].capacity, 1_Gbps);
    const auto& blocked = known.of("N23");
    EXPECT_TRUE(blocked.lost.empty() && blocked.moved.empty() && blocked.overfull.empty() && blocked.opened.empty());
    EXPECT_FALSE(blocked.back);
}

TEST(Failures, ASwitchTakesWhatHangsOnItAndADevicesCableTheDeviceAlone) {
    const Known known(Triangle(true).b.design);
    EXPECT_EQ(known.of("SW-2").lost.size(), 1u);
    EXPECT_EQ(known.of("SW-2").parts, 1);
    EXPECT_EQ(known.of("SW-1").lost.size(), 2u);
    EXPECT_EQ(known.of("E2").lost.size(), 1u);
    EXPECT_EQ(known.of("E2").failing.kind, FailingKind::access);
    EXPECT_TRUE(known.of("E2").overfull.empty());
}

/// SW-3 blocks N23. N12 goes: SW-2 has no other way, and SW-3 lets what it knows of SW-2 grow old. N31 goes: SW-3
/// knows.
TEST(Failures, TheClassicTreeTakesTwoForwardDelaysAndWhereNobodyNoticesTheMessageAgeToo) {
    const Known known(Triangle(false).b.design);
    // IEEE 802.1D-1998: forward delay 15 s, message age 20 s, hello 2 s. Nobody waits for a report: streams go to the
    // querier unasked.
    const auto direct = known.of("N31").back, indirect = known.of("N12").back;
    ASSERT_TRUE(direct && indirect);
    EXPECT_EQ(direct->from, 30_s);
    EXPECT_EQ(direct->to, 32_s);  // 2 x 15 + 2
    // SW-2 handed on the root's message: one bridge, so at least 20 - 2 - 1 of its age is left.
    EXPECT_EQ(indirect->from, 47_s);
    EXPECT_EQ(indirect->to, 52_s);  // 20 + 2 x 15 + 2
}

TEST(Failures, TheTimeIsNotKnownWhereATypeDoesNotSayHowItsTreeWorks) {
    EXPECT_FALSE(Known(Triangle(std::nullopt).b.design).of("N31").back);
    const auto rapid = Known(Triangle(true).b.design).of("N31").back;
    ASSERT_TRUE(rapid);
    EXPECT_EQ(rapid->from, 0_s);
    EXPECT_EQ(rapid->to, 6_s);  // three hellos of 2 s
}

TEST(Failures, APictureAwayFromTheQuerierWaitsForTheNextQuery) {
    for (const bool on_change : {false, true}) {
        Triangle t(false, on_change);
        const auto decoder = t.b.device(types::decoder(), "DEC-4");
        t.b.cable(types::cat6a(), port_of(decoder, "net"), port_of(t.s3, "4"), 10_m, "D4");
        const auto encoder = t.b.device(types::encoder(), "ENC-4");
        t.b.cable(types::cat6a(), port_of(encoder, "net"), port_of(t.s1, "9"), 10_m, "E4");
        t.b.subscribe(t.preset, t.b.stream(encoder, 10_Mbps, "239.0.1.4"), decoder);
        const auto back = Known(t.b.design).of("N31").back;
        ASSERT_TRUE(back);
        EXPECT_EQ(back->from, 30_s);
        // RFC 3376 8: 125 s to the next query and 10 s to answer; one that asks at once saves the first.
        EXPECT_EQ(back->to, on_change ? 42_s : 167_s);
    }
}

TEST(Failures, TheTimersOfTheRootCount) {
    Triangle t(false);
    t.b.change<model::Device>(t.s1, [](auto& row) {
        row.bridging.hello_s = 1;
        row.bridging.max_age_s = 6;
        row.bridging.forward_delay_s = 4;
    });
    const auto back = Known(t.b.design).of("N12").back;
    ASSERT_TRUE(back);
    EXPECT_EQ(back->from, 12_s);  // 2 x 4 + 6 - 1 - 1
    EXPECT_EQ(back->to, 15_s);    // 2 x 4 + 6 + 1
}

cat::DeviceType ups_type() {
    auto type = types::make_source();
    type.key = {"test.ups"};
    for (const std::string key : {"o1", "o2", "o3"})
        type.ports.push_back(types::make_port(key, cat::Signal::power, cat::Way::out, cat::Connector::iec_c13));
    return type;
}

TEST(Failures, AUpsTakesWhatItAloneFeeds) {
    DesignBuilder b;
    auto type = types::make_switch(8, 1_Gbps, 0);
    for (const std::string key : {"m1", "m2"})
        type.ports.push_back(types::make_port(key, cat::Signal::power, cat::Way::in, cat::Connector::iec_c14));
    const auto one = b.device(type, "SW-1"), two = b.device(type, "SW-2");
    const auto ups = b.device(ups_type(), "UPS-1"), other = b.device(ups_type(), "UPS-2");
    b.cable(types::cat6a(), port_of(ups, "o1"), port_of(one, "m1"), 2_m);
    b.cable(types::cat6a(), port_of(ups, "o2"), port_of(two, "m1"), 2_m);
    b.cable(types::cat6a(), port_of(other, "o1"), port_of(two, "m2"), 2_m);
    b.cable(types::cat6a(), port_of(one, "8"), port_of(two, "8"), 2_m, "N1");
    const Known known(b.design);
    EXPECT_EQ(known.of("UPS-1").failing.kind, FailingKind::power);
    EXPECT_EQ(known.of("UPS-1").failing.lost.devices.size(), 2u) << "itself and SW-1; SW-2 has another feed";
    EXPECT_EQ(known.of("UPS-1").parts, 1);
    EXPECT_EQ(known.of("UPS-2").failing.lost.devices.size(), 1u);
}

TEST(Failures, AStackLivesOnWithoutOneOfItsMembers) {
    Triangle t(true);
    for (const auto id : {t.s1, t.s2}) t.b.change<model::Device>(id, [](auto& row) { row.bridging.stack = "core"; });
    const Known known(t.b.design);
    EXPECT_EQ(known.of("SW-2").lost.size(), 1u) << "what hangs on the member alone";
    EXPECT_EQ(known.of("SW-2").parts, 1);
}

TEST(Failures, ADuctThatHoldsAllCablesLeavesNothing) {
    Triangle t(true);
    for (const auto& cable : model::Design(t.b.design).cables)
        t.b.change<model::Cable>(cable.id, [](auto& row) { row.duct = "Trench"; });
    const Known known(t.b.design);
    EXPECT_EQ(known.of("Trench").lost.size(), 2u);
    EXPECT_EQ(known.of("Trench").parts, 3);
    EXPECT_TRUE(known.of("Trench").overfull.empty());
}

TEST(Failures, WithoutAnySwitchOnlyCablesAndDuctsFail) {
    EXPECT_TRUE(Known(DesignBuilder().design).failures.outcomes.empty());
    DesignBuilder b;
    const auto encoder = b.device(types::encoder(), "ENC"), decoder = b.device(types::decoder(), "DEC");
    b.cable(types::cat6a(), port_of(encoder, "net"), port_of(decoder, "net"), 10_m, "N1");
    b.subscribe(b.preset("P"), b.stream(encoder, 10_Mbps, "239.0.1.1"), decoder);
    const Known known(b.design);
    ASSERT_EQ(known.failures.outcomes.size(), 1u);
    EXPECT_EQ(known.of("N1").lost.size(), 1u);
    EXPECT_EQ(known.of("N1").parts, 0);
}

TEST(Failures, TheFactHoldsWhatTheDesignAsksToOutliveAndStopsWhenTold) {
    const auto f = NetworkFacts(Triangle(true).b.design);
    const auto power = analysis::find_power_budget(f.wiring, f.runs);
    const auto count = [&](model::Survival survive) {
        auto design = f.wiring.design;
        auto settings = design.settings();
        settings.survive = survive;
        design.settings_table.put(settings);
        const NetworkFacts g(design);
        return analysis::find_failures(g.wiring, g.runs, g.network, g.capacity, g.paths, g.trees, g.forwarding, g.loads,
                                       power, {})
            ->outcomes.size();
    };
    EXPECT_EQ(count(model::Survival::nothing), 0u);
    EXPECT_EQ(count(model::Survival::link), 3u);
    EXPECT_EQ(count(model::Survival::link_or_switch), 6u);
    std::stop_source stop;
    std::size_t seen = 0;
    const auto stopped =
        analysis::find_outcomes({f.wiring, f.runs, f.network, f.capacity, f.paths, f.trees, f.forwarding}, f.loads,
                                analysis::list_failing(f.wiring, f.runs, f.network, power), stop.get_token(),
                                [&](std::size_t done, std::size_t) {
                                    seen = done;
                                    if (done == 2) stop.request_stop();
                                });
    EXPECT_FALSE(stopped);
    EXPECT_EQ(seen, 2u);
}

}  // namespace streamwright::test::failures_test
