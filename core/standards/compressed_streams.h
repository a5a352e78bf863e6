// Compressed pictures over RTP: JPEG XS in packets of its codestream (IETF RFC 9134, SMPTE ST 2110-22), and what
// compression is usually set to.
#pragma once

#include "core/standards/citation.h"
#include "core/standards/picture_stream.h"
#include "core/standards/video_format.h"

#include <span>
#include <string_view>

namespace streamwright::standards {

/// Thousandths of a bit for each pixel of the raster.
using MilliBitsPerPixel = std::int64_t;

/// Octets of the codestream of one frame or field, rounded up.
std::int64_t codestream_octets(const VideoFormat& format, MilliBitsPerPixel rate);
/// Raster x bits a pixel x frame rate, exact.
base::Rate codestream_rate(const VideoFormat& format, MilliBitsPerPixel rate);

/// Payload header of each packet.
inline constexpr std::int64_t jpeg_xs_header_octets = 4;
inline constexpr Citation jpeg_xs_header_source{"IETF", "RFC 9134", "section 4.3", Standing::memory};

/// The codestream of each picture cut into full packets and a last one (codestream mode).
PictureStream jpeg_xs_stream(const VideoFormat& format, MilliBitsPerPixel rate,
                             std::int64_t udp_limit = standard_udp_octets);

/// What each packet of a picture in fragments (FU) bears before its share of the bits: indicator and header, of H.265
/// one octet more.
inline constexpr std::int64_t h264_fragment_octets = 2;
inline constexpr Citation h264_fragment_source{"IETF", "RFC 6184", "section 5.8", Standing::memory};
inline constexpr std::int64_t h265_fragment_octets = 3;
inline constexpr Citation h265_fragment_source{"IETF", "RFC 7798", "section 4.4.3", Standing::memory};

/// Octets of one mean picture of a bit rate, rounded up.
std::int64_t mean_picture_octets(const VideoFormat& format, base::BitRate rate);
/// H.264 or H.265 at a bit rate, each picture taken as a mean one: cut into full packets and a last one. Real pictures
/// differ in size, their sum does not.
PictureStream fragmented_stream(const VideoFormat& format, base::BitRate rate, PictureCoding coding,
                                std::int64_t udp_limit = full_mtu_udp_octets);

/// Still visually lossless up to this : 1, and the lines that encoder and decoder add together.
inline constexpr int jpeg_xs_most_ratio = 10;
inline constexpr int jpeg_xs_least_lines = 1;
inline constexpr int jpeg_xs_most_lines = 32;
inline constexpr Citation jpeg_xs_source{"ISO/IEC", "21122", ""};

/// What streams are usually set to: planning ranges of the trade, never limits.
struct PlanningRate {
    std::string_view what;
    base::BitRate from, to;
};
std::span<const PlanningRate> planning_rates();
inline constexpr Citation planning_source{"trade practice", "", "", Standing::memory};

}  // namespace streamwright::standards
