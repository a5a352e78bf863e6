// Expected: counted by hand from what is plugged in; the limits are the types' own.
#include "tests/support/usb_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::usb_too_many_devices_test {

using testing::ElementsAre;
using testing::IsEmpty;

/// A session whose ends carry so many devices; a hub and a keyboard stand behind the receiver.
UsbRoom room_for(std::optional<int> devices) {
    catalogue::UsbCarriage carriage;
    carriage.devices = devices;
    UsbRoom room(carriage);
    room.session();
    const auto hub = room.plug_hub(room.receiver, "a", 1);
    catalogue::DeviceType keyboard;
    keyboard.key = {"test.keyboard"}, keyboard.name = "Keyboard", keyboard.maker = "Generic";
    keyboard.ports = {UsbRoom::usb_port("usb", catalogue::Way::usb_device)};
    room.plug(hub, "1", keyboard);
    return room;
}

TEST(UsbTooManyDevices, theHubCountsToo) {
    EXPECT_THAT(rules_found(room_for(2).design()), IsEmpty());
    const auto room = room_for(1);
    EXPECT_THAT(rules_found(room.design()), ElementsAre("usb-too-many-devices"));
    const auto finding = finding_of(room.design(), "usb-too-many-devices");
    EXPECT_EQ(finding.measured, base::Value(std::int64_t{2}));
    EXPECT_EQ(finding.limit, base::Value(std::int64_t{1}));
}

TEST(UsbTooManyDevices, isSilentWhereTheTypesStateNone) { EXPECT_THAT(rules_found(room_for({}).design()), IsEmpty()); }

}  // namespace streamwright::test::usb_too_many_devices_test
