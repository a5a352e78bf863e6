// Deferred. The greatest load of each arc over every routing that the decoders' inputs allow.
// Tree form: the general exact form (any unregistered mode, several input kinds) takes this file's place later.
#pragma once

#include "core/analysis/facts/link_load.h"

#include <optional>
#include <stop_token>
#include <vector>

namespace streamwright::analysis {

/// One (stream, decoder, input) of a routing that attains the worst case.
struct Routed {
    int stream = 0;
    int decoder = 0;   // device index
    int input = 0;     // index into the decoder type's inputs
    friend auto operator<=>(const Routed&, const Routed&) = default;
};

struct ArcWorst {
    base::Rate wire;                   // unasked + routed
    std::vector<int> unasked;          // streams on the arc with nothing routed
    std::vector<int> routed;           // streams that routing adds, by falling rate
    std::vector<Routed> witness;       // a routing that attains it
    int inputs_beyond = 0;             // decoder inputs across the arc
    friend bool operator==(const ArcWorst&, const ArcWorst&) = default;
};

struct WorstCase {
    std::vector<ArcWorst> arcs;        // per arc
    friend bool operator==(const WorstCase&, const WorstCase&) = default;
};

/// Nothing if stopped.
std::optional<WorstCase> find_worst_case(const graph::Wiring&, const graph::NetworkGraph&, const VlanPaths&,
                                         const SpanningTrees&, const Forwarding&, const LinkLoads&, std::stop_token);

}  // namespace streamwright::analysis
