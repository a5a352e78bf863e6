#include "core/standards/wire_overhead.h"

#include <algorithm>

namespace streamwright::standards {

std::int64_t frame_octets(std::int64_t ip_packet_octets, int tags) {
    return std::max(mac_header_octets + ip_packet_octets + fcs_octets, least_frame_octets) + tags * tag_octets;
}

std::int64_t wire_octets(std::int64_t frame) { return preamble_octets + frame + gap_octets; }

std::int64_t ip_packet_octets(std::int64_t payload_octets, bool rtp) {
    return ipv4_octets + udp_octets + (rtp ? rtp_octets : 0) + payload_octets;
}

std::int64_t packet_wire_octets(std::int64_t payload_octets, bool rtp, int tags) {
    return wire_octets(frame_octets(ip_packet_octets(payload_octets, rtp), tags));
}

base::Rate wire_rate(base::BitRate payload_rate, std::int64_t payload_octets, bool rtp, int tags) {
    return base::Rate::scaled(payload_rate, packet_wire_octets(payload_octets, rtp, tags), payload_octets);
}

base::Rate payload_rate(base::BitRate line, std::int64_t payload_octets, bool rtp, int tags) {
    return base::Rate::scaled(line, payload_octets, packet_wire_octets(payload_octets, rtp, tags));
}

std::int64_t frame_rate_thousandths(base::BitRate line, std::int64_t frame) {
    constexpr std::int64_t bits_per_octet = 8;
    __extension__ using Wide = __int128;
    return static_cast<std::int64_t>(Wide{line.count()} * 1000 / (wire_octets(frame) * bits_per_octet));
}

}  // namespace streamwright::standards
