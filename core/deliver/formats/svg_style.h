// How roles look on paper: black only, widths of ISO 128, patterns that tell signals apart without colour.
#pragma once

#include "core/deliver/drawing/fragment.h"

#include <string>
#include <string_view>

namespace streamwright::deliver {

/// The style sheet of every page.
std::string_view svg_style_sheet();
/// The class of a role in that sheet.
std::string_view svg_class(Role role);
/// The class of a cable's outer stroke, by signal.
std::string_view svg_cable_class(catalogue::Signal signal);
/// Two fine strands: a wide stroke whose middle is cleared.
bool has_two_strands(catalogue::Signal signal);

}  // namespace streamwright::deliver
