// How far a run reaches that is no network: pictures, USB, control and sound. Some limits stand in a standard, most are
// habits of the trade, which the design's settings and the cable's own type override.
#pragma once

#include "core/base/units.h"
#include "core/graph/runs.h"
#include "core/standards/citation.h"

#include <optional>
#include <string>

namespace streamwright::analysis {

struct LineReach {
    std::string line;      // "HDMI 18 Gbit/s, passive copper"; the name that a setting of the design takes
    base::Length careful;  // from here on it may fail
    base::Length most;     // beyond it should not be tried
    bool binding = false;  // a standard says so; else it is common practice
    bool set = false;      // by the design's settings
    standards::Citation source;
};

/// Nothing for network links, for ends whose port types state no known standard, and where every cable states a limit
/// of its own.
std::optional<LineReach> line_reach(const graph::Wiring& wiring, const graph::Run& run);

/// The first of the standards that either end states and the other states too, or that only one of them states.
std::string standard_of(const graph::Wiring& wiring, const graph::Run& run);

}  // namespace streamwright::analysis
