// Multicast groups and the MAC addresses they map to (RFC 1112 6.4); the blocks a plan must keep out of (RFC 5771, RFC
// 2365, RFC 4541).
#pragma once

#include "core/base/net_address.h"
#include "core/standards/citation.h"

namespace streamwright::standards {

bool is_multicast(base::Ipv4 address);  // 224.0.0.0/4
/// 01-00-5E and the low 23 bits: 32 groups share each address.
base::MacAddress group_mac(base::Ipv4 group);
bool is_link_local_group(base::Ipv4 group);  // 224.0.0.0/24, flooded always
/// x.0.0.y and x.128.0.y: the MAC addresses of 224.0.0.0/24, flooded by many switches.
bool has_link_local_mac(base::Ipv4 group);
bool is_administratively_scoped(base::Ipv4 group);  // 239.0.0.0/8, RFC 2365
/// The top /24 of the local and organization-local scopes, reserved for scope-relative use (RFC 2365 clause 9).
bool is_scope_relative(base::Ipv4 group);

Citation mapping_source();
Citation reserved_block_source();

}  // namespace streamwright::standards
