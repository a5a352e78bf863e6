#include "core/analysis/worst_case_under.h"

#include "core/model/stream_packets.h"

namespace streamwright::analysis {

namespace under_detail {

WorstCase worst(const Facts& facts, const Compatibility& compatibility, WorstFlow flow) {
    return *find_worst_case(facts.get<graph::Wiring>(), facts.get<graph::NetworkGraph>(), facts.get<VlanPaths>(),
                            facts.get<SpanningTrees>(), facts.get<Forwarding>(), facts.get<LinkLoads>(), compatibility,
                            {}, flow);
}

base::BitRate payload(const std::vector<const model::Stream*>& streams, const ArcWorst& worst) {
    base::BitRate sum;
    for (const auto* list : {&worst.unasked, &worst.routed})
        for (const int s : *list) sum = sum + model::payload_rate_of(*streams[static_cast<std::size_t>(s)]).ceil();
    return sum;
}

}  // namespace under_detail

std::vector<ArcUnderLimits> worst_case_under(const Facts& facts, const std::vector<DecoderLimit>& limits) {
    using under_detail::payload;
    const auto& wiring = facts.get<graph::Wiring>();
    const auto& design = wiring.design;
    const auto compatibility = limited_compatibility(wiring, limits);
    const auto forwarded = under_detail::worst(facts, compatibility, WorstFlow::forwarded);
    const auto paths = under_detail::worst(facts, compatibility, WorstFlow::paths_only);
    std::vector<const model::Stream*> streams;
    for (const auto& row : design.streams) streams.push_back(&row);
    std::vector<ArcUnderLimits> rows;
    for (std::size_t i = 0; i < forwarded.arcs.size(); ++i) {
        const auto ends =
            graph::arc_ends(wiring, facts.get<graph::Runs>(), facts.get<graph::NetworkGraph>(), static_cast<int>(i));
        ArcUnderLimits row{design.cables.find(ends.link)->tag,
                           design.devices.find(ends.from)->tag,
                           design.devices.find(ends.to)->tag,
                           payload(streams, forwarded.arcs[i]),
                           payload(streams, paths.arcs[i]),
                           forwarded.arcs[i].at_most,
                           {}};
        const auto& told = forwarded.arcs[i].witness.empty() ? paths.arcs[i].witness : forwarded.arcs[i].witness;
        for (const auto& each : told)
            row.witness.emplace_back(wiring.devices[static_cast<std::size_t>(each.decoder)].row->tag,
                                     streams[static_cast<std::size_t>(each.stream)]->tag);
        rows.push_back(std::move(row));
    }
    return rows;
}

}  // namespace streamwright::analysis
