// The worst case of an analysed design under limits of one's own, beside what it would be without flow toward router
// ports; by tags, for planning and for comparing with other models.
#pragma once

#include "core/analysis/facts_set.h"

#include <string>
#include <utility>
#include <vector>

namespace streamwright::analysis {

/// One direction of a link. Rates are of payload.
struct ArcUnderLimits {
    std::string link, from, to;
    base::BitRate forwarded, paths_only;  // as forwarded; source-to-receiver paths alone
    bool at_most = false;                 // `forwarded` is what the witness reaches; the worst may be greater
    /// Decoder and stream: a routing that reaches `forwarded`; where nothing need be routed for it, one for the paths.
    std::vector<std::pair<std::string, std::string>> witness;
};

std::vector<ArcUnderLimits> worst_case_under(const Facts& facts, const std::vector<DecoderLimit>& limits);

}  // namespace streamwright::analysis
