// Plates in line and at equal gaps. A plate without ports measures 30 by 14 mm by the visual language (title row
// 7 mm, type row 5 mm, foot 2 mm), so that the expected places are worked out by hand.
#include "core/layout/align.h"

#include "core/layout/plate.h"
#include "tests/support/design_builder.h"

#include <gtest/gtest.h>

namespace streamwright::layout {
namespace {

using namespace base::literals;
using model::DeviceId;
using model::SheetPoint;

class Align : public testing::Test {
protected:
    /// A plain plate of 30 by 14 mm.
    DeviceId plain(base::Length x, base::Length y) {
        catalogue::DeviceType type;
        type.key = {"test.plain"};
        return stand(b.device(type, "P-" + std::to_string(++count)), x, y);
    }
    DeviceId stand(DeviceId device, base::Length x, base::Length y) {
        b.place(sheet, device, x, y);
        chosen.push_back(device);
        return device;
    }
    model::Design after(Alignment alignment) {
        auto design = b.design;
        for (const auto& place : aligned(design, sheet, chosen, alignment)) design.places.put(place);
        return design;
    }
    std::vector<SheetPoint> places(Alignment alignment) {
        const auto design = after(alignment);
        std::vector<SheetPoint> found;
        for (const auto id : chosen) found.push_back(design.places.find({sheet, id})->at);
        return found;
    }
    Box body(const model::Design& design, DeviceId id) {
        const auto& row = *design.devices.find(id);
        return plate_of(design.type_of(row), row.roles, *design.places.find({sheet, id})).body;
    }

    test::DesignBuilder b;
    model::SheetId sheet = b.sheet();
    std::vector<DeviceId> chosen;
    int count = 0;
};

using Points = std::vector<SheetPoint>;

TEST_F(Align, EdgesAndMiddlesComeToOneLine) {
    const auto first = plain(10_mm, 20_mm);
    plain(50_mm, 40_mm), plain(100_mm, 35_mm);
    ASSERT_EQ(body(b.design, first).width, 30_mm);
    ASSERT_EQ(body(b.design, first).height, 14_mm);
    EXPECT_EQ(places(Alignment::left), (Points{{10_mm, 20_mm}, {10_mm, 40_mm}, {10_mm, 35_mm}}));
    EXPECT_EQ(places(Alignment::right), (Points{{100_mm, 20_mm}, {100_mm, 40_mm}, {100_mm, 35_mm}}));
    EXPECT_EQ(places(Alignment::centre), (Points{{55_mm, 20_mm}, {55_mm, 40_mm}, {55_mm, 35_mm}}));
    EXPECT_EQ(places(Alignment::top), (Points{{10_mm, 20_mm}, {50_mm, 20_mm}, {100_mm, 20_mm}}));
    EXPECT_EQ(places(Alignment::bottom), (Points{{10_mm, 40_mm}, {50_mm, 40_mm}, {100_mm, 40_mm}}));
    EXPECT_EQ(places(Alignment::middle), (Points{{10_mm, 30_mm}, {50_mm, 30_mm}, {100_mm, 30_mm}}));
}

TEST_F(Align, GapsBecomeEqualAndTheOutermostStay) {
    plain(100_mm, 35_mm), plain(10_mm, 20_mm), plain(42_mm, 68_mm);
    // 10 to 130 mm less three plates of 30 mm leaves 30 mm: two gaps of 15 mm.
    EXPECT_EQ(places(Alignment::spread_across), (Points{{100_mm, 35_mm}, {10_mm, 20_mm}, {55_mm, 68_mm}}));
    // 20 to 82 mm less three plates of 14 mm leaves 20 mm: two gaps of 10 mm.
    EXPECT_EQ(places(Alignment::spread_down), (Points{{100_mm, 44_mm}, {10_mm, 20_mm}, {42_mm, 68_mm}}));
}

TEST_F(Align, ResultsKeepTheGridOfOneMillimetre) {
    plain(10_mm, 0_mm), plain(45_mm, 0_mm), plain(101_mm, 0_mm);
    EXPECT_EQ(places(Alignment::spread_across)[1].x, 56_mm) << "gaps of 15.5 mm, rounded";
    plain(10250_um, 30_mm);
    for (const auto& at : places(Alignment::right)) EXPECT_EQ(at.x.count() % 1000, 0);
    chosen = {plain(-3400_um, 0_mm), plain(0_mm, 0_mm)};
    EXPECT_EQ(places(Alignment::left)[0].x, -3_mm);
}

TEST_F(Align, PlatesOfDifferentSizesMeetAtTheirOwnEdges) {
    const auto enc = stand(b.device(test::types::encoder(), "ENC-1"), 20_mm, 10_mm);
    const auto sw = stand(b.device(test::types::switch_24(), "SW-1"), 90_mm, 30_mm);
    const auto src = plain(40_mm, 80_mm);
    ASSERT_NE(body(b.design, enc).height, body(b.design, sw).height);
    auto design = after(Alignment::bottom);
    const auto bottom = [&](DeviceId id) { return (body(design, id).at.y + body(design, id).height).count(); };
    EXPECT_NEAR(bottom(enc), bottom(sw), 500) << "half a step of the grid";
    EXPECT_NEAR(bottom(src), bottom(sw), 500);
    design = after(Alignment::right);
    const auto right = [&](DeviceId id) { return (body(design, id).at.x + body(design, id).width).count(); };
    EXPECT_NEAR(right(enc), right(sw), 500);
    design = after(Alignment::spread_across);
    EXPECT_NEAR((body(design, src).at.x.count() - right(enc)), body(design, sw).at.x.count() - right(src), 1000);
}

TEST_F(Align, TooFewAreLeftAsTheyStand) {
    EXPECT_TRUE(aligned(b.design, sheet, {}, Alignment::left).empty());
    plain(10500_um, 20_mm);
    EXPECT_TRUE(aligned(b.design, sheet, chosen, Alignment::left).empty());
    plain(50_mm, 40_mm);
    EXPECT_TRUE(aligned(b.design, sheet, chosen, Alignment::spread_down).empty());
    EXPECT_TRUE(aligned(b.design, model::SheetId(77), chosen, Alignment::left).empty()) << "not drawn there";
}

TEST_F(Align, WhatIsInLineDoesNotMove) {
    plain(10_mm, 20_mm), plain(10_mm, 40_mm), plain(10_mm, 60_mm);
    EXPECT_TRUE(aligned(b.design, sheet, chosen, Alignment::left).empty());
    EXPECT_TRUE(aligned(b.design, sheet, chosen, Alignment::spread_down).empty());
}

}  // namespace
}  // namespace streamwright::layout
