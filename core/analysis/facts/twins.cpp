#include "core/analysis/facts/twins.h"

namespace streamwright::analysis {

std::vector<int> twin_streams(const graph::Wiring& wiring) {
    const auto& streams = wiring.design.streams;
    std::vector<int> twins(streams.size(), -1);
    int index = -1;
    for (const auto& row : streams) {
        ++index;
        const auto named = row.twin ? wiring.stream_index(*row.twin) : std::nullopt;
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
