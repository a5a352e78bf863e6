// The order in which Tab walks the canvas: plates as one reads, left to right in bands, each with its ports.
#pragma once

#include "app/canvas/sheet_scene.h"

#include <optional>
#include <vector>

namespace streamwright::app {

std::vector<Chosen> focus_order(const SheetScene& scene);
/// The one after (or before) `from`; the first (or last) from nowhere; nothing past the ends.
std::optional<Chosen> next_in(const std::vector<Chosen>& order, const std::optional<Chosen>& from, bool forward);

}  // namespace streamwright::app
