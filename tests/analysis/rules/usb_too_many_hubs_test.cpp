// Five hubs in series at most: USB 2.0, 4.1.1 (row DST-013, example C2).
#include "tests/support/usb_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::usb_too_many_hubs_test {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(UsbTooManyHubs, fiveAreAllowedAndSixAreNot) {
    UsbRoom five;
    five.plug_hub(five.plug_hub(five.plug_hub(five.computer, "usb", 3), "1", 2), "1", 1);
    EXPECT_THAT(rules_found(five.design()), IsEmpty());
    UsbRoom six;
    six.plug_hub(six.plug_hub(six.plug_hub(six.computer, "usb", 3), "1", 3), "1", 1);
    EXPECT_THAT(rules_found(six.design()), ElementsAre("usb-too-many-hubs"));
    EXPECT_EQ(finding_of(six.design(), "usb-too-many-hubs").measured, base::Value(std::int64_t{6}));
}

TEST(UsbTooManyHubs, theNetworkCountsForWhatItsEndsState) {
    catalogue::UsbCarriage carriage;
    carriage.hubs = 2;
    UsbRoom room(carriage);
    room.session();
    const auto second = room.plug_hub(room.plug_hub(room.receiver, "a", 2), "1", 1);
    EXPECT_THAT(rules_found(room.design()), IsEmpty());
    room.plug_hub(room.plug_hub(second, "1", 1), "1", 1);
    EXPECT_THAT(rules_found(room.design()), ElementsAre("usb-too-many-hubs"));
    EXPECT_EQ(finding_of(room.design(), "usb-too-many-hubs").variant, 1);
}

}  // namespace streamwright::test::usb_too_many_hubs_test
