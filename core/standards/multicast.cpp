#include "core/standards/multicast.h"

#include <array>

namespace streamwright::standards {

namespace multicast_detail {

using base::Ipv4;

constexpr Ipv4 at(std::uint32_t a, std::uint32_t b, std::uint32_t c, std::uint32_t d) {
    return {a << 24U | b << 16U | c << 8U | d};
}

constexpr Citation rfc(std::string_view number, std::string_view section) { return {"IETF", number, section}; }

constexpr std::array blocks{
    GroupBlock{"local network control", at(224, 0, 0, 0), at(224, 0, 0, 255), false, rfc("RFC 5771", "section 4")},
    GroupBlock{"internetwork control", at(224, 0, 1, 0), at(224, 0, 1, 255), false, rfc("RFC 5771", "section 5")},
    GroupBlock{"SDP/SAP", at(224, 2, 0, 0), at(224, 2, 255, 255), false, rfc("RFC 5771", "section 7")},
    GroupBlock{"source-specific", at(232, 0, 0, 0), at(232, 255, 255, 255), true, rfc("RFC 4607", "")},
    GroupBlock{"GLOP", at(233, 0, 0, 0), at(233, 251, 255, 255), false, rfc("RFC 3180", "")},
    GroupBlock{"documentation", at(233, 252, 0, 0), at(233, 252, 0, 255), false, rfc("RFC 5771", "section 9.2")},
    GroupBlock{"unicast-prefix-based", at(234, 0, 0, 0), at(234, 255, 255, 255), false, rfc("RFC 6034", "section 3")},
    GroupBlock{"organization-local scope", at(239, 192, 0, 0), at(239, 195, 255, 255), true,
               rfc("RFC 2365", "section 6.2")},
    GroupBlock{"local scope", at(239, 255, 0, 0), at(239, 255, 255, 255), true, rfc("RFC 2365", "section 6.1")},
    GroupBlock{"administratively scoped", at(239, 0, 0, 0), at(239, 255, 255, 255), true, rfc("RFC 2365", "section 4")},
};

constexpr std::uint32_t mapped_bits = 0x7FFFFF;  // the low 23
constexpr std::uint64_t mac_base = 0x01005E000000;

constexpr std::uint32_t size_of(const GroupBlock& block) { return block.last.bits - block.first.bits; }

}  // namespace multicast_detail

bool is_group(base::Ipv4 address) { return address.bits >> 28U == 0xE; }

base::MacAddress group_mac(base::Ipv4 group) {
    return {multicast_detail::mac_base | (group.bits & multicast_detail::mapped_bits)};
}

std::vector<base::Ipv4> groups_sharing_mac(base::Ipv4 group) {
    constexpr std::uint32_t lost_bits = 5, first = 0xE0000000;
    std::vector<base::Ipv4> groups;
    for (std::uint32_t lost = 0; lost < 1U << lost_bits; ++lost)
        groups.push_back({first | lost << 23U | (group.bits & multicast_detail::mapped_bits)});
    return groups;
}

bool in_local_control_block(base::Ipv4 group) { return group.bits >> 8U == 0xE00000; }

bool on_control_block_mac(base::Ipv4 group) {
    return is_group(group) && (group.bits & multicast_detail::mapped_bits) >> 8U == 0;
}

bool in_reserved_top(base::Ipv4 group) { return group.bits >> 8U == 0xEFFFFF || group.bits >> 8U == 0xEFC3FF; }

std::span<const GroupBlock> group_blocks() { return multicast_detail::blocks; }

const GroupBlock* group_block(base::Ipv4 group) {
    const GroupBlock* smallest = nullptr;
    for (const auto& block : multicast_detail::blocks) {
        if (group < block.first || group > block.last) continue;
        if (!smallest || multicast_detail::size_of(block) < multicast_detail::size_of(*smallest)) smallest = &block;
    }
    return smallest;
}

GroupVerdict judge_group(base::Ipv4 group) {
    using enum GroupVerdict;
    if (!is_group(group)) return not_a_group;
    if (in_local_control_block(group)) return control_block;
    if (on_control_block_mac(group)) return control_block_mac;
    if (in_reserved_top(group)) return reserved_top;
    const auto* block = group_block(group);
    if (block && block->name == "documentation") return documentation;
    return block && block->for_plans ? good : not_for_plans;
}

}  // namespace streamwright::standards
