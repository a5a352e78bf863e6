// What headers and gaps add to a payload on the wire, in octets (IEEE 802.3 clauses 3 and 4, IEEE 802.1Q clause 9,
// RFC 791, RFC 768, RFC 3550).
#pragma once

#include "core/standards/citation.h"

#include <algorithm>

namespace streamwright::standards {

inline constexpr int preamble_octets = 8;  // preamble and start of frame
inline constexpr int gap_octets = 12;      // inter-packet gap
inline constexpr int mac_header_octets = 14;
inline constexpr int frame_check_octets = 4;
inline constexpr int vlan_tag_octets = 4;
inline constexpr int ipv4_octets = 20;
inline constexpr int udp_octets = 8;
inline constexpr int rtp_octets = 12;
inline constexpr int least_frame_octets = 64;  // frame check included, tag not counted
inline constexpr int usual_mtu_octets = 1500;

/// Octets that one IP packet occupies on the wire, padding of short frames included.
constexpr int wire_octets(int ip_packet_octets, bool tagged) {
    const int frame = std::max(least_frame_octets, mac_header_octets + ip_packet_octets + frame_check_octets);
    return preamble_octets + frame + (tagged ? vlan_tag_octets : 0) + gap_octets;
}

/// Octets on the wire of a datagram with that payload.
constexpr int datagram_wire_octets(int payload_octets, bool rtp, bool tagged) {
    return wire_octets(payload_octets + (rtp ? rtp_octets : 0) + udp_octets + ipv4_octets, tagged);
}

Citation wire_overhead_source();

}  // namespace streamwright::standards
