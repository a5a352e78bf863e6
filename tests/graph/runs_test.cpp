// Runs through patch panels. Expected values: by hand from the drawing in each test.
#include "core/graph/runs.h"

#include "tests/support/design_builder.h"

#include <gtest/gtest.h>

namespace streamwright::graph {
namespace {

using test::DesignBuilder;
using test::port_of;
namespace types = test::types;

TEST(Runs, JoinsCablesThroughTwoPanels) {
    DesignBuilder b;
    const auto sw = b.device(types::switch_24(), "SW");
    const auto near = b.device(types::patch_panel(), "PP1");
    const auto far = b.device(types::patch_panel(), "PP2");
    const auto dec = b.device(types::decoder(), "DEC");
    const auto lead = b.cable(types::cat6a_lead(), port_of(sw, "1"), port_of(near, "f3"));
    const auto fixed = b.cable(types::cat6a(), port_of(far, "r5"), port_of(near, "r3"));
    const auto end = b.cable(types::cat6a_lead(), port_of(far, "f5"), port_of(dec, "net"));
    const auto wiring = wire(b.design);
    const auto runs = find_runs(wiring);
    ASSERT_EQ(runs.list.size(), 1U);
    const auto& run = runs.list[0];
    ASSERT_EQ(run.cables.size(), 3U);
    EXPECT_EQ(run.cables[1], *wiring.cable_index(fixed));
    const bool from_switch = run.a == wiring.port_at(port_of(sw, "1"));
    EXPECT_EQ(from_switch ? run.b : run.a, wiring.port_at(port_of(dec, "net")));
    EXPECT_EQ(run.cables[from_switch ? 0 : 2], *wiring.cable_index(lead));
    EXPECT_EQ(run.cables[from_switch ? 2 : 0], *wiring.cable_index(end));
}

TEST(Runs, EndsOpenWhereNothingIsPatchedOrTheCableHangs) {
    DesignBuilder b;
    const auto panel = b.device(types::patch_panel(), "PP");
    const auto dec = b.device(types::decoder(), "DEC");
    b.cable(types::cat6a(), port_of(panel, "r1"), port_of(dec, "net"));
    b.open_cable(types::cat6a(), port_of(panel, "f2"));
    const auto wiring = wire(b.design);
    const auto runs = find_runs(wiring);
    ASSERT_EQ(runs.list.size(), 2U);
    for (const auto& run : runs.list) EXPECT_FALSE(run.a && run.b);
}

TEST(Runs, ARingOfPanelsEndsAndEachCableIsInOneRun) {
    DesignBuilder b;
    const auto p = b.device(types::patch_panel(), "P");
    const auto q = b.device(types::patch_panel(), "Q");
    b.cable(types::cat6a(), port_of(p, "f1"), port_of(q, "f1"));
    b.cable(types::cat6a(), port_of(p, "r1"), port_of(q, "r1"));
    const auto runs = find_runs(wire(b.design));
    ASSERT_EQ(runs.list.size(), 1U);
    EXPECT_EQ(runs.list[0].cables.size(), 2U);
    EXPECT_FALSE(runs.list[0].a || runs.list[0].b);
}

TEST(Runs, ASecondCableInOnePanelFaceStaysARunOfItsOwn) {
    DesignBuilder b;
    const auto panel = b.device(types::patch_panel(), "PP");
    const auto sw = b.device(types::switch_24(), "SW");
    for (const char* port : {"1", "2"}) b.cable(types::cat6a(), port_of(sw, port), port_of(panel, "f1"));
    b.cable(types::cat6a(), port_of(panel, "r1"), port_of(sw, "3"));
    const auto runs = find_runs(wire(b.design));
    ASSERT_EQ(runs.list.size(), 2U);
    EXPECT_EQ(runs.list[0].cables.size() + runs.list[1].cables.size(), 3U);
}

/// By hand from the drawing: ports 1 and 2 of the switch are alike, the lead is another cable than the two that are
/// installed, and a run that ends open is of no other's kind.
TEST(Runs, OneKindJoinsAlikePortsOverTheSameTypes) {
    DesignBuilder b;
    const auto sw = b.device(types::switch_24(), "SW");
    const auto add = [&](const char* port, const auto& cable) {
        return b.cable(cable, port_of(sw, port), port_of(b.device(types::decoder(), "DEC"), "net"));
    };
    const auto one = add("1", types::cat6a()), two = add("2", types::cat6a()), lead = add("3", types::cat6a_lead());
    const auto open = b.open_cable(types::cat6a(), port_of(sw, "4"));
    const auto wiring = wire(b.design);
    const auto runs = find_runs(wiring);
    const auto kind = [&](model::CableId id) {
        return runs.kind_of_run[static_cast<std::size_t>(
            runs.run_of_cable[static_cast<std::size_t>(*wiring.cable_index(id))])];
    };
    EXPECT_EQ(runs.kinds, 3);
    EXPECT_EQ(kind(one), kind(two));
    EXPECT_NE(kind(one), kind(lead));
    EXPECT_NE(kind(one), kind(open));
    EXPECT_NE(kind(lead), kind(open));
}

}  // namespace
}  // namespace streamwright::graph
