// What a line of pictures or to a loudspeaker loses over its length, where its cable states enough.
#pragma once

#include "core/base/text.h"
#include "core/base/units.h"
#include "core/graph/runs.h"
#include "core/standards/citation.h"

#include <optional>
#include <string>
#include <vector>

namespace streamwright::analysis {

struct LineLosses {
    std::string line;  // "12G-SDI", "loudspeaker line"; the name that a setting of the design takes
    base::Loss loss;
    base::Loss careful;  // what the trade keeps to
    base::Loss most;     // what the standard calls typical; as careful where none speaks
    bool set = false;    // by the design's settings
    std::vector<base::Text> terms;
    standards::Citation source;
};

/// Whether the types at both ends and between are such that a loss could be reckoned.
bool loses_by_length(const graph::Wiring& wiring, const graph::Run& run);

/// SDI: from the losses that the coaxial cable states, at half the clock. Loudspeakers: from the cross-section of the
/// conductors and the load that the loudspeaker's port states ("loudspeaker 8 ohm", "loudspeaker 100 V 30 W").
/// Nothing where a length or a figure is missing.
std::optional<LineLosses> line_losses(const graph::Wiring& wiring, const graph::Run& run);

}  // namespace streamwright::analysis
