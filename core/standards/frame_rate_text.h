// Frame rates as people write them: "60", "23.98", "59.94" (which is 60000/1001), or the fraction itself.
#pragma once

#include "core/standards/hertz.h"

#include <optional>
#include <string>
#include <string_view>

namespace streamwright::standards {

/// Takes a rate from the front of the text, a decimal or a fraction of whole numbers. A decimal of two or more places
/// that is n x 1000/1001 rounded or cut there (n: 24, 30, 48, 60, ...) is that. Nothing: no rate stands there.
std::optional<Hertz> take_frame_rate(std::string_view& text);

/// The decimal where it reads back to the same rate, else the fraction.
std::string frame_rate_text(const Hertz& rate);

}  // namespace streamwright::standards
