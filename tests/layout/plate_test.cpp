// Geometry of plates against the measures of the visual language: rows of 5 mm, lugs of 4.5 by 4 mm outside the edge,
// sides by flow.
#include "core/layout/plate.h"

#include "core/layout/text_width.h"
#include "tests/support/design_builder.h"

#include <gtest/gtest.h>

#include <string>

namespace streamwright::layout {
namespace {

using catalogue::Role;
using model::DeviceId;
using model::Place;
using model::SheetId;
using namespace base::literals;
namespace types = streamwright::test::types;

Place at(base::Length x, base::Length y) {
    Place place = Place::blank({SheetId(1), DeviceId(1)});
    place.at = {x, y};
    return place;
}

Side side_of(const catalogue::DeviceType& type, const Plate& plate, const std::string& port) {
    for (const auto& spot : plate.spots)
        if (type.ports[static_cast<std::size_t>(spot.port)].key.text == port) return spot.side;
    ADD_FAILURE() << "no port " << port;
    return Side::left;
}

TEST(Plate, EncoderLooksToTheNetworkOnTheRight) {
    const auto type = types::make_encoder();
    const auto plate = plate_of(&type, {Role::encoder}, at(40_mm, 50_mm));
    EXPECT_EQ(side_of(type, plate, "in"), Side::left);
    EXPECT_EQ(side_of(type, plate, "net"), Side::right);
    EXPECT_EQ(side_of(type, plate, "usb"), Side::left);  // toward the source
    EXPECT_TRUE(plate.heavy_right);
    EXPECT_FALSE(plate.heavy_left);
    EXPECT_TRUE(plate.fact_line);
}

TEST(Plate, DecoderLooksToTheNetworkOnTheLeft) {
    const auto type = types::make_decoder();
    const auto plate = plate_of(&type, {Role::decoder}, at(40_mm, 50_mm));
    EXPECT_EQ(side_of(type, plate, "net"), Side::left);
    EXPECT_EQ(side_of(type, plate, "out"), Side::right);
    EXPECT_EQ(side_of(type, plate, "usb"), Side::right);
    EXPECT_TRUE(plate.heavy_left);
    EXPECT_FALSE(plate.heavy_right);
}

TEST(Plate, EndpointFollowsItsRole) {
    const auto type = types::make_endpoint();
    EXPECT_EQ(side_of(type, plate_of(&type, {Role::encoder}, at(0_mm, 0_mm)), "net"), Side::right);
    EXPECT_EQ(side_of(type, plate_of(&type, {Role::decoder}, at(0_mm, 0_mm)), "net"), Side::left);
}

TEST(Plate, SwitchStandsOddPortsLeftEvenRightCagesRightBelow) {
    const auto type = types::make_switch(24, 1_Gbps, 4);
    const auto plate = plate_of(&type, {}, at(0_mm, 0_mm));
    EXPECT_EQ(side_of(type, plate, "1"), Side::left);
    EXPECT_EQ(side_of(type, plate, "2"), Side::right);
    EXPECT_EQ(side_of(type, plate, "s1"), Side::right);
    EXPECT_EQ(plate.rows, 16);  // 12 even ports and 4 cages
    EXPECT_EQ(plate.body.height, 7_mm + 5_mm + 16 * 5_mm + 5_mm);
    EXPECT_TRUE(plate.heavy_left && plate.heavy_right);
}

TEST(Plate, SpotsStandOnTheGridOutsideTheEdge) {
    const auto type = types::make_encoder();
    const auto plate = plate_of(&type, {Role::encoder}, at(40_mm, 50_mm));
    EXPECT_EQ(plate.body.width.count() % (5_mm).count(), 0);
    EXPECT_GE(plate.body.width, 30_mm);
    std::array<int, 2> row{};
    for (const auto& spot : plate.spots) {
        const int n = row[static_cast<std::size_t>(spot.side)]++;
        EXPECT_EQ(spot.lead.y, 50_mm + 7_mm + 5_mm + 2500_um + n * 5_mm);
        EXPECT_EQ(spot.lug.width, 4500_um);
        EXPECT_EQ(spot.lug.height, 4_mm);
        EXPECT_EQ(spot.lead.x, spot.side == Side::left ? 40_mm - 4500_um : 40_mm + plate.body.width + 4500_um);
        EXPECT_FALSE(plate.body.meets(spot.lug));
    }
}

TEST(Plate, TurningExchangesSides) {
    const auto type = types::make_encoder();
    auto place = at(40_mm, 50_mm);
    const auto straight = plate_of(&type, {Role::encoder}, place);
    place.turned = true;
    const auto turned = plate_of(&type, {Role::encoder}, place);
    for (std::size_t i = 0; i < straight.spots.size(); ++i) EXPECT_NE(straight.spots[i].side, turned.spots[i].side);
    EXPECT_TRUE(turned.heavy_left);
    EXPECT_FALSE(turned.heavy_right);
}

TEST(Plate, FoldedKeepsAllSpotsInTheTitleRow) {
    const auto type = types::make_switch(24, 1_Gbps, 4);
    auto place = at(10_mm, 10_mm);
    place.folded = true;
    const auto plate = plate_of(&type, {}, place);
    EXPECT_EQ(plate.body.height, 7500_um);
    ASSERT_EQ(plate.spots.size(), type.ports.size());
    for (const auto& spot : plate.spots) {
        EXPECT_GE(spot.lead.y, plate.body.at.y);
        EXPECT_LE(spot.lead.y, plate.body.at.y + plate.body.height);
    }
}

TEST(Plate, LabelsOfARowNeverTouch) {
    for (const auto& type : types::all().devices) {
        const auto plate = plate_of(&type, {}, at(0_mm, 0_mm));
        for (const auto& a : plate.spots)
            for (const auto& b : plate.spots) {
                if (a.side == b.side || a.lead.y != b.lead.y) continue;
                const auto width = [&](const PortSpot& s) {
                    return text_width(type.ports[static_cast<std::size_t>(s.port)].label, 3_mm, Weight::normal);
                };
                EXPECT_LT(width(a) + width(b) + 4_mm, plate.body.width) << type.name;
            }
    }
}

TEST(Plate, WithoutATypeThereIsStillAPlate) {
    const auto plate = plate_of(nullptr, {}, at(10_mm, 20_mm));
    EXPECT_TRUE(plate.spots.empty());
    EXPECT_EQ(plate.body.width, 30_mm);
    EXPECT_GT(plate.body.height, 0_mm);
}

TEST(Box, EdgesTouchWithoutMeeting) {
    const Box a{{0_mm, 0_mm}, 10_mm, 10_mm}, b{{10_mm, 0_mm}, 10_mm, 10_mm};
    EXPECT_FALSE(a.meets(b));
    EXPECT_TRUE(a.meets(b.grown(1_mm)));
    EXPECT_TRUE(a.holds({10_mm, 10_mm}));
    EXPECT_FALSE(a.holds({10_mm, 11_mm}));
}

}  // namespace
}  // namespace streamwright::layout
