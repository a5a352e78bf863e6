// The numbers behind what the analysis says of one row of the design, each chain closed by its sum or verdict: how long
// a cable may be, how full a link gets, how late a picture is and what is left of it, what power arrives. For whoever
// asks "why"; rules say only what is wrong.
#pragma once

#include "core/analysis/finding.h"
#include "core/analysis/limit_chain.h"

#include <string_view>
#include <vector>

namespace streamwright::analysis {

struct NumberChain {
    base::Text title;
    std::vector<LimitLine> lines;  // never empty
};

/// Chains of a device, cable, stream, subscription or port; none of what no number is reckoned for. The deferred facts
/// are told where they are known.
std::vector<NumberChain> number_chains(const Facts& facts, const Subject& subject);

/// What a person may mean: an id as files write it ("cable:0123456789ab"), a tag, a tag and a port's key or label
/// ("SW-M1 7"), the name of a preset or VLAN. Several where a tag is borne twice.
std::vector<Subject> subjects_named(const model::Design& design, std::string_view name);

}  // namespace streamwright::analysis
