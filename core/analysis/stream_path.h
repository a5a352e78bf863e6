// The lines that one stream takes to one receiver, in order: the one way there is in an active tree.
#pragma once

#include "core/analysis/facts/forwarding.h"

#include <optional>
#include <vector>

namespace streamwright::analysis {

/// The arcs; bridges stand between two of them. Nothing where no way leads from the stream's encoder to the device.
std::optional<std::vector<int>> stream_path(const graph::NetworkGraph&, const VlanPaths&, const SpanningTrees&,
                                            const Forwarding&, int stream, int decoder);

}  // namespace streamwright::analysis
