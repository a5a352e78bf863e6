// Lines of the network drawing: dashes, dots and bars along an orthogonal line, for paper has no colours.
#pragma once

#include "core/deliver/drawing/fragment.h"

#include <vector>

namespace streamwright::deliver {

/// Strokes along an orthogonal line, `on` long with `off` between them; corners break a stroke.
std::vector<Path> dashed(const std::vector<SheetPoint>& points, base::Length on, base::Length off, Role role);
/// The same as filled bars, `width` across.
std::vector<Path> barred(const std::vector<SheetPoint>& points, base::Length on, base::Length off, base::Length width);
/// A filled arrow head whose tip is at `tip`, pointing right or left.
Path arrow_head(SheetPoint tip, bool rightward);

}  // namespace streamwright::deliver
