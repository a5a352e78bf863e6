#include "core/standards/video_format.h"

#include "core/standards/frame_rate_text.h"

#include <array>

namespace streamwright::standards {

namespace video_format_detail {

/// Rasters that people name by their lines alone.
struct NamedRaster {
    int width, height;
};
constexpr std::array named{NamedRaster{720, 480},   NamedRaster{720, 576},   NamedRaster{1280, 720},
                           NamedRaster{1920, 1080}, NamedRaster{2560, 1440}, NamedRaster{3840, 2160},
                           NamedRaster{7680, 4320}};

bool is_named(int width, int height) {
    for (const auto& each : named)
        if (each.width == width && each.height == height) return true;
    return false;
}

std::optional<base::Error> raster_fault(const VideoFormat& format) {
    const auto outside = [](int side) { return side < least_pixels_a_side || side > most_pixels_a_side; };
    const auto say = [](std::string_view field, int value) {
        return base::Error{
            "The " + std::string(field) + " of a picture is %1 to %2 pixels, not %3.",
            {std::to_string(least_pixels_a_side), std::to_string(most_pixels_a_side), std::to_string(value)}};
    };
    if (outside(format.width)) return say("width", format.width);
    if (outside(format.height)) return say("height", format.height);
    if (format.interlaced && format.height % 2 != 0)
        return base::Error{"The height of an interlaced picture is even, not %1.", {std::to_string(format.height)}};
    return std::nullopt;
}

std::optional<base::Error> rate_fault(const VideoFormat& format) {
    const auto refresh = refresh_rate(format);
    if (refresh >= Hertz::whole(1) && refresh <= Hertz::whole(most_frames_a_second)) return std::nullopt;
    return base::Error{"The frame rate of a picture is 1 to %1 Hz, not %2 Hz.",
                       {std::to_string(most_frames_a_second), frame_rate_text(refresh)}};
}

std::optional<base::Error> sampling_fault(const VideoFormat& format) {
    const bool halves_width = format.sampling == Sampling::ycbcr_422 || format.sampling == Sampling::ycbcr_420;
    if (halves_width && format.width % 2 != 0)
        return base::Error{"Sampling %1 needs an even width, not %2.",
                           {std::string(base::enum_text(format.sampling)), std::to_string(format.width)}};
    if (format.sampling == Sampling::ycbcr_420 && format.height % 2 != 0)
        return base::Error{"Sampling 4:2:0 needs an even height, not %1.", {std::to_string(format.height)}};
    return std::nullopt;
}

std::optional<base::Error> depth_fault(const VideoFormat& format) {
    for (const int good : {8, 10, 12, 16})
        if (format.depth == good) return std::nullopt;
    return base::Error{"The depth of a picture is 8, 10, 12 or 16 bits, not %1.", {std::to_string(format.depth)}};
}

}  // namespace video_format_detail

std::optional<base::Error> contradiction(const VideoFormat& format) {
    namespace detail = video_format_detail;
    if (auto fault = detail::raster_fault(format)) return fault;
    if (auto fault = detail::rate_fault(format)) return fault;
    if (auto fault = detail::sampling_fault(format)) return fault;
    return detail::depth_fault(format);
}

std::string raster_text(const VideoFormat& format) {
    const auto rate = frame_rate_text(refresh_rate(format));
    const char* scan = format.interlaced ? "i" : "p";
    std::string out;
    if (video_format_detail::is_named(format.width, format.height)) {
        out = std::to_string(format.height) + scan + rate;
    } else {
        out = std::to_string(format.width) + "x" + std::to_string(format.height);
        out += (format.interlaced ? "i" : "@") + rate;
    }
    return format.reduced_blanking ? out + " RB" : out;
}

std::string text(const VideoFormat& format) {
    std::string out = raster_text(format) + " " + std::string(base::enum_text(format.sampling)) + " " +
                      std::to_string(format.depth) + "-bit";
    if (format.range != DynamicRange::sdr) out += " " + std::string(base::enum_text(format.range));
    return out;
}

Hertz refresh_rate(const VideoFormat& format) { return format.frame_rate.times(format.interlaced ? 2 : 1); }

int bits_per_pixel(Sampling sampling, int depth) {
    switch (sampling) {
        case Sampling::rgb:
        case Sampling::ycbcr_444:
            return 3 * depth;
        case Sampling::ycbcr_422:
            return 2 * depth;
        case Sampling::ycbcr_420:
            return 3 * depth / 2;
    }
    return 0;
}

base::Rate active_rate(const VideoFormat& format) {
    return format.frame_rate.bits(std::int64_t{format.width} * format.height *
                                  bits_per_pixel(format.sampling, format.depth));
}

}  // namespace streamwright::standards
