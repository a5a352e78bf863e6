#include "core/analysis/facts/twins.h"

namespace streamwright::analysis {

std::vector<int> twin_streams(const graph::Wiring& wiring) {
    const auto& streams = wiring.design.streams;
    std::vector<int> twins(streams.size(), -1);
    graph::IdIndex ids;
    ids.reserve(streams.size());
    bool any = false;
    for (const auto& row : streams) {
        ids.add(row.id.bits());
        any = any || row.twin;
    }
    if (!any) return twins;
    int index = -1;
    for (const auto& row : streams) {
        ++index;
        const auto named = row.twin ? ids.find(row.twin->bits()) : std::nullopt;
        if (!named || *named == index) continue;
        auto& own = twins[static_cast<std::size_t>(index)];
        auto& other = twins[static_cast<std::size_t>(*named)];
        if (own >= 0 || other >= 0) continue;
        own = *named;
        other = index;
    }
    return twins;
}

}  // namespace streamwright::analysis
