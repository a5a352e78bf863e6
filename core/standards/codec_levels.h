// Levels of H.264 and H.265: the least one that holds a picture, and the bit rate it allows.
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"
#include "core/standards/video_format.h"

#include <span>
#include <string_view>

namespace streamwright::standards {

struct CodecLevel {
    std::string_view name;
    std::int64_t units_per_second;  // H.264: macroblocks; H.265: luma samples
    std::int64_t units_per_frame;
    base::BitRate rate;       // H.264: High profile; H.265: main tier, Main and Main 10
    base::BitRate high_rate;  // H.265: high tier, zero where there is none; H.264: as rate
    Citation source;
};

std::span<const CodecLevel> h264_levels();
std::span<const CodecLevel> h265_levels();

/// Macroblocks of 16 x 16 in a frame, parts counted whole; and in a second, rounded up.
std::int64_t macroblocks(const VideoFormat& format);
std::int64_t macroblock_rate(const VideoFormat& format);
/// Luma samples of a frame, sides rounded up to 8; and in a second, rounded up.
std::int64_t luma_samples(const VideoFormat& format);
std::int64_t luma_sample_rate(const VideoFormat& format);

/// The least level that takes the picture at that bit rate (zero: any). Null: none does.
const CodecLevel* h264_level(const VideoFormat& format, base::BitRate rate = {});
const CodecLevel* h265_level(const VideoFormat& format, base::BitRate rate = {}, bool high_tier = false);

}  // namespace streamwright::standards
