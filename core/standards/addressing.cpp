#include "core/standards/addressing.h"

#include <algorithm>
#include <array>

namespace streamwright::standards {

namespace addressing_detail {

using base::Ipv4;
using base::Ipv4Prefix;

constexpr std::array private_prefixes{Ipv4Prefix{{0x0A000000}, 8}, Ipv4Prefix{{0xAC100000}, 12},
                                      Ipv4Prefix{{0xC0A80000}, 16}};
constexpr std::array documentation_prefixes{Ipv4Prefix{{0xC0000200}, 24}, Ipv4Prefix{{0xC6336400}, 24},
                                            Ipv4Prefix{{0xCB007100}, 24}};
constexpr Ipv4Prefix link_local{{0xA9FE0000}, 16};

template <class Prefixes>
bool any_holds(const Prefixes& prefixes, Ipv4 address) {
    return std::any_of(prefixes.begin(), prefixes.end(), [&](const Ipv4Prefix& each) { return each.holds(address); });
}

}  // namespace addressing_detail

bool is_private(base::Ipv4 address) {
    return addressing_detail::any_holds(addressing_detail::private_prefixes, address);
}

bool is_link_local(base::Ipv4 address) { return addressing_detail::link_local.holds(address); }

bool is_autoconfigured(base::Ipv4 address) {
    const auto third = address.bits >> 8U & 255U;
    return is_link_local(address) && third >= 1 && third <= 254;
}

bool is_documentation(base::Ipv4 address) {
    return addressing_detail::any_holds(addressing_detail::documentation_prefixes, address);
}

bool is_documentation(base::MacAddress address) {
    return address.bits >> 8U == 0x00005E0053 || address.bits >> 8U == 0x01005E9010;
}

std::optional<int> smallest_subnet_for(std::int64_t hosts) {
    for (int length = 32; length >= 1; --length)
        if (base::Ipv4Prefix{{0}, length}.usable_hosts() >= hosts) return length;
    return std::nullopt;
}

}  // namespace streamwright::standards
