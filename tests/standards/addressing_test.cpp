// Address ranges and subnet sizes against tests/reference (rows ADDR-, examples A-).
#include "core/standards/addressing.h"

#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

#include <sstream>

namespace streamwright::test::addressing {

using namespace standards;

base::Ipv4 address(std::string_view text) { return *base::parse_ipv4(text); }

/// Each prefix of the row, its ends and the addresses just outside.
void expect_prefixes(const char* id, bool (*holds)(base::Ipv4)) {
    std::stringstream prefixes(reference_row(id).value);
    for (std::string text; std::getline(prefixes >> std::ws, text, ';');) {
        const auto prefix = base::parse_ipv4_prefix(text);
        ASSERT_TRUE(prefix) << text;
        EXPECT_TRUE(holds(prefix->network)) << text;
        EXPECT_TRUE(holds(prefix->broadcast())) << text;
        EXPECT_FALSE(holds({prefix->network.bits - 1})) << text;
        EXPECT_FALSE(holds({prefix->broadcast().bits + 1})) << text;
    }
}

TEST(Addressing, PrivateAndDocumentationPrefixesAreAsPublished) {
    expect_prefixes("ADDR-001", &is_private);
    expect_prefixes("ADDR-003", static_cast<bool (*)(base::Ipv4)>(&is_documentation));
    EXPECT_TRUE(is_private(address("172.31.255.254")));
    EXPECT_FALSE(is_private(address("172.32.0.1")));
}

TEST(Addressing, LinkLocalEndsBeforeItsEdges) {
    EXPECT_EQ(reference_row("ADDR-002").value, "169.254.1.0 to 169.254.254.255");
    EXPECT_TRUE(is_autoconfigured(address("169.254.1.0")));
    EXPECT_TRUE(is_autoconfigured(address("169.254.254.255")));
    EXPECT_FALSE(is_autoconfigured(address("169.254.255.0")));
    EXPECT_TRUE(is_link_local(address("169.254.0.5")));
    EXPECT_FALSE(is_autoconfigured(address("169.254.0.5")));
    EXPECT_FALSE(is_link_local(address("169.253.1.1")));
}

TEST(Addressing, DocumentationMacAddressesAreAsPublished) {
    EXPECT_EQ(reference_row("ADDR-006").value, "00-00-5E-00-53-00 to 00-00-5E-00-53-FF");
    EXPECT_EQ(reference_row("ADDR-007").value, "01-00-5E-90-10-00 to 01-00-5E-90-10-FF");
    for (const char* each : {"00-00-5E-00-53-2A", "00-00-5E-00-53-FF", "01-00-5E-90-10-00"})
        EXPECT_TRUE(is_documentation(*base::parse_mac(each))) << each;
    for (const char* each : {"00-00-5E-00-52-FF", "00-00-5E-00-54-00", "01-00-5E-90-11-00"})
        EXPECT_FALSE(is_documentation(*base::parse_mac(each))) << each;
}

TEST(Addressing, SubnetsAreAsSmallAsPublished) {
    for (const auto& row : reference_rows("ADDR-0")) {
        if (row.quantity != "smallest subnet for hosts") continue;
        const auto hosts = std::stoll(row.condition);
        const auto length = smallest_subnet_for(hosts);
        ASSERT_TRUE(length);
        const auto usable = base::Ipv4Prefix{{0}, *length}.usable_hosts();
        EXPECT_EQ("/" + std::to_string(*length) + " (" + std::to_string(usable) + " usable)", row.value) << row.id;
    }
    EXPECT_EQ("/" + std::to_string(*smallest_subnet_for(60)) + " (62 usable)", reference_example("A-1").expected);
    EXPECT_EQ("/" + std::to_string(*smallest_subnet_for(500)) + " (510 usable)", reference_example("A-3").expected);
    EXPECT_EQ(smallest_subnet_for(2), 31);  // RFC 3021
    EXPECT_EQ(smallest_subnet_for(3), 29);
    EXPECT_EQ(smallest_subnet_for(std::int64_t{1} << 40), std::nullopt);
}

}  // namespace streamwright::test::addressing
