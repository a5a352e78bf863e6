// The one fact a plate tells in its lowest row: what an encoder sends, a decoder shows, a switch feeds.
#pragma once

#include "core/deliver/drawing/schematic_fragments.h"

#include <string>

namespace streamwright::deliver {

std::string fact_line(const Scene& scene, const model::Device& device);

/// Rounded up to whole megabits a second, so that a plate never tells less than the wire carries.
std::string wire_words(const model::Stream& stream, const base::NumberStyle& numbers);

}  // namespace streamwright::deliver
