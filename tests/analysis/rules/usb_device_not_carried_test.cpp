// Field case F44: cameras of 995, 442 and 221 Mb/s are too much for one isochronous endpoint of high speed, 196.608
// Mb/s (USB 2.0, 5.6.3); 147 Mb/s passes.
#include "tests/support/usb_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::usb_device_not_carried_test {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using namespace base::literals;

/// 4:2:2 of 8 bits: 16 bits a pixel.
base::BitRate camera(std::int64_t width, std::int64_t height, std::int64_t hz) {
    return base::BitRate::from_count(width * height * 16 * hz);
}

TEST(UsbDeviceNotCarried, f44OnALead) {
    for (const auto sends : {camera(1920, 1080, 30), camera(1280, 720, 30), camera(1280, 720, 15)}) {
        UsbRoom room;
        room.plug_camera(room.computer, "usb", sends);
        EXPECT_THAT(rules_found(room.design()), ElementsAre("usb-device-not-carried"));
        const auto finding = finding_of(room.design(), "usb-device-not-carried");
        EXPECT_EQ(finding.measured, base::Value(sends));
        EXPECT_EQ(finding.limit, base::Value(base::BitRate::from_count(196608000)));
    }
    UsbRoom room;
    room.plug_camera(room.computer, "usb", camera(640, 480, 30));
    EXPECT_THAT(rules_found(room.design()), IsEmpty());
}

TEST(UsbDeviceNotCarried, f44OverAChannelForKeyboards) {
    catalogue::UsbCarriage carriage;
    carriage.human_interface_only = true;
    UsbRoom room(carriage);
    room.session();
    room.plug_camera(room.receiver, "a", camera(640, 480, 30));
    EXPECT_THAT(rules_found(room.design()), ElementsAre("usb-device-not-carried"));
    EXPECT_THAT(english_sentence(room.design(), finding_of(room.design(), "usb-device-not-carried")),
                HasSubstr("carries keyboards, mice and touch only"));
}

TEST(UsbDeviceNotCarried, whatAnEndCarriesIsAValueOfItsType) {
    catalogue::UsbCarriage carriage;
    carriage.isochronous = 100_Mbps;
    UsbRoom room(carriage);
    room.session();
    room.plug_camera(room.receiver, "a", camera(640, 480, 30));  // 147 Mb/s
    EXPECT_EQ(finding_of(room.design(), "usb-device-not-carried").limit, base::Value(100_Mbps));

    UsbRoom silent{std::optional<catalogue::UsbCarriage>{}};
    silent.session();
    silent.plug_camera(silent.receiver, "a", camera(640, 480, 30));
    EXPECT_EQ(finding_of(silent.design(), "usb-device-not-carried").severity, analysis::Severity::advice);
}

}  // namespace streamwright::test::usb_device_not_carried_test
