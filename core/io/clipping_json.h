// Copied devices as text for the system's clipboard: the form of a design file, so that one reader guards both.
#pragma once

#include "core/base/result.h"
#include "core/model/design.h"

#include <string>
#include <string_view>

namespace streamwright::io {

std::string write_clipping(const model::Design& clipping);

/// Whatever else the clipboard may hold is refused in one sentence; so is a design without devices.
base::Result<model::Design> read_clipping(std::string_view text);

}  // namespace streamwright::io
