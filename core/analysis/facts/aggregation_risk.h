// Deferred. How streams fall on the members of aggregation groups: by the type's choice where all that it reads is
// known, else by chance. A group that is a third full as a whole may have one member overfull.
#pragma once

#include "core/analysis/facts/fit_chance.h"
#include "core/analysis/facts/worst_case.h"

#include <optional>
#include <stop_token>
#include <vector>

namespace streamwright::analysis {

/// The streams of one preset, or of the worst case, on one direction of a group.
struct GroupLoad {
    int preset = -1;                // index into LinkLoads::presets; -1: the worst case
    std::vector<base::Rate> loads;  // per member; empty where the choice is not known
    std::vector<int> streams;       // how many on each; likewise
    std::optional<FitChance> fits;  // where it is not known
    friend bool operator==(const GroupLoad&, const GroupLoad&) = default;

    /// Index of the fullest member; only where the choice is known.
    int fullest() const;
};

struct GroupRisk {
    int arc = 0;
    std::optional<GroupLoad> preset;  // of the presets the one with the fullest member, or with the least chance
    std::optional<GroupLoad> worst;
    friend bool operator==(const GroupRisk&, const GroupRisk&) = default;
};

/// Groups of at least two members of known speed; by arc.
struct AggregationRisk {
    std::vector<GroupRisk> groups;
    friend bool operator==(const AggregationRisk&, const AggregationRisk&) = default;
};

/// The member, counted from 0, that frames of the stream take out of this bridge: the last octets of the fields that
/// its type names, exclusive-or, modulo the members (common practice). Nothing where the type does not say or a field
/// is not known.
std::optional<int> member_of_stream(const graph::Wiring&, const graph::NetworkGraph&, int bridge,
                                    const model::Stream& stream, int members);

/// Nothing if stopped.
std::optional<AggregationRisk> find_aggregation_risk(const graph::Wiring&, const graph::NetworkGraph&,
                                                     const LinkCapacity&, const VlanPaths&, const Forwarding&,
                                                     const LinkLoads&, const WorstCase&, const std::stop_token&);

}  // namespace streamwright::analysis
