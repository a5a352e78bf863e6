#include "core/analysis/address_pool.h"

#include <algorithm>
#include <iterator>

namespace streamwright::analysis {

AddressPool::AddressPool(const model::Vlan& vlan) : first_(vlan.subnet->network.bits) {
    last_ = vlan.subnet->broadcast().bits;
    if (vlan.subnet->length < 31) ++first_, --last_;  // RFC 3021: in a /31 both are hosts
    if (vlan.lease_first && vlan.lease_last) {
        lease_first_ = vlan.lease_first->bits;
        lease_last_ = vlan.lease_last->bits;
    }
    kept_ = vlan.gateway ? vlan.gateway->bits : first_;
    next_ = first_;
}

bool AddressPool::sound(base::Ipv4 address) const {
    return first_ <= address.bits && address.bits <= last_ && !leased(address.bits);
}

std::optional<base::Ipv4> AddressPool::take(std::set<base::Ipv4>& used, base::Ipv4 above) {
    const bool lowest = above.bits < next_;
    for (std::uint64_t bits = lowest ? next_ : std::uint64_t{above.bits} + 1; bits <= last_; ++bits) {
        if (leased(bits)) {
            bits = lease_last_;
            continue;
        }
        const base::Ipv4 address{static_cast<std::uint32_t>(bits)};
        if (bits == kept_ || !used.insert(address).second) continue;
        if (lowest) next_ = bits + 1;
        return address;
    }
    if (lowest) next_ = last_ + 1;
    return std::nullopt;
}

std::int64_t AddressPool::free(const std::set<base::Ipv4>& used) const {
    auto count = static_cast<std::int64_t>(last_ + 1 - first_);
    const auto from = std::max(first_, lease_first_), to = std::min(last_, lease_last_);
    if (from <= to) count -= static_cast<std::int64_t>(to - from + 1);
    const auto at = [](std::uint64_t bits) { return base::Ipv4{static_cast<std::uint32_t>(bits)}; };
    count -= std::count_if(used.lower_bound(at(first_)), used.upper_bound(at(last_)),
                           [&](base::Ipv4 each) { return !leased(each.bits); });
    const bool keeps = sound(at(kept_)) && !used.contains(at(kept_));
    return count - (keeps ? 1 : 0);
}

}  // namespace streamwright::analysis
