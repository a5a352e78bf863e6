#include "core/base/net_address.h"

#include <cctype>

namespace streamwright::base {

namespace net_address_detail {

/// A decimal number up to `most`, without leading zeros; takes it off the front of the text.
std::optional<std::uint32_t> take_number(std::string_view& text, std::uint32_t most) {
    std::uint32_t number = 0;
    std::size_t digits = 0;
    while (digits < text.size() && std::isdigit(static_cast<unsigned char>(text[digits]))) {
        number = number * 10 + static_cast<std::uint32_t>(text[digits] - '0');
        if (number > most) return std::nullopt;
        ++digits;
    }
    if (digits == 0 || (digits > 1 && text.front() == '0')) return std::nullopt;
    text.remove_prefix(digits);
    return number;
}

std::optional<Ipv4> take_address(std::string_view& text) {
    std::uint32_t bits = 0;
    for (int i = 0; i < 4; ++i) {
        if (i > 0) {
            if (!text.starts_with('.')) return std::nullopt;
            text.remove_prefix(1);
        }
        const auto octet = take_number(text, 255);
        if (!octet) return std::nullopt;
        bits = bits << 8U | *octet;
    }
    return Ipv4{bits};
}

std::uint32_t mask_of(int length) { return length == 0 ? 0 : ~std::uint32_t{0} << (32 - length); }

}  // namespace net_address_detail

bool Ipv4Prefix::holds(Ipv4 address) const {
    return (address.bits & net_address_detail::mask_of(length)) == network.bits;
}

Ipv4 Ipv4Prefix::broadcast() const { return {network.bits | ~net_address_detail::mask_of(length)}; }

std::int64_t Ipv4Prefix::usable_hosts() const {
    const std::int64_t all = std::int64_t{1} << (32 - length);
    return length >= 31 ? all : all - 2;
}

std::optional<Ipv4> parse_ipv4(std::string_view text) {
    const auto address = net_address_detail::take_address(text);
    return address && text.empty() ? address : std::nullopt;
}

std::optional<Ipv4Prefix> parse_ipv4_prefix(std::string_view text) {
    const auto network = net_address_detail::take_address(text);
    if (!network || !text.starts_with('/')) return std::nullopt;
    text.remove_prefix(1);
    const auto length = net_address_detail::take_number(text, 32);
    if (!length || !text.empty()) return std::nullopt;
    const Ipv4Prefix prefix{*network, static_cast<int>(*length)};
    return prefix.holds(*network) ? std::optional(prefix) : std::nullopt;
}

std::optional<MacAddress> parse_mac(std::string_view text) {
    if (text.size() != 17) return std::nullopt;
    const char mark = text[2];
    if (mark != '-' && mark != ':') return std::nullopt;
    std::uint64_t bits = 0;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const auto c = static_cast<unsigned char>(text[i]);
        if (i % 3 == 2) {
            if (text[i] != mark) return std::nullopt;
            continue;
        }
        if (!std::isxdigit(c)) return std::nullopt;
        bits = bits << 4U | static_cast<std::uint64_t>(std::isdigit(c) ? c - '0' : std::tolower(c) - 'a' + 10);
    }
    return MacAddress{bits};
}

std::string print(Ipv4 address) {
    std::string text;
    for (int shift = 24; shift >= 0; shift -= 8)
        text += (text.empty() ? "" : ".") + std::to_string(address.bits >> static_cast<unsigned>(shift) & 255U);
    return text;
}

std::string print(const Ipv4Prefix& prefix) { return print(prefix.network) + "/" + std::to_string(prefix.length); }

std::string print(MacAddress address) {
    static constexpr char hex[] = "0123456789ABCDEF";
    std::string text;
    for (int shift = 44; shift >= 0; shift -= 4) {
        text += hex[address.bits >> static_cast<unsigned>(shift) & 15U];
        if (shift % 8 == 0 && shift > 0) text += '-';
    }
    return text;
}

}  // namespace streamwright::base
