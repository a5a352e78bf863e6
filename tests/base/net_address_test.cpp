// Addresses as numbers. Text forms: RFC 791 dotted decimal, IEEE 802 MAC addresses; hosts of a subnet by RFC 950 and
// 3021.
#include "core/base/net_address.h"

#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <arpa/inet.h>

namespace streamwright::test::net_address {

using namespace base;

TEST(Ipv4, ReadsDottedDecimalOnly) {
    EXPECT_EQ(parse_ipv4("192.0.2.10"), (Ipv4{0xC000020A}));
    EXPECT_EQ(parse_ipv4("255.255.255.255"), (Ipv4{0xFFFFFFFF}));
    for (const char* text : {"", "1.2.3", "1.2.3.4.5", "1.2.3.256", "01.2.3.4", "1.2.3.4 ", " 1.2.3.4", "1..3.4",
                             "a.b.c.d", "1.2.3.-4", "1.2.3.4/24", "1.2.3.0004"})
        EXPECT_FALSE(parse_ipv4(text)) << text;
}

TEST(Ipv4, OrdersAsNumbersNotAsText) { EXPECT_LT(*parse_ipv4("192.0.2.9"), *parse_ipv4("192.0.2.10")); }

RC_GTEST_PROP(Ipv4, AgreesWithTheSystemsReader, (std::uint32_t bits)) {
    const auto text = print(Ipv4{bits});
    in_addr system{};
    RC_ASSERT(inet_pton(AF_INET, text.c_str(), &system) == 1);
    RC_ASSERT(ntohl(system.s_addr) == bits);
    RC_ASSERT(*parse_ipv4(text) == Ipv4{bits});
}

TEST(Ipv4Prefix, ReadsOnlyNetworks) {
    const auto prefix = parse_ipv4_prefix("192.0.2.0/24");
    ASSERT_TRUE(prefix);
    EXPECT_EQ(print(*prefix), "192.0.2.0/24");
    EXPECT_EQ(print(prefix->broadcast()), "192.0.2.255");
    EXPECT_TRUE(prefix->holds(*parse_ipv4("192.0.2.200")));
    EXPECT_FALSE(prefix->holds(*parse_ipv4("192.0.3.0")));
    for (const char* text :
         {"192.0.2.1/24", "192.0.2.0/33", "192.0.2.0/", "192.0.2.0", "192.0.2.0/024", "/24", "192.0.2.0/24x"})
        EXPECT_FALSE(parse_ipv4_prefix(text)) << text;
    EXPECT_TRUE(parse_ipv4_prefix("0.0.0.0/0")->holds({0xFFFFFFFF}));
}

TEST(Ipv4Prefix, CountsUsableHosts) {
    const std::pair<int, std::int64_t> known[] = {{32, 1},   {31, 2},   {30, 2},        {29, 6},
                                                  {24, 254}, {23, 510}, {0, 4294967294}};
    for (const auto& [length, hosts] : known) EXPECT_EQ((Ipv4Prefix{{0}, length}.usable_hosts()), hosts) << length;
}

TEST(MacAddress, ReadsBothFormsAndPrintsTheIeeeOne) {
    EXPECT_EQ(parse_mac("01-00-5E-40-00-01"), (MacAddress{0x01005E400001}));
    EXPECT_EQ(parse_mac("01:00:5e:40:00:01"), (MacAddress{0x01005E400001}));
    EXPECT_EQ(print(MacAddress{0x01005E400001}), "01-00-5E-40-00-01");
    for (const char* text :
         {"", "01-00-5E-40-00", "01-00:5E-40-00-01", "01005E400001", "0g-00-5E-40-00-01", "01-00-5E-40-00-011"})
        EXPECT_FALSE(parse_mac(text)) << text;
}

RC_GTEST_PROP(MacAddress, ComesBackFromItsText, (std::uint64_t bits)) {
    const MacAddress address{bits & 0xFFFFFFFFFFFFULL};
    RC_ASSERT(*parse_mac(print(address)) == address);
}

}  // namespace streamwright::test::net_address
