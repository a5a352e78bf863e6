// Deferred. The greatest load of each arc over every routing that the decoders' inputs allow: the streams there with
// nothing routed, and the heaviest set of others that can be matched to distinct inputs beyond the arc.
// Tree form, exact where each VLAN's active topology is a tree, a querier with an address is heard, groups are all
// different, and each bridge either sends unknown groups to router ports, floods them, or does not snoop. Not yet
// exact: bridges that drop unknown groups (inputs behind an arc then load it toward router ports, and some matched
// streams never come), queriers without an address, several streams on one group. The general form takes this file's
// place.
#pragma once

#include "core/analysis/facts/link_load.h"

#include <optional>
#include <stop_token>
#include <vector>

namespace streamwright::analysis {

/// One (stream, decoder, input) of a routing that attains the worst case.
struct Routed {
    int stream = 0;
    int decoder = 0;  // device index
    int input = 0;    // index into the decoder type's inputs
    friend auto operator<=>(const Routed&, const Routed&) = default;
};

struct ArcWorst {
    base::Rate wire;              // unasked + routed
    std::vector<int> unasked;     // streams on the arc with nothing routed
    std::vector<int> routed;      // streams that routing adds, by falling rate
    std::vector<Routed> witness;  // a routing that attains it
    int inputs_beyond = 0;        // decoder inputs across the arc
    friend bool operator==(const ArcWorst&, const ArcWorst&) = default;
};

struct WorstCase {
    std::vector<ArcWorst> arcs;  // per arc
    friend bool operator==(const WorstCase&, const WorstCase&) = default;
};

/// Which decoder input can show which stream.
struct Compatibility {
    struct Slot {
        int device = 0, input = 0, kind = 0;
        friend bool operator==(const Slot&, const Slot&) = default;
    };
    std::vector<int> stream_kind;          // per stream
    std::vector<Slot> slots;               // by device, input
    std::vector<std::vector<bool>> takes;  // per slot kind, per stream kind
    friend bool operator==(const Compatibility&, const Compatibility&) = default;
};

/// By codec family and stream kind, for devices that may decode: those whose role it is, and the undecided ones that
/// send no stream.
Compatibility usual_compatibility(const graph::Wiring&);

/// Nothing if stopped.
std::optional<WorstCase> find_worst_case(const graph::Wiring&, const graph::NetworkGraph&, const VlanPaths&,
                                         const SpanningTrees&, const Forwarding&, const LinkLoads&,
                                         const Compatibility&, std::stop_token);
/// With the usual compatibility.
std::optional<WorstCase> find_worst_case(const graph::Wiring&, const graph::NetworkGraph&, const VlanPaths&,
                                         const SpanningTrees&, const Forwarding&, const LinkLoads&, std::stop_token);

}  // namespace streamwright::analysis
