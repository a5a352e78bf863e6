// Lines follow ports that a change of role turns to the other side.
#include "core/layout/turned_plates.h"

#include "core/layout/plate.h"
#include "core/model/edits/all_edits.h"
#include "tests/support/design_builder.h"

#include <gtest/gtest.h>

namespace streamwright::layout {

namespace turned_plates_test {

using namespace base::literals;

struct Drawn {
    test::DesignBuilder b;
    model::SheetId sheet = b.sheet();
    model::DeviceId endpoint = b.device(test::types::endpoint(), "EP-1");
    model::DeviceId bridge = b.device(test::types::switch_24(), "SW-1");
    model::CableId cable =
        b.cable(test::types::cat6a(), test::port_of(endpoint, "net"), test::port_of(bridge, "1"), 10_m);

    Drawn() {
        b.place(sheet, endpoint, 50_mm, 50_mm);
        b.place(sheet, bridge, 200_mm, 50_mm);
        b.change<model::Device>(endpoint, [](auto& row) { row.roles = {catalogue::Role::encoder}; });
        auto line = model::CableLine::blank({sheet, cable});
        line.bends = {{150_mm, 60_mm}, {150_mm, 80_mm}};
        b.put(line);
    }
    PortSpot net(const model::Design& design) const {
        const auto& row = *design.devices.find(endpoint);
        const auto* type = design.type_of(row);
        const auto plate = plate_of(type, row.roles, *design.places.find({sheet, endpoint}));
        for (const auto& spot : plate.spots)
            if (type->ports[static_cast<std::size_t>(spot.port)].key == catalogue::PortKey{"net"}) return spot;
        throw std::runtime_error("no port");
    }
};

TEST(TurnedPlates, CablesFollowAChangedRoleInTheSameChange) {
    Drawn d;
    auto row = *d.b.design.devices.find(d.endpoint);
    row.roles = {catalogue::Role::decoder};
    const auto plain = model::make(d.b.design, model::ConfigureDevice{row});
    ASSERT_TRUE(plain.ok());
    auto after = d.b.design;
    model::apply(after, with_turned_plates(d.b.design, *plain));
    ASSERT_NE(d.net(d.b.design).side, d.net(after).side) << "an encoder's network is right, a decoder's left";
    const auto spot = d.net(after);
    const auto* line = after.cable_lines.find({d.sheet, d.cable});
    ASSERT_NE(line, nullptr);
    ASSERT_FALSE(line->bends.empty());
    EXPECT_EQ(line->bends.front().y, spot.lead.y) << "leaves the port level";
    EXPECT_LT(line->bends.front().x, spot.lead.x) << "leaves it to its own side";
}

TEST(TurnedPlates, PinnedLinesAndOtherChangesStay) {
    Drawn d;
    d.b.change<model::CableLine>({d.sheet, d.cable}, [](auto& line) { line.pinned = true; });
    auto row = *d.b.design.devices.find(d.endpoint);
    row.roles = {catalogue::Role::decoder};
    const auto turned = model::make(d.b.design, model::ConfigureDevice{row});
    EXPECT_EQ(with_turned_plates(d.b.design, *turned), *turned);
    row = *d.b.design.devices.find(d.endpoint);
    row.host_name = "ep-1";
    const auto named = model::make(d.b.design, model::ConfigureDevice{row});
    EXPECT_EQ(with_turned_plates(d.b.design, *named), *named);
}

}  // namespace turned_plates_test

}  // namespace streamwright::layout
