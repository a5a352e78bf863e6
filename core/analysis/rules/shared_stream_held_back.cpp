// One stream carries one format: where its EDID follows the weakest display, all others get no more than that one.
#include "core/analysis/picture_help.h"
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>
#include <map>

namespace streamwright::analysis::rules::shared_stream_held_back {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 takes no more than %2 and so holds back %3: %4 gets %5, where it could have %6.")};

constexpr RuleWords words{
    .id = "shared-stream-held-back",
    .severity = Severity::warning,
    .theme = Theme::signals,
    .title = "Shared stream held back by its weakest display",
    .meaning =
        "One small monitor in a back room makes the large screens of the hall show less than they can, and "
        "nobody remembers why.",
    .measured =
        "Where the EDID before an encoder is merged from the displays behind it, or copied from one of them: "
        "what the source sends therefore, against what it would send to each of the others alone.",
    .remedy =
        "Give the weakest display a decoder that scales, or a second stream of its own, and fix the EDID to the "
        "format that the others take; or accept it.",
    .patterns = patterns,
    .no_source = "Follows from one stream having one format."};

/// The displays of one stream.
using Members = std::vector<const PictureArrival*>;

const PictureArrival* weakest(const Members& members) {
    return *std::ranges::min_element(members, {}, [](const auto* each) { return *each->best; });
}

/// Whom it holds back: the displays that get less than they could, best first.
Members held_back(const Members& members, const PictureArrival* by) {
    Members held;
    for (const auto* each : members)
        if (each->left && *each->left<*each->best&& * each->best> * by->best) held.push_back(each);
    std::ranges::stable_sort(held, [](const auto* a, const auto* b) { return *a->best > *b->best; });
    return held;
}

bool shares_edid(const graph::Wiring& wiring, graph::PortAt in) {
    const auto* set = wiring.port_override(in);
    return set && set->edid && set->edid->way != model::EdidWay::fixed;
}

void judge(const graph::Wiring& wiring, const FormatSpace& space, const PictureOrigin& origin, int stream,
           const Members& members, Findings& out) {
    const auto* weak = weakest(members);
    const auto held = held_back(members, weak);
    if (held.empty()) return;
    const auto id = wiring.streams[at(stream)].row->id;
    const auto text = [&](int number) { return standards::text(space.format(number)); };
    auto finding =
        found(words.id, Severity::warning, {id, port_subject(wiring, origin.out), port_subject(wiring, weak->at)},
              {port_ref(wiring, weak->at), text(*weak->best), named(id), port_ref(wiring, held.front()->at),
               text(*held.front()->left), text(*held.front()->best)});
    for (const auto* each : held)
        finding.terms.push_back(line(STREAMWRIGHT_TEXT("%1: %2 instead of %3"),
                                     {port_ref(wiring, each->at), text(*each->left), text(*each->best)}));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::SignalGraph& signals, const VideoChains& chains, Findings& out) {
    for (const auto& origin : chains.origins) {
        if (origin.because != SentBecause::announced || !shares_edid(wiring, signals.hops[at(origin.hop)].to)) continue;
        std::map<int, Members> streams;
        for (const auto& arrival : origin.arrivals)
            if (arrival.stream >= 0 && arrival.shows && arrival.best) streams[arrival.stream].push_back(&arrival);
        for (const auto& [stream, members] : streams) judge(wiring, chains.space, origin, stream, members, out);
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::shared_stream_held_back
