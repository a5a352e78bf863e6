// What has been agreed for a link: how many different sources may cross it at once. A source is a picture stream that
// somebody beyond the link is shown; sound, USB and control that go with it, and what flows unasked, are not limited.
#pragma once

#include "core/analysis/facts/worst_case.h"

#include <optional>
#include <string>
#include <vector>

namespace streamwright::analysis {

/// Of the cables of the link the least number agreed; nothing where no cable bears an agreement.
struct Agreement {
    int link = 0;
    model::CableId cable;  // that bears it
    model::AgreedContention agreed;
};
std::vector<Agreement> find_agreements(const graph::Wiring&, const graph::Runs&, const graph::NetworkGraph&);
/// "IT, 2026-11-20".
std::string by_whom(const model::AgreedContention&);

/// The picture streams on the arc of a link that a decoder beyond it is shown in the preset, by index.
std::vector<int> sources_across(const graph::Wiring&, const graph::NetworkGraph&, const VlanPaths&,
                                const SpanningTrees&, const Forwarding&, const PresetLoad&, int arc);

/// The worst case of an arc within an agreement: all that is there unasked, everything but pictures, and the heaviest
/// of the pictures that could be routed, as many as agreed. Exact: sets that can be routed are a matroid, and of one of
/// those the best set of n is the first n that the greedy choice takes.
struct WithinAgreement {
    std::vector<int> unasked, routed;  // streams
    base::Rate wire;
};
WithinAgreement within_agreement(const graph::Wiring&, const graph::NetworkGraph&, const VlanPaths&, const Forwarding&,
                                 const ArcWorst&, int arc, const model::AgreedContention&);

}  // namespace streamwright::analysis
