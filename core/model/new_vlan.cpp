#include "core/model/new_vlan.h"

#include <algorithm>
#include <bit>

namespace streamwright::model {

namespace new_vlan_detail {

constexpr int smallest_subnet = 24, largest_subnet = 16, last_vid = 4094;
constexpr int widest_around_addresses = 8;  // a flat network may have grown over all of 10.0.0.0/8

bool taken(const Design& design, int vid) {
    return std::any_of(design.vlans.begin(), design.vlans.end(), [&](const Vlan& row) { return row.vid == vid; });
}

int free_number(const Design& design) {
    if (design.vlans.empty()) return 1;
    for (int vid = 10; vid <= last_vid; vid += 10)
        if (!taken(design, vid)) return vid;
    for (int vid = 1; vid <= last_vid; ++vid)
        if (!taken(design, vid)) return vid;
    return last_vid;
}

struct Typed {
    std::optional<base::Ipv4> first;
    int common = smallest_subnet;  // leading bits that all addresses share
};

Typed typed_addresses(const Design& design) {
    Typed typed;
    for (const auto& device : design.devices)
        for (const auto& host : device.addresses) {
            if (!host.address) continue;
            if (!typed.first) typed.first = host.address;
            typed.common = std::min(typed.common, std::countl_zero(typed.first->bits ^ host.address->bits));
        }
    return typed;
}

bool overlaps_any(const Design& design, const base::Ipv4Prefix& subnet) {
    return std::any_of(design.vlans.begin(), design.vlans.end(),
                       [&](const Vlan& row) { return row.subnet && row.subnet->overlaps(subnet); });
}

}  // namespace new_vlan_detail

std::optional<base::Ipv4Prefix> free_subnet(const Design& design, int vid, const std::set<base::Ipv4>& clear_of) {
    using namespace new_vlan_detail;
    int length = smallest_subnet;
    while (length > largest_subnet &&
           (std::uint64_t{1} << (32 - length)) - 2 < std::uint64_t{2} * design.devices.size())
        --length;
    for (std::uint32_t second = static_cast<std::uint32_t>(vid) % 256, tries = 0; tries < 256; ++tries) {
        const auto subnet = base::Ipv4Prefix::around({0x0A000000U | (second << 16)}, length);
        const auto held = clear_of.lower_bound(subnet.network);
        const bool clear = held == clear_of.end() || !subnet.holds(*held);
        if (clear && !overlaps_any(design, subnet)) return subnet;
        second = (second + 1) % 256;
    }
    return std::nullopt;
}

Vlan new_vlan(const Design& design, VlanId id) {
    using namespace new_vlan_detail;
    auto row = Vlan::blank(id);
    row.vid = free_number(design);
    row.name = design.vlans.empty() ? "AV" : "VLAN " + std::to_string(row.vid);
    const auto typed = design.vlans.empty() ? typed_addresses(design) : Typed{};
    if (!typed.first)
        row.subnet = free_subnet(design, row.vid);
    else if (typed.common >= widest_around_addresses)
        row.subnet = base::Ipv4Prefix::around(*typed.first, typed.common);
    return row;
}

}  // namespace streamwright::model
