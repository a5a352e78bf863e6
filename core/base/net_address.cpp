#include "core/base/net_address.h"

namespace streamwright::base {

namespace address_detail {

/// A decimal number without leading zeros, at most `most`, taken from the front of the text.
std::optional<std::uint32_t> take_decimal(std::string_view& text, std::uint32_t most) {
    std::uint32_t value = 0;
    std::size_t digits = 0;
    while (digits < text.size() && text[digits] >= '0' && text[digits] <= '9') {
        value = value * 10 + static_cast<std::uint32_t>(text[digits] - '0');
        ++digits;
        if (value > most || digits > 3) return std::nullopt;
    }
    if (digits == 0 || (digits > 1 && text[0] == '0')) return std::nullopt;
    text.remove_prefix(digits);
    return value;
}

std::uint32_t mask_of(int length) { return length == 0 ? 0 : ~std::uint32_t{0} << (32 - length); }

int hex_digit(char c) {
    if (c >= '0' && c <= '9') return c - '0';
    if (c >= 'a' && c <= 'f') return c - 'a' + 10;
    if (c >= 'A' && c <= 'F') return c - 'A' + 10;
    return -1;
}

}  // namespace address_detail

Ipv4Prefix Ipv4Prefix::around(Ipv4 address, int length) {
    return {{address.bits & address_detail::mask_of(length)}, length};
}

bool Ipv4Prefix::holds(Ipv4 address) const { return (address.bits & address_detail::mask_of(length)) == network.bits; }

Ipv4 Ipv4Prefix::broadcast() const { return {network.bits | ~address_detail::mask_of(length)}; }

std::int64_t Ipv4Prefix::usable_hosts() const {
    const auto addresses = std::int64_t{1} << (32 - length);
    return length >= 31 ? addresses : addresses - 2;
}

std::optional<Ipv4> parse_ipv4(std::string_view text) {
    std::uint32_t bits = 0;
    for (int i = 0; i < 4; ++i) {
        if (i > 0) {
            if (!text.starts_with('.')) return std::nullopt;
            text.remove_prefix(1);
        }
        const auto octet = address_detail::take_decimal(text, 255);
        if (!octet) return std::nullopt;
        bits = bits << 8U | *octet;
    }
    return text.empty() ? std::optional(Ipv4{bits}) : std::nullopt;
}

std::optional<Ipv4Prefix> parse_ipv4_prefix(std::string_view text) {
    const auto slash = text.find('/');
    if (slash == std::string_view::npos) return std::nullopt;
    const auto network = parse_ipv4(text.substr(0, slash));
    auto rest = text.substr(slash + 1);
    const auto length = address_detail::take_decimal(rest, 32);
    if (!network || !length || !rest.empty()) return std::nullopt;
    const Ipv4Prefix prefix{*network, static_cast<int>(*length)};
    return prefix.holds(*network) ? std::optional(prefix) : std::nullopt;
}

std::optional<MacAddress> parse_mac(std::string_view text) {
    if (text.size() != 17) return std::nullopt;
    const char mark = text[2];
    if (mark != '-' && mark != ':') return std::nullopt;
    std::uint64_t bits = 0;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (i % 3 == 2) {
            if (text[i] != mark) return std::nullopt;
            continue;
        }
        const int digit = address_detail::hex_digit(text[i]);
        if (digit < 0) return std::nullopt;
        bits = bits << 4U | static_cast<std::uint64_t>(digit);
    }
    return MacAddress{bits};
}

std::string print(Ipv4 address) {
    std::string out;
    for (unsigned shift = 32; shift > 0; shift -= 8) {
        if (!out.empty()) out += '.';
        out += std::to_string(address.bits >> (shift - 8) & 255U);
    }
    return out;
}

std::string print(const Ipv4Prefix& prefix) { return print(prefix.network) + "/" + std::to_string(prefix.length); }

std::string print(MacAddress address) {
    constexpr std::string_view hex = "0123456789ABCDEF";
    std::string out;
    for (unsigned shift = 48; shift > 0; shift -= 8) {
        if (!out.empty()) out += '-';
        out += hex[address.bits >> (shift - 4) & 15U];
        out += hex[address.bits >> (shift - 8) & 15U];
    }
    return out;
}

}  // namespace streamwright::base
