// The addresses of one subnet as they are given out: never its first, its last, the gateway's, one that is leased or
// one that somebody has.
#pragma once

#include "core/model/rows/vlan.h"

#include <cstdint>
#include <optional>
#include <set>

namespace streamwright::analysis {

class AddressPool {
public:
    /// The VLAN has a subnet. Where it names no gateway its first address is kept free for one (common practice).
    explicit AddressPool(const model::Vlan& vlan);

    /// Whether a host may have it: in the subnet, no end of it, not leased. The gateway's counts as sound.
    bool sound(base::Ipv4 address) const;
    /// The lowest that is free and above `above`; it counts as used from now on.
    std::optional<base::Ipv4> take(std::set<base::Ipv4>& used, base::Ipv4 above = {});
    /// How many could still be given.
    std::int64_t free(const std::set<base::Ipv4>& used) const;

private:
    bool leased(std::uint64_t bits) const { return lease_first_ <= bits && bits <= lease_last_; }

    std::uint64_t first_, last_;                      // that a host may take
    std::uint64_t lease_first_ = 1, lease_last_ = 0;  // none
    std::uint64_t kept_;                              // for the gateway
    std::uint64_t next_;                              // all below are used
};

}  // namespace streamwright::analysis
