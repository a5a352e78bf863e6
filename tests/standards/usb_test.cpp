// USB against tests/reference (rows DST-010 to DST-018, examples C1 and C2, field case 44).
#include "core/standards/usb.h"

#include "core/standards/video_format.h"
#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::usb {

using namespace standards;
using namespace base::literals;

std::int64_t micrometres(const char* id) { return row_number(id, 6); }

TEST(Usb, CablesAreAsPublished) {
    EXPECT_EQ(usb_class(UsbSpeed::high).cable.count(), micrometres("DST-010"));
    EXPECT_EQ(usb_class(UsbSpeed::full).cable.count(), micrometres("DST-010"));
    EXPECT_EQ(usb_class(UsbSpeed::low).cable.count(), micrometres("DST-012"));
    EXPECT_EQ(usb_class(UsbSpeed::super_5).cable.count(), micrometres("DST-017"));
    EXPECT_EQ(usb_class(UsbSpeed::super_10).cable.count(), micrometres("DST-018"));
    for (const auto& [speed, id] : {std::pair(UsbSpeed::high, "DST-010"), std::pair(UsbSpeed::low, "DST-012"),
                                    std::pair(UsbSpeed::super_5, "DST-017"), std::pair(UsbSpeed::super_10, "DST-018")})
        EXPECT_EQ(usb_class(speed).source.standing == Standing::read, was_read(id)) << id;
    EXPECT_EQ(usb_cable_delay, 1000 * row_number("DST-011", 0));
    EXPECT_LE(usb_class(UsbSpeed::high).cable.count() / 1'000'000 * usb_cable_delay_per_metre, usb_cable_delay)
        << "5 m of a cable just under 5.2 ns/m";
    for (const auto& each : usb_classes()) EXPECT_EQ(&usb_class(each.speed), &each) << each.name;
}

TEST(Usb, TreesAreAsPublished) {
    EXPECT_EQ(most_usb_hubs, row_number("DST-013", 0));
    EXPECT_EQ(usb_longest_path(most_usb_hubs)->count(), micrometres("DST-014"));
    EXPECT_EQ(most_usb_tiers, row_number("DST-015", 0));
    EXPECT_EQ(most_usb_addresses, row_number("DST-016", 0));
    EXPECT_EQ(usb_longest_path(5)->count(), signal_number("C1", 6));
    EXPECT_EQ(signal_example("C2").expected, "error");
    EXPECT_FALSE(usb_longest_path(6));
    EXPECT_EQ(usb_longest_path(0), 5_m);
    EXPECT_FALSE(usb_longest_path(-1));
}

TEST(Usb, CamerasOfTheFieldCaseComeOut) {
    EXPECT_EQ(usb_isochronous_limit.count(), signal_number("FC44-5", 6));
    const std::pair<const char*, const char*> cameras[] = {{"FC44-1", "1080p30 4:2:2 8-bit"},
                                                           {"FC44-2", "720p30 4:2:2 8-bit"},
                                                           {"FC44-3", "720p15 4:2:2 8-bit"},
                                                           {"FC44-4", "640x480@30 4:2:2 8-bit"}};
    for (const auto& [id, camera] : cameras) {
        const auto rate = active_rate(parse_video_format(camera).value());
        EXPECT_NEAR(static_cast<double>(rate.ceil().count()) / 1e6, static_cast<double>(signal_number(id, 0)), 0.501);
        const bool within = signal_example(id).expected.find("within") != std::string::npos;
        EXPECT_EQ(rate <= base::Rate(usb_isochronous_limit), within) << id;
    }
}

}  // namespace streamwright::test::usb
