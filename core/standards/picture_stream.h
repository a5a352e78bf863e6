// A picture as packets: how many of which size each frame or field takes, and so its rate over IP and on the wire.
#pragma once

#include "core/base/enum_text.h"
#include "core/base/rate.h"
#include "core/standards/hertz.h"

#include <cstdint>
#include <vector>

namespace streamwright::standards {

/// uncompressed: IETF RFC 4175 and SMPTE ST 2110-20; jpeg_xs: RFC 9134 and ST 2110-22; h264: RFC 6184; h265: RFC 7798.
enum class PictureCoding { uncompressed, jpeg_xs, h264, h265 };

/// Packets of one size; payload is what follows the RTP header, in octets.
struct PacketRun {
    std::int64_t packets = 0;
    std::int64_t payload = 0;
    friend bool operator==(const PacketRun&, const PacketRun&) = default;
};

struct PictureStream {
    std::vector<PacketRun> runs;  // of one frame, or of one field of an interlaced picture
    Hertz pictures;               // frames or fields a second
    friend bool operator==(const PictureStream&, const PictureStream&) = default;
};

/// N of SMPTE ST 2110-21: packets of one frame or field.
std::int64_t packets_per_picture(const PictureStream& stream);

/// IPv4 packets alone, as bandwidth lines count them; exact.
base::Rate ip_rate(const PictureStream& stream);

/// With everything that a frame takes on the line; each tag counts 4 octets. Exact.
base::Rate wire_rate(const PictureStream& stream, int tags = 0);

/// Most octets of a UDP datagram, its own 8 counted, by SMPTE ST 2110-10 section 6.3: the standard limit, and the
/// extended one that a sender must declare (MAXUDP). No other value is allowed.
inline constexpr std::int64_t standard_udp_octets = 1460;
inline constexpr std::int64_t extended_udp_octets = 8960;
/// Most of one in an IPv4 packet of 1500 octets, for senders outside SMPTE ST 2110.
inline constexpr std::int64_t full_mtu_udp_octets = 1480;

/// b=AS of a session description: kilobits a second of IP packets, rounded up.
std::int64_t bandwidth_line_kbit(const base::Rate& ip_rate);

}  // namespace streamwright::standards

template <>
struct streamwright::base::EnumText<streamwright::standards::PictureCoding> {
    using E = streamwright::standards::PictureCoding;
    static constexpr std::array<std::pair<E, std::string_view>, 4> names{
        {{E::uncompressed, "uncompressed"}, {E::jpeg_xs, "JPEG XS"}, {E::h264, "H.264"}, {E::h265, "H.265"}}};
};
