// What a VLAN that is being made is called and numbered, and which subnet it gets, so that nobody need type them.
#pragma once

#include "core/model/design.h"

namespace streamwright::model {

/// The first VLAN of a design is number 1, since ports that say nothing are in it (IEEE 802.1Q, default PVID); later
/// ones take the next free multiple of ten (common practice). Its subnet is a free one of 10.0.0.0/8 (RFC 1918) with
/// room for twice the devices, or, for the first VLAN, the smallest one that holds the addresses typed so far; none
/// where they are too far apart for one.
Vlan new_vlan(const Design& design, VlanId id);

}  // namespace streamwright::model
