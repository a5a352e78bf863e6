// Fittings of racks and labels of cables, against counts by hand.
#include "tests/analysis/facts/counted_parts.h"

#include <gtest/gtest.h>

namespace streamwright::test::part_fittings_test {

using namespace counted_parts;
using namespace base::literals;
using model::RackFace;

void mount(DesignBuilder& b, model::DeviceId device, model::RackId rack, int unit, RackFace face = RackFace::front) {
    b.change<model::Device>(device, [&](auto& row) { row.rack = model::RackPlace{rack, unit, face}; });
}

TEST(PartFittings, aRackNeedsFixingsBlanksShelvesAndAnEarthingKit) {
    // Field case F48: rack screws and shelves per unit that is not of 19 inches, blanks per open space, an earthing kit
    // per rack. By hand, 42 units: switch U40, panel U41, two loose encoders on one shelf U10: 42 - 3 = 39 open;
    // fixings for 2 units, 1 shelf and 39 blanks: 42.
    DesignBuilder b;
    const auto rack = b.rack("North 1");
    mount(b, b.device(types::switch_24(), "SW-1"), rack, 40);
    mount(b, b.device(types::patch_panel(), "PP-1"), rack, 41);
    mount(b, b.device(types::encoder(), "ENC-1"), rack, 10);
    mount(b, b.device(types::encoder(), "ENC-2"), rack, 10);
    const auto parts = parts_of(b.design);
    EXPECT_EQ(pieces(parts, PartKind::earthing_kit), 1);
    EXPECT_EQ(pieces(parts, PartKind::rack_shelf), 1);
    EXPECT_EQ(pieces(parts, PartKind::blank_panel), 39);
    EXPECT_EQ(pieces(parts, PartKind::fixing_set), 42);
    EXPECT_EQ(only(parts, PartKind::blank_panel)->racks, std::vector{rack});
}

TEST(PartFittings, aUnitAtTheRearCoversTheFrontOnlyInFullDepth) {
    for (const bool full : {false, true}) {
        DesignBuilder b;
        const auto rack = b.rack("North 1");
        auto type = types::make_switch(24, 1_Gbps, 4);
        type.size.rack_units = 2;
        type.size.full_depth = full;
        mount(b, b.device(type, "SW-1"), rack, 1, RackFace::rear);
        EXPECT_EQ(pieces(parts_of(b.design), PartKind::blank_panel), full ? 40 : 42);
    }
}

TEST(PartFittings, anEmptyRackIsNotBlankedYet) {
    DesignBuilder b;
    b.rack("North 1");
    b.rack("North 2");
    const auto parts = parts_of(b.design);
    EXPECT_EQ(pieces(parts, PartKind::earthing_kit), 2);
    EXPECT_EQ(pieces(parts, PartKind::blank_panel), 0);
    EXPECT_EQ(pieces(parts, PartKind::fixing_set), 0);
}

TEST(PartFittings, unitsAboveTheRackAreNotCounted) {
    DesignBuilder b;
    const auto rack = b.rack("North 1");
    auto type = types::make_switch(24, 1_Gbps, 4);
    type.size.rack_units = 3;
    mount(b, b.device(type, "SW-1"), rack, 41);  // U41 to U43 of 42
    EXPECT_EQ(pieces(parts_of(b.design), PartKind::blank_panel), 40);
}

TEST(PartFittings, everyCableHasTwoLabels) {
    // Field case F48: labels 2 per cable.
    DesignBuilder b;
    EXPECT_EQ(pieces(parts_of(b.design), PartKind::cable_label), 0);
    const auto source = b.device(types::source(), "SRC-1"), encoder = b.device(types::encoder(), "ENC-1");
    b.cable(types::hdmi(), port_of(source, "out"), port_of(encoder, "in"), 2_m);
    b.open_cable(types::cat6a(), port_of(encoder, "net"));
    EXPECT_EQ(pieces(parts_of(b.design), PartKind::cable_label), 4);
}

}  // namespace streamwright::test::part_fittings_test
