// A device that changes its role or its type turns ports to the other side of its plate; its cables must follow in the
// same edit.
#pragma once

#include "core/model/delta.h"

namespace streamwright::layout {

/// The change, and the new lines of the cables at plates that look different after it. Pinned lines stay; a change that
/// turns no plate comes back as it is.
model::Delta with_turned_plates(const model::Design& before, model::Delta delta);

}  // namespace streamwright::layout
