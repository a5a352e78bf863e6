// A direction that some allowed routing overfills, though no preset does: the operator finds it one evening.
#include "core/analysis/agreed_contention.h"
#include "core/analysis/load_words.h"
#include "core/analysis/rule.h"

#include <algorithm>
#include <set>

namespace streamwright::analysis::rules::link_overfull_worst_case {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT(
        "%1 from %2 to %3 may have to carry %4 of %5: %6. %7 streams reach it unasked, %8 more by routing."),
    STREAMWRIGHT_TEXT("%1 from %2 to %3 may have to carry %4 of %5: %6, above the headroom of %9. %7 streams reach it "
                      "unasked, %8 more by routing."),
    STREAMWRIGHT_TEXT(
        "%1 from %2 to %3 may have to carry at most %4 of %5: %6. %7 streams reach it unasked, %8 more by "
        "the fullest routing that was found.")};

constexpr standards::Citation sources[] = {
    {"IETF", "RFC 4541", "section 2.1 (streams go to members and to router ports)"},
    {"trade", "worst case", "every routing that the decoder inputs allow", standards::Standing::practice}};

constexpr RuleWords words{.id = "link-overfull-worst-case",
                          .theme = Theme::links,
                          .title = "Direction overfull in the worst case",
                          .meaning =
                              "Presets fit, but some other choice of sources does not: all pictures on the link"
                              " break when it is made.",
                          .measured =
                              "The most that any choice of sources can send over each direction: streams that arrive"
                              " unasked, and the greatest others that the inputs beyond could ask for. Above the "
                              "headroom is a warning, above the capacity an error; a figure that is only a bound "
                              "(in loops) is a warning.",
                          .remedy =
                              "Enlarge the link, or agree on how many different sources may be shown beyond it at "
                              "once.",
                          .offers = "Make the routing that fills it a preset, to look at it and to show it.",
                          .patterns = patterns,
                          .sources = sources};

/// The gravest that any preset already says of this direction.
Fill known_from_presets(const LoadReader& r, const LinkLoads& loads, int arc, int headroom) {
    auto gravest = Fill::fits;
    for (const auto& preset : loads.presets)
        gravest = std::max(gravest, fill_of(preset.arcs[at(arc)], r.capacity.arcs[at(arc)], headroom));
    return gravest;
}

std::vector<base::Text> terms_of(const LoadReader& r, int arc, const ArcWorst& worst) {
    auto terms = load_terms(r.wiring, r.network, r.paths, r.forwarding, arc, worst.unasked);
    for (auto& each : load_terms(r.wiring, r.network, r.paths, r.forwarding, arc, worst.routed))
        terms.push_back(std::move(each));
    return terms;
}

/// Who shows what, so that the reader can try it: "these 3 sources to these 3 inputs".
base::Text routing_of(const LoadReader& r, const ArcWorst& worst) {
    if (worst.witness.empty())
        return line(
            STREAMWRIGHT_TEXT("Routing nothing is enough: all of them arrive unasked, and no routing adds to them"),
            {});
    const auto streams = streams_by_index(r.wiring);
    std::vector<base::Ref> shown, decoders;
    for (const auto& each : worst.witness) {
        shown.push_back(named(streams[at(each.stream)]->id));
        decoders.push_back(named(device_id(r.wiring, each.decoder)));
    }
    return line(STREAMWRIGHT_TEXT("A routing that does it: these %1 sources (%2), in this order, to %3"),
                {static_cast<std::int64_t>(worst.witness.size()), std::move(shown), std::move(decoders)});
}

/// A rule has no source of fresh ids, and the same finding must offer the same edit again: the preset takes its bits
/// from link and direction, and each subscription from the preset and its place.
Remedy make_preset(const LoadReader& r, const graph::ArcEnds& ends, const ArcWorst& worst) {
    const auto streams = streams_by_index(r.wiring);
    auto preset = model::Preset::blank(model::PresetId(ends.link.bits() ^ ends.from.bits()));
    for (const auto& row : r.wiring.design.presets) preset.number = std::max(preset.number, row.number + 1);
    preset.name = "Worst case " + std::to_string(preset.number);
    model::AddRows edit{{preset}};
    for (const auto& each : worst.witness) {
        const auto& device = r.wiring.devices[at(each.decoder)];
        edit.rows.push_back(model::Subscription{model::SubscriptionId(preset.id.bits() + edit.rows.size()),
                                                preset.id,
                                                streams[at(each.stream)]->id,
                                                device.row->id,
                                                device.type->codec->inputs[at(each.input)].key,
                                                {}});
    }
    return {line(STREAMWRIGHT_TEXT("Make the routing that fills %1 a preset"), {named(ends.link)}), std::move(edit)};
}

void judge(const LoadReader& r, const LinkLoads& loads, int arc, const ArcWorst& worst, Findings& out) {
    const auto& capacity = r.capacity.arcs[at(arc)];
    if (fill_of(worst.wire, capacity, r.wiring.design.settings().headroom_percent) == Fill::fits) return;
    const auto ends = graph::arc_ends(r.wiring, r.runs, r.network, arc);
    const int headroom = headroom_percent(r.wiring, ends, worst.unasked.size() + worst.routed.size());
    const auto fill = fill_of(worst.wire, capacity, headroom);
    if (fill == Fill::fits || fill <= known_from_presets(r, loads, arc, headroom)) return;
    auto streams = worst.unasked;
    streams.insert(streams.end(), worst.routed.begin(), worst.routed.end());
    if (too_fast_alone(r, arc, streams)) return;
    const bool over = fill == Fill::overfull && !worst.at_most;
    auto finding = found(
        words.id, over ? Severity::error : Severity::warning, {ends.link, ends.from, ends.to},
        {named(ends.link), named(ends.from), named(ends.to), worst.wire.ceil(), *capacity,
         base::Percent{base::percent_tenths(worst.wire, *capacity)}, static_cast<std::int64_t>(worst.unasked.size()),
         static_cast<std::int64_t>(worst.routed.size()), base::Percent{headroom * 10}},
        worst.at_most ? 2
        : over        ? 0
                      : 1);
    finding.measured = worst.wire.ceil();
    finding.limit = *capacity;
    finding.terms = terms_of(r, arc, worst);
    finding.terms.push_back(routing_of(r, worst));
    if (!worst.witness.empty()) finding.remedies.push_back(make_preset(r, ends, worst));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::NetworkGraph& network,
           const LinkCapacity& capacity, const VlanPaths& paths, const Forwarding& forwarding, const LinkLoads& loads,
           const WorstCase& worst, Findings& out) {
    const LoadReader reader{wiring, runs, network, capacity, paths, forwarding};
    std::set<int> agreed;  // links whose sources people limit: rules of their own
    for (const auto& agreement : find_agreements(wiring, runs, network)) agreed.insert(agreement.link);
    for (int arc = 0; arc < static_cast<int>(worst.arcs.size()); ++arc)
        if (!network.is_link_arc(arc) || !agreed.count(arc / 2)) judge(reader, loads, arc, worst.arcs[at(arc)], out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::link_overfull_worst_case
