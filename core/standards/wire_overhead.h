// What a payload weighs on the wire: headers, padding of short frames, tags, preamble and gap.
#pragma once

#include "core/base/rate.h"
#include "core/base/units.h"
#include "core/standards/citation.h"

#include <cstdint>

namespace streamwright::standards {

// Octets of each part.
inline constexpr std::int64_t preamble_octets = 8;  // with start frame delimiter
inline constexpr std::int64_t gap_octets = 12;
inline constexpr std::int64_t mac_header_octets = 14;
inline constexpr std::int64_t fcs_octets = 4;
inline constexpr std::int64_t tag_octets = 4;
inline constexpr std::int64_t ipv4_octets = 20;
inline constexpr std::int64_t ipv6_octets = 40;
inline constexpr std::int64_t udp_octets = 8;
inline constexpr std::int64_t rtp_octets = 12;
inline constexpr std::int64_t least_frame_octets = 64;
inline constexpr std::int64_t usual_mtu_octets = 1500;

inline constexpr Citation ethernet_overhead_source{"IEEE", "802.3", "clauses 3 and 4"};
inline constexpr Citation tag_source{"IEEE", "802.1Q", "clause 9", Standing::memory};
inline constexpr Citation packet_header_source{"IETF", "RFC 791, 768, 3550", "", Standing::memory};

/// Headers and FCS around an IP packet, padded to 64 octets; each tag comes on top, as a bridge that tags a short frame
/// leaves it.
std::int64_t frame_octets(std::int64_t ip_packet_octets, int tags = 0);

/// With preamble and gap.
std::int64_t wire_octets(std::int64_t frame);

/// IP packet of a UDP payload, with an RTP header inside if asked for.
std::int64_t ip_packet_octets(std::int64_t payload_octets, bool rtp);

/// Octets on the wire of one packet of a stream.
std::int64_t packet_wire_octets(std::int64_t payload_octets, bool rtp, int tags = 0);

/// Payload rate x wire octets / payload octets, exact.
base::Rate wire_rate(base::BitRate payload_rate, std::int64_t payload_octets, bool rtp, int tags = 0);

/// Payload that a line can carry when nothing else does: line x payload octets / wire octets, exact.
base::Rate payload_rate(base::BitRate line, std::int64_t payload_octets, bool rtp, int tags = 0);

/// Frames a second on a full line, in thousandths, rounded down (RFC 2544 gives whole frames).
std::int64_t frame_rate_thousandths(base::BitRate line, std::int64_t frame);

}  // namespace streamwright::standards
