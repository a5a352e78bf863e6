// The timing of a picture on a display link: total pixels and lines with blanking, and the pixel clock. Published
// tables first (CTA-861, VESA DMT); for others the formula of VESA CVT reduced blanking, version 1.
#pragma once

#include "core/standards/citation.h"
#include "core/standards/hertz.h"
#include "core/standards/video_format.h"

#include <optional>

namespace streamwright::standards {

struct VideoTiming {
    int total_pixels = 0;
    int total_lines = 0;  // of a whole frame: both fields of an interlaced one
    Hertz pixel_clock;
    Citation source;
};

/// The published timing of a format, or the computed one. Asked for reduced blanking it is VESA's, else CTA's before
/// the longer ones of VESA. Nothing for interlaced pictures that no table has: not known.
std::optional<VideoTiming> video_timing(const VideoFormat& format);

/// One line with its blanking, nearest nanosecond; nothing where the timing is not known.
std::optional<base::Duration> line_time(const VideoFormat& format);

/// VESA CVT 1.2, reduced blanking version 1: 160 pixels and at least 460 us of blanking, clock in steps of 0.25 MHz
/// rounded down. Progressive formats of at most 2000 frames a second.
VideoTiming reduced_blanking_timing(int width, int height, const Hertz& frame_rate);
inline constexpr Citation reduced_blanking_source{"VESA", "CVT 1.2", "reduced blanking version 1"};

/// Steps of the pixel clock in CVT version 1, and in reduced blanking version 2.
inline constexpr std::int64_t cvt_clock_step_hz = 250'000;
inline constexpr std::int64_t cvt_reduced_2_clock_step_hz = 1'000;

}  // namespace streamwright::standards
