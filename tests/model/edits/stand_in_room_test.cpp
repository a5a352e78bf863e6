#include "tests/model/edits/edit_expect.h"

namespace {

using namespace streamwright;
using namespace streamwright::model;
using namespace streamwright::base::literals;
using test::done, test::refused;

struct Venue {
    test::DesignBuilder b;
    RoomId hall = b.room("1", "Hall");
    RoomId comms = b.room("2", "Comms North");
    RackId rack = b.rack("A");
    DeviceId sw = b.device(test::types::switch_24(), "SW-1");
    DeviceId enc = b.device(test::types::encoder(), "ENC-1");
    DeviceId chassis{0}, card{0}, second{0};
    Venue() {
        catalogue::DeviceType home, slab;
        home.key = {"test.chassis"}, home.chassis = catalogue::ChassisFacts{4, "slab"}, home.size.rack_units = 6;
        slab.key = {"test.card"}, slab.card_form = "slab";
        chassis = b.device(home, "CH-1");
        card = b.device(slab, "CRD-1");
        second = b.device(slab, "CRD-2");
    }
};

TEST(StandInRoom, OneDeviceIsPlacedWholly) {
    Venue v;
    auto design = done(v.b.design, StandInRoom{{v.sw}, v.comms, {}, RackPlace{v.rack, 40}, {}});
    EXPECT_EQ(test::row_of<Device>(design, v.sw).rack->unit, 40);
    design = done(design, StandInRoom{{v.sw}, v.hall, Standing{1_m, 2_m, 0_m}, {}, {}});
    EXPECT_EQ(test::row_of<Device>(design, v.sw).room, v.hall);
    EXPECT_FALSE(test::row_of<Device>(design, v.sw).rack.has_value());
    design = done(design, StandInRoom{{v.card}, {}, {}, {}, ChassisPlace{v.chassis, 4}});
    EXPECT_EQ(test::row_of<Device>(design, v.card).chassis->slot, 4);
}

TEST(StandInRoom, SeveralDevicesChangeRoomOnly) {
    Venue v;
    auto design = done(v.b.design, StandInRoom{{v.sw}, v.comms, {}, RackPlace{v.rack, 40}, {}});
    design = done(design, StandInRoom{{v.sw, v.enc}, v.comms, {}, {}, {}});
    EXPECT_TRUE(test::row_of<Device>(design, v.sw).rack.has_value()) << "it did not move";
    design = done(design, StandInRoom{{v.sw, v.enc}, v.hall, {}, {}, {}});
    EXPECT_EQ(test::row_of<Device>(design, v.enc).room, v.hall);
    EXPECT_FALSE(test::row_of<Device>(design, v.sw).rack.has_value());
}

TEST(StandInRoom, Refuses) {
    Venue v;
    EXPECT_SAYS(refused(v.b.design, StandInRoom{{v.sw, v.enc}, v.hall, {}, RackPlace{v.rack}, {}}), "one device only");
    EXPECT_SAYS(refused(v.b.design, StandInRoom{{v.sw}, {}, {}, RackPlace{v.rack, 43}, {}}), "units 1 to 42");
    EXPECT_SAYS(refused(v.b.design, StandInRoom{{v.chassis}, {}, {}, RackPlace{v.rack, 38}, {}}),
                "takes 6 units from unit 38");
    done(v.b.design, StandInRoom{{v.chassis}, {}, {}, RackPlace{v.rack, 37}, {}});
    EXPECT_SAYS(refused(v.b.design, StandInRoom{{v.sw}, {}, {}, RackPlace{RackId(9)}, {}}), "no rack");
    EXPECT_SAYS(refused(v.b.design, StandInRoom{{v.card}, {}, {}, {}, ChassisPlace{v.sw, 1}}), "is not a chassis");
    EXPECT_SAYS(refused(v.b.design, StandInRoom{{v.enc}, {}, {}, {}, ChassisPlace{v.chassis, 1}}),
                "not a card that fits");
    EXPECT_SAYS(refused(v.b.design, StandInRoom{{v.card}, {}, {}, {}, ChassisPlace{v.chassis, 5}}), "slots 1 to 4");
    const auto design = done(v.b.design, StandInRoom{{v.card}, {}, {}, {}, ChassisPlace{v.chassis, 1}});
    EXPECT_SAYS(refused(design, StandInRoom{{v.second}, {}, {}, {}, ChassisPlace{v.chassis, 1}}),
                "already holds CRD-1");
    EXPECT_SAYS(refused(v.b.design, StandInRoom{{v.card}, {}, {}, RackPlace{v.rack}, ChassisPlace{v.chassis, 1}}),
                "not in both");
    EXPECT_SAYS(refused(v.b.design, StandInRoom{{v.sw}, RoomId(9), {}, {}, {}}), "names the room");
    EXPECT_SAYS(refused(v.b.design, StandInRoom{{DeviceId(9)}, {}, {}, {}, {}}), "no device");
}

}  // namespace
