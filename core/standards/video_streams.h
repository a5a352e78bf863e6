// Uncompressed pictures over RTP (IETF RFC 4175, SMPTE ST 2110-20): pixel groups, the two ways to pack them into
// packets, and with picture_stream.h the rate that a format takes on the wire.
#pragma once

#include "core/base/enum_text.h"
#include "core/standards/citation.h"
#include "core/standards/picture_stream.h"
#include "core/standards/video_format.h"

#include <optional>

namespace streamwright::standards {

/// The smallest run of pixels that fills whole octets. At 4:2:0 it spans two lines.
struct PixelGroup {
    std::int64_t octets;
    std::int64_t pixels;
    int lines;
};
/// Nothing for 4:2:0 of 16 bits, which the tables do not have.
std::optional<PixelGroup> pixel_group(Sampling sampling, int depth);
inline constexpr Citation pixel_group_source{"SMPTE / IETF", "ST 2110-20 / RFC 4175", "Tables 1 to 3"};

/// Payload header: 2 octets of extended sequence number, and 6 for each line that the packet touches.
inline constexpr std::int64_t extended_sequence_octets = 2;
inline constexpr std::int64_t line_header_octets = 6;
inline constexpr Citation payload_header_source{"IETF", "RFC 4175", "section 4.3"};

/// general: packets never cross a line, and cut each line into equal parts where they can; block: full packets of
/// whole blocks of 180 octets, over the ends of lines.
enum class Packing { general, block };
inline constexpr std::int64_t block_octets = 180;
inline constexpr Citation packing_source{"SMPTE", "ST 2110-20", "6.3.2 and 6.3.3"};

/// Sample octets of a full packet.
std::int64_t sample_octets(const PixelGroup& group, std::int64_t groups_per_line, Packing packing,
                           std::int64_t udp_limit = standard_udp_octets);

/// The packets of one frame or field. Nothing where there is no pixel group.
std::optional<PictureStream> video_stream(const VideoFormat& format, Packing packing,
                                          std::int64_t udp_limit = standard_udp_octets);

}  // namespace streamwright::standards

template <>
struct streamwright::base::EnumText<streamwright::standards::Packing> {
    using E = streamwright::standards::Packing;
    static constexpr std::array<std::pair<E, std::string_view>, 2> names{
        {{E::general, "general"}, {E::block, "block"}}};
};
