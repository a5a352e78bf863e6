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

/// The picture streams that a decoder beyond the arc of a link is shown in the preset and that put something on the
/// arc: themselves, a twin, another of their group. By index; twins count as one.
std::vector<int> sources_across(const graph::Wiring&, const graph::NetworkGraph&, const VlanPaths&,
                                const SpanningTrees&, const Forwarding&, const PresetLoad&, int arc);
/// How many pictures may be routed over which arcs: both directions of each link with an agreement.
AgreedPictures agreed_pictures(const graph::Wiring&, const graph::Runs&, const graph::NetworkGraph&);

}  // namespace streamwright::analysis
