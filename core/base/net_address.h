// IPv4 addresses, prefixes and MAC addresses as numbers, so that they compare by value and not as text.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace streamwright::base {

struct Ipv4 {
    std::uint32_t bits = 0;
    friend auto operator<=>(Ipv4, Ipv4) = default;
};

struct Ipv4Prefix {
    Ipv4 network;    // host bits are zero
    int length = 0;  // 0 to 32
    friend auto operator<=>(const Ipv4Prefix&, const Ipv4Prefix&) = default;

    /// The subnet of that length which the address lies in.
    static Ipv4Prefix around(Ipv4 address, int length);
    bool holds(Ipv4 address) const;
    bool overlaps(const Ipv4Prefix& other) const { return holds(other.network) || other.holds(network); }
    Ipv4 broadcast() const;
    /// Addresses a host may take: network and broadcast excluded below /31 (RFC 950; RFC 3021 for /31).
    std::int64_t usable_hosts() const;
};

struct MacAddress {
    std::uint64_t bits = 0;  // 48 bits
    friend auto operator<=>(MacAddress, MacAddress) = default;
};

std::optional<Ipv4> parse_ipv4(std::string_view text);  // dotted decimal, no leading zeros
std::optional<Ipv4Prefix> parse_ipv4_prefix(std::string_view text);
std::optional<MacAddress> parse_mac(std::string_view text);  // hyphens or colons
std::string print(Ipv4 address);
std::string print(const Ipv4Prefix& prefix);
std::string print(MacAddress address);  // IEEE form, hyphens, capitals

}  // namespace streamwright::base
