// What a type may say of the image that it lights and of LED data outputs. For .cpp files only.
#pragma once

#include "core/catalogue/detail/judge.h"
#include "core/catalogue/device_type.h"

namespace streamwright::catalogue {

/// LED walls reach tens of millions of pixels; a hundred times that is a slip of the pen.
inline void judge_led(Judge& judge, const PortType& port, const std::string& field) {
    constexpr std::int64_t most = 1'000'000'000;
    judge.refuse_if(port.most_pixels && (!carries_led_data(port) || port.way != Way::out), field,
                    "stands on outputs of LED wall data only");
    judge.refuse_if(port.most_pixels && (*port.most_pixels < 1 || *port.most_pixels > most), field,
                    "must be 1 to 1,000,000,000");
}

inline void judge_image(Judge& judge, const DeviceType& type) {
    constexpr int most_pixels = 32768;
    constexpr auto most_side = base::Length::from_count(100'000'000);
    const auto wrong_side = [&](const std::optional<base::Length>& side) {
        return side && (side->count() <= 0 || *side > most_side);
    };
    judge.refuse_if(type.most_windows && (*type.most_windows < 1 || *type.most_windows > 1000), "most_windows",
                    "must be 1 to 1000");
    if (!type.image) return;
    const auto& image = *type.image;
    judge.refuse_if(type.codec || type.bridging || type.module, "image", "stands on what shows pictures only");
    judge.refuse_if(image.pixels_across < 1 || image.pixels_across > most_pixels, "image.pixels_across",
                    "must be 1 to 32768");
    judge.refuse_if(image.pixels_down < 1 || image.pixels_down > most_pixels, "image.pixels_down",
                    "must be 1 to 32768");
    judge.refuse_if(wrong_side(image.width), "image.width_um", "must be above zero and at most 100 m");
    judge.refuse_if(wrong_side(image.height), "image.height_um", "must be above zero and at most 100 m");
    judge.refuse_if(image.width.has_value() != image.height.has_value(), "image",
                    "states width and height, or neither");
}

}  // namespace streamwright::catalogue
