#include "core/standards/multicast.h"

namespace streamwright::standards {

bool is_multicast(base::Ipv4 address) { return address.bits >> 28U == 0xEU; }

base::MacAddress group_mac(base::Ipv4 group) {
    constexpr std::uint64_t mapped = 0x01005E000000;
    return {mapped | (group.bits & 0x7FFFFFU)};
}

bool is_link_local_group(base::Ipv4 group) { return group.bits >> 8U == 0xE00000U; }

bool has_link_local_mac(base::Ipv4 group) { return is_multicast(group) && (group.bits & 0x7FFF00U) == 0; }

bool is_administratively_scoped(base::Ipv4 group) { return group.bits >> 24U == 239U; }

bool is_scope_relative(base::Ipv4 group) {
    const auto top = group.bits >> 8U;
    return top == 0xEFFFFFU || top == 0xEFC3FFU;  // 239.255.255.0/24, 239.195.255.0/24
}

Citation mapping_source() { return {"IETF", "RFC 1112", "6.4"}; }
Citation reserved_block_source() { return {"IETF", "RFC 5771", "4, and RFC 4541 2.1.2"}; }

}  // namespace streamwright::standards
