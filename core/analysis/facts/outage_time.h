// How long pictures that come back after a failure are gone: the spanning tree opens another way, then the bridges of
// that way must hear who wants what, at the latest with the next query.
#pragma once

#include "core/analysis/facts/load_memory.h"

#include <optional>
#include <vector>

namespace streamwright::analysis {

/// From the first picture that can be back to when the last one is.
struct TimeRange {
    base::Duration from, to;
    friend bool operator==(const TimeRange&, const TimeRange&) = default;
};

/// How the tree of a VLAN takes the failure.
struct TreeChange {
    std::vector<int> opened;         // links that were blocked and forward now
    std::optional<TimeRange> takes;  // none: a type does not state whether its tree is rapid
    friend bool operator==(const TreeChange&, const TreeChange&) = default;
};
TreeChange tree_change(const WholeNetwork& whole, const LostState& state, VlanIndex vlan);

/// Nothing where the time is not known; pictures that came no other way have none.
std::optional<TimeRange> time_until_back(const WholeNetwork& whole, const LostState& state,
                                         const std::vector<MovedPicture>& moved);

}  // namespace streamwright::analysis
