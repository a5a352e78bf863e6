#include "core/analysis/facts/video_chain.h"

#include "core/analysis/facts/picture_ways.h"

namespace streamwright::analysis {

namespace video_chain_detail {

void choose_sent(PictureWays& ways, PictureOrigin& origin) {
    const auto& wiring = ways.wiring();
    const auto* set = wiring.port_override(origin.out);
    if (set && set->picture) {
        origin.because = SentBecause::set;
        origin.sent = ways.space().number(*set->picture);
        return;
    }
    if (!wiring.port_type(origin.out).picture) return;
    const auto& before = ways.node(ways.node_at(ways.signals().hops[static_cast<std::size_t>(origin.hop)].to));
    origin.sent =
        best_of(ways.sets().set(ways.sets().both(ways.sets().of_port(wiring.port_type(origin.out)), before.announced)));
    origin.because = origin.sent ? SentBecause::announced : SentBecause::nothing_common;
}

PictureOrigin origin_of(PictureWays& ways, int hop) {
    PictureOrigin origin{ways.signals().hops[static_cast<std::size_t>(hop)].from, hop, SentBecause::not_known, {}, {}};
    choose_sent(ways, origin);
    for (const auto& end : ways.ends_by(hop)) {
        PictureArrival arrival{end.at, end.stream, end.decoder, end.shows, {}, {}, {}, end.silent};
        if (origin.sent) {
            const int left = ways.sets().table(end.left)[static_cast<std::size_t>(*origin.sent)];
            if (left >= 0) arrival.left = left;
        }
        if (const auto& best = ways.sets().best(end.left); best.left >= 0) {
            arrival.best = best.left;
            arrival.best_by = best.entering;
        }
        origin.arrivals.push_back(arrival);
    }
    return origin;
}

}  // namespace video_chain_detail

VideoChains find_video_chains(const graph::Wiring& wiring, const graph::Runs& runs, const graph::SignalGraph& signals,
                              const VideoChains& before) {
    auto again = find_video_chains_again(wiring, runs, signals, before);
    if (again) return std::move(*again);
    return before;
}

std::optional<VideoChains> find_video_chains_again(const graph::Wiring& wiring, const graph::Runs& runs,
                                                   const graph::SignalGraph& signals, const VideoChains& before) {
    const auto inputs = std::make_shared<const PictureInputs>(picture_inputs(wiring, runs, signals));
    if (before.of && *before.of == *inputs) return std::nullopt;
    auto space = formats_named(wiring);
    const bool same = space == before.space;
    PictureWays ways(wiring, runs, signals, std::move(space), same ? before.links : LinkSets{}, inputs->sent);
    VideoChains chains;
    chains.of = inputs;
    for (int hop = 0; hop < static_cast<int>(signals.hops.size()); ++hop) {
        const auto from = signals.hops[static_cast<std::size_t>(hop)].from;
        const auto* type = wiring.devices[static_cast<std::size_t>(from.device)].type;
        if (type && begins_pictures(*type, wiring.port_type(from)))
            chains.origins.push_back(video_chain_detail::origin_of(ways, hop));
    }
    chains.space = ways.space();
    chains.links = ways.sets().links();
    return chains;
}

}  // namespace streamwright::analysis
