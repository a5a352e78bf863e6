// A picture as it travels: raster, frame rate, sampling, depth and dynamic range. Read and written as people do:
// "1080p60", "2160p59.94 4:2:2 10-bit HLG", "1920x1200@60 RB".
#pragma once

#include "core/base/enum_text.h"
#include "core/base/result.h"
#include "core/standards/citation.h"
#include "core/standards/hertz.h"

#include <optional>
#include <string>
#include <string_view>

namespace streamwright::standards {

enum class Sampling { rgb, ycbcr_444, ycbcr_422, ycbcr_420 };

/// PQ and HLG are the two transfer curves of ITU-R BT.2100.
enum class DynamicRange { sdr, pq, hlg };

struct VideoFormat {
    int width = 1920;
    int height = 1080;  // lines of the whole frame, also where it is interlaced
    bool interlaced = false;
    Hertz frame_rate = Hertz::whole(60);  // whole frames; an interlaced picture has twice as many fields
    Sampling sampling = Sampling::rgb;
    int depth = 8;  // bits per component
    DynamicRange range = DynamicRange::sdr;
    bool reduced_blanking = false;  // asks for VESA reduced blanking even where a longer timing is published
    friend bool operator==(const VideoFormat&, const VideoFormat&) = default;
};

/// What nobody sends is refused, so that a slip of the keyboard is caught: common practice, well above what is sold.
inline constexpr int most_pixels_a_side = 10'240;
inline constexpr int least_pixels_a_side = 64;
inline constexpr int most_frames_a_second = 600;

/// PQ and HLG pictures need 10 bits at least.
inline constexpr int least_hdr_depth = 10;
inline constexpr Citation hdr_depth_source{"ITU-R", "BT.2100", "10 or 12 bit"};

/// Nothing where the format is sound; else one sentence that names the field (width, height, frame rate, sampling,
/// depth). An HDR picture of 8 bits is no contradiction: it can be sent, it only looks bad.
std::optional<base::Error> contradiction(const VideoFormat& format);

/// Reads raster and rate, then in any order sampling (RGB where none is said; "4:4:4" alone is YCbCr), depth (8),
/// range (SDR), RB. "59.94", "29.97", "23.98" and their kin are the exact n x 1000/1001. Refuses what it cannot read
/// and every contradiction.
base::Result<VideoFormat> parse_video_format(std::string_view text);

/// "2160p59.94 4:2:2 10-bit HLG"; parses to the same format again.
std::string text(const VideoFormat& format);
/// Raster and rate alone: "2160p59.94", "1920x1200@60 RB".
std::string raster_text(const VideoFormat& format);

/// Frames of a progressive picture, fields of an interlaced one.
Hertz refresh_rate(const VideoFormat& format);

/// Bits of one pixel on average: 3 x depth for RGB and 4:4:4, 2 x for 4:2:2, 1.5 x for 4:2:0.
int bits_per_pixel(Sampling sampling, int depth);
inline constexpr Citation bits_per_pixel_source{"SMPTE / CTA", "ST 2110-20 / 861", "sampling definitions"};

/// Width x height x frame rate x bits per pixel: no blanking, no headers. Exact.
base::Rate active_rate(const VideoFormat& format);

}  // namespace streamwright::standards

template <>
struct streamwright::base::EnumText<streamwright::standards::Sampling> {
    using E = streamwright::standards::Sampling;
    static constexpr std::array<std::pair<E, std::string_view>, 4> names{
        {{E::rgb, "RGB"}, {E::ycbcr_444, "4:4:4"}, {E::ycbcr_422, "4:2:2"}, {E::ycbcr_420, "4:2:0"}}};
};

template <>
struct streamwright::base::EnumText<streamwright::standards::DynamicRange> {
    using E = streamwright::standards::DynamicRange;
    static constexpr std::array<std::pair<E, std::string_view>, 3> names{
        {{E::sdr, "SDR"}, {E::pq, "PQ"}, {E::hlg, "HLG"}}};
};
