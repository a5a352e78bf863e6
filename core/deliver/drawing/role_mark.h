// Role marks: what a device is, told by shape alone. Drawn on a grid of 16 units, one colour.
#pragma once

#include "core/catalogue/device_type.h"
#include "core/deliver/drawing/fragment.h"

#include <vector>

namespace streamwright::deliver {

/// The mark in a square of 4 mm (16 canvas units) whose upper left corner is given.
std::vector<Path> role_mark(const catalogue::DeviceType* type, const std::vector<catalogue::Role>& roles,
                            SheetPoint at);

}  // namespace streamwright::deliver
