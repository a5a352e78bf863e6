// Widths of text in the bundled face, from its own advance table, so that screen, paper and SVG agree to the
// micrometre.
#pragma once

#include "core/base/units.h"

#include <functional>
#include <string>
#include <string_view>

namespace streamwright::layout {

enum class Weight { normal, bold };

/// Measures scripts that need shaping; handed in by the app, may be empty.
using ShapedWidth = std::function<base::Length(std::string_view text, base::Length em, Weight weight)>;

/// Width of UTF-8 text set at the given em size without kerning.
base::Length text_width(std::string_view text, base::Length em, Weight weight, const ShapedWidth& shaped = {});

/// The text cut with an ellipsis so that it fits; unchanged if it fits.
std::string elided(std::string_view text, base::Length room, base::Length em, Weight weight);

}  // namespace streamwright::layout
