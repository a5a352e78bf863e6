// The image that a display lights: how many pixels it has of its own, and how large it is.
#pragma once

#include "core/base/units.h"

#include <optional>

namespace streamwright::catalogue {

struct ImageFacts {
    int pixels_across = 0, pixels_down = 0;
    std::optional<base::Length> width, height;  // lit; none: not stated, as of a projector, whose screen decides
    friend bool operator==(const ImageFacts&, const ImageFacts&) = default;
};

}  // namespace streamwright::catalogue
