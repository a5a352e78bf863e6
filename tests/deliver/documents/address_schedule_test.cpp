// One row a network interface; switches have one for their management.
#include "tests/deliver/small_venue.h"

#include <gtest/gtest.h>

namespace streamwright::test::address_schedule {

TEST(AddressSchedule, HasEachInterfaceOnce) {
    SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("address-schedule");
    const auto devices = column(table(content), "Device");
    EXPECT_EQ(devices, (std::vector<std::string>{"DEC-001", "DEC-002", "ENC-001", "ENC-002", "SW-S2"}));
}

TEST(AddressSchedule, FixedAddressesAreGivenOthersLeased) {
    SmallVenue venue;
    venue.b.address(venue.encoder_1, "10.20.1.11");
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("address-schedule");
    const auto& addresses = table(content);
    const auto* fixed = row_with(addresses, "Device", "ENC-001");
    ASSERT_NE(fixed, nullptr);
    EXPECT_EQ(cell(addresses, *fixed, "Address"), "10.20.1.11");
    EXPECT_EQ(cell(addresses, *fixed, "Fixed or lease"), "fixed");
    EXPECT_EQ(cell(addresses, *fixed, "Switch"), "SW-S2");
    const auto* leased = row_with(addresses, "Device", "ENC-002");
    ASSERT_NE(leased, nullptr);
    EXPECT_EQ(cell(addresses, *leased, "Fixed or lease"), "lease");
}

TEST(AddressSchedule, VlansBringTheirSubnet) {
    SmallVenue venue;
    venue.b.usual_vlan(venue.b.vlan(20, "AV", "10.20.0.0/22"));
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("address-schedule");
    const auto& addresses = table(content);
    const auto* row = row_with(addresses, "Device", "DEC-001");
    ASSERT_NE(row, nullptr);
    EXPECT_EQ(cell(addresses, *row, "VLAN"), "20");
    EXPECT_EQ(cell(addresses, *row, "Subnet"), "10.20.0.0/22");
}

}  // namespace streamwright::test::address_schedule
