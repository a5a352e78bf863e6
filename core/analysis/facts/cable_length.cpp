#include "core/analysis/facts/cable_length.h"

namespace streamwright::analysis {

namespace cable_length_detail {

CableLength length_of(const graph::WiredCable& cable) {
    if (cable.row->length) return {cable.row->length, LengthFrom::typed};
    if (cable.type && cable.type->made_length) return {cable.type->made_length, LengthFrom::made};
    return {};
}

void add(std::optional<base::Length>& sum, const std::optional<base::Length>& part) {
    if (sum && part)
        *sum += *part;
    else
        sum.reset();
}

/// A cable whose type is not known counts as installed: the stricter limit.
bool is_lead(const graph::WiredCable& cable) { return cable.type && cable.type->use == catalogue::CableUse::lead; }

RunLength run_length(const graph::Wiring& wiring, const std::vector<CableLength>& cables, const graph::Run& run) {
    const auto zero = std::optional<base::Length>(base::Length{});
    RunLength length{zero, zero, zero};
    bool installed = false;
    for (const int index : run.cables) {
        const auto at = static_cast<std::size_t>(index);
        const bool lead = is_lead(wiring.cables[at]);
        add(length.channel, cables[at].length);
        add(lead ? length.leads : length.permanent, cables[at].length);
        installed = installed || !lead;
    }
    if (!installed) length.permanent.reset();
    return length;
}

}  // namespace cable_length_detail

CableLengths find_cable_lengths(const graph::Wiring& wiring, const graph::Runs& runs) {
    CableLengths lengths;
    lengths.cables.reserve(wiring.cables.size());
    for (const auto& cable : wiring.cables) lengths.cables.push_back(cable_length_detail::length_of(cable));
    lengths.runs.reserve(runs.list.size());
    for (const auto& run : runs.list)
        lengths.runs.push_back(cable_length_detail::run_length(wiring, lengths.cables, run));
    return lengths;
}

}  // namespace streamwright::analysis
