// IPv4 and MAC addresses that mean something before any plan is made: private, link-local, documentation; and how large
// a subnet must be.
#pragma once

#include "core/base/net_address.h"
#include "core/standards/citation.h"

#include <optional>

namespace streamwright::standards {

bool is_private(base::Ipv4 address);
inline constexpr Citation private_source{"IETF", "RFC 1918", "section 3"};

/// 169.254.0.0/16.
bool is_link_local(base::Ipv4 address);
/// The part of it that a host may take by itself: 169.254.1.0 to 169.254.254.255.
bool is_autoconfigured(base::Ipv4 address);
inline constexpr Citation link_local_source{"IETF", "RFC 3927", "section 2.1"};

/// Fine in examples, wrong in a live plan.
bool is_documentation(base::Ipv4 address);
bool is_documentation(base::MacAddress address);
inline constexpr Citation documentation_source{"IETF", "RFC 5737", "section 3"};
inline constexpr Citation documentation_mac_source{"IETF", "RFC 7042", "section 2.1.1"};

/// The longest prefix whose usable addresses suffice (count the gateway and the switches in); nothing beyond /1.
std::optional<int> smallest_subnet_for(std::int64_t hosts);

}  // namespace streamwright::standards
