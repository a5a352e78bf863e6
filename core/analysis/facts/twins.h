// Streams that carry the same picture over two planes. A subscription to one of them takes both (SMPTE ST 2022-7).
#pragma once

#include "core/graph/wiring.h"

#include <vector>

namespace streamwright::analysis {

/// Per stream, by index: its twin, whichever of the two names the other; -1: none. A stream has one twin; the first
/// by id that names it, or is named by it, counts.
std::vector<int> twin_streams(const graph::Wiring& wiring);

}  // namespace streamwright::analysis
