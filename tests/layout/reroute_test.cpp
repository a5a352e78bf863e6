// What a move or a connection stores: lines between plates of the sheet, flags for cables that leave it.
#include "core/layout/cable_route.h"
#include "core/layout/lines.h"
#include "tests/support/design_builder.h"

#include <gtest/gtest.h>

namespace streamwright::layout {
namespace {

using namespace base::literals;
using test::DesignBuilder;
using test::port_of;
namespace types = streamwright::test::types;

struct Small {
    DesignBuilder b;
    model::SheetId sheet = b.sheet();
    model::DeviceId encoder = b.device(types::encoder(), "ENC-001");
    model::DeviceId sw = b.device(types::switch_24(), "SW-1");
    model::DeviceId decoder = b.device(types::decoder(), "DEC-001");
    model::CableId first = b.cable(types::cat6a(), port_of(encoder, "net"), port_of(sw, "1"), 20_m);
    model::CableId second = b.cable(types::cat6a(), port_of(sw, "2"), port_of(decoder, "net"), 20_m);
    Small() {
        b.place(sheet, encoder, 40_mm, 40_mm);
        b.place(sheet, sw, 150_mm, 60_mm);
    }
};

TEST(Reroute, JoinsTwoPlatesOfTheSheet) {
    Small s;
    const std::vector cables{s.first};
    const auto lines = reroute(s.b.design, s.sheet, cables);
    ASSERT_EQ(lines.size(), 1u);
    EXPECT_EQ(lines[0].on.cable, s.first);
    EXPECT_FALSE(lines[0].pinned);
    EXPECT_EQ(lines[0].bends.size(), 2u);
}

TEST(Reroute, BendsRunFromEndAToEndB) {
    Small s;
    const std::vector cables{s.first};
    const auto bends = reroute(s.b.design, s.sheet, cables)[0].bends;
    ASSERT_EQ(bends.size(), 2u);
    EXPECT_EQ(bends[0].y, 40_mm + 19500_um);  // the encoder's second row on the right, below its loop-out
    EXPECT_EQ(bends[1].y, 60_mm + 14500_um);
}

TEST(Reroute, ACableThatLeavesTheSheetGetsAFlagClearOfPlates) {
    Small s;
    const std::vector cables{s.second};
    const auto lines = reroute(s.b.design, s.sheet, cables);
    ASSERT_EQ(lines.size(), 1u);
    ASSERT_EQ(lines[0].bends.size(), 1u);
    const auto flag = flag_box(lines[0].bends[0], Side::right);
    EXPECT_EQ(flag.at.x, lines[0].bends[0].x);
    EXPECT_EQ(lines[0].bends[0].y, 60_mm + 14500_um);
}

TEST(Reroute, PinnedLinesAreLeftOut) {
    Small s;
    s.b.put(model::CableLine{{s.sheet, s.first}, {{100_mm, 100_mm}}, true, {}});
    const std::vector cables{s.first};
    EXPECT_TRUE(reroute(s.b.design, s.sheet, cables).empty());
}

TEST(Reroute, CablesBetweenPlacesElsewhereAreNoLines) {
    Small s;
    const auto other = s.b.sheet(2);
    const std::vector cables{s.first, s.second};
    EXPECT_TRUE(reroute(s.b.design, other, cables).empty());
}

}  // namespace
}  // namespace streamwright::layout
