// Free units and slots, held against trying every place through the edit and looking for overlaps by hand.
#include "core/model/mounting.h"

#include "core/model/edits/all_edits.h"
#include "tests/support/design_builder.h"

#include <gtest/gtest.h>

#include <random>

namespace streamwright::model {

namespace mounting_test {

catalogue::DeviceType unit(int height, bool full_depth) {
    auto type = test::types::make_rack_type();
    type.key = {"unit-" + std::to_string(height) + (full_depth ? "-deep" : "")};
    type.kind = catalogue::DeviceKind::amplifier;
    type.size.rack_units = height;
    type.size.full_depth = full_depth;
    return type;
}

struct Held {
    int unit, height;
    RackFace face;
    bool deep;
};

bool overlap(const Held& a, const Held& b) {
    const bool apart = a.unit + a.height <= b.unit || b.unit + b.height <= a.unit;
    return !apart && (a.face == b.face || a.deep || b.deep);
}

TEST(Mounting, TheLowestFreeUnitIsTheFirstWithoutOverlap) {
    std::mt19937 draw(5);
    for (int round = 0; round < 200; ++round) {
        test::DesignBuilder b;
        const auto rack = b.rack("Rack");
        b.change<Rack>(rack, [](auto& row) { row.units = 12; });
        std::vector<Held> held;
        for (int i = 0; i < 4; ++i) {
            const Held each{1 + static_cast<int>(draw() % 10), 1 + static_cast<int>(draw() % 3),
                            draw() % 2 ? RackFace::front : RackFace::rear, draw() % 3 == 0};
            const auto id = b.device(unit(each.height, each.deep), "A-" + std::to_string(i));
            b.change<Device>(id, [&](auto& row) { row.rack = RackPlace{rack, each.unit, each.face}; });
            held.push_back(each);
        }
        Held wanted{1, 1 + static_cast<int>(draw() % 3), RackFace::front, draw() % 2 == 0};
        const auto device = b.device(unit(wanted.height, wanted.deep), "NEW");
        std::optional<int> expected;
        for (wanted.unit = 1; wanted.unit + wanted.height - 1 <= 12 && !expected; ++wanted.unit)
            if (std::none_of(held.begin(), held.end(), [&](const Held& h) { return overlap(h, wanted); }))
                expected = wanted.unit;
        EXPECT_EQ(lowest_free_unit(b.design, rack, device, RackFace::front), expected);
    }
}

TEST(Mounting, TheLowestFreeSlotSkipsCards) {
    test::DesignBuilder b;
    auto home = unit(3, true);
    home.key = {"chassis"};
    home.chassis = catalogue::ChassisFacts{3, "blade"};
    auto blade = test::types::make_encoder();
    blade.key = {"blade"};
    blade.card_form = "blade";
    const auto chassis = b.device(home, "CH-1");
    const auto first = b.device(blade, "E-1"), second = b.device(blade, "E-2"), third = b.device(blade, "E-3");
    EXPECT_EQ(lowest_free_slot(b.design, chassis, third), 1);
    b.change<Device>(first, [&](auto& row) { row.chassis = ChassisPlace{chassis, 1}; });
    b.change<Device>(second, [&](auto& row) { row.chassis = ChassisPlace{chassis, 3}; });
    EXPECT_EQ(lowest_free_slot(b.design, chassis, third), 2);
    EXPECT_EQ(lowest_free_slot(b.design, chassis, first), 1) << "its own slot is free for it";
    b.change<Device>(third, [&](auto& row) { row.chassis = ChassisPlace{chassis, 2}; });
    EXPECT_EQ(lowest_free_slot(b.design, chassis, b.device(blade, "E-4")), std::nullopt);
    EXPECT_EQ(lowest_free_slot(b.design, first, third), std::nullopt) << "no chassis";
}

TEST(Mounting, ANewRackComesWithItsDeviceInOneChange) {
    test::DesignBuilder b;
    base::IdSource ids(9);
    const auto room = b.room("0.10", "Comms room");
    const auto device = b.device(unit(2, false), "AMP-1");
    b.change<Device>(device, [&](auto& row) { row.room = room; });
    b.change<Rack>(b.rack("Rack 1"), [](auto&) {});
    const auto type = std::make_shared<const catalogue::DeviceType>(test::types::make_rack_type());
    const auto delta = mount_in_new_rack(b.design, ids, device, type);
    ASSERT_TRUE(delta.ok());
    auto after = b.design;
    apply(after, *delta);
    const auto& place = after.devices.find(device)->rack;
    ASSERT_TRUE(place);
    const auto* rack = after.racks.find(place->rack);
    ASSERT_NE(rack, nullptr);
    EXPECT_EQ(rack->name, "Rack 2");
    EXPECT_EQ(rack->room, room);
    EXPECT_EQ(rack->units, type->size.rack_units);
    EXPECT_EQ(place->unit, 1);
}

}  // namespace mounting_test

}  // namespace streamwright::model
