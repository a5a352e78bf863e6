// A direction of a link that a preset fills beyond its capacity, or beyond the headroom that the design asks for.
#include "core/analysis/load_words.h"
#include "core/analysis/rule.h"

namespace streamwright::analysis::rules::link_overfull {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 from %2 to %3 carries %4 of %5 in preset %6: %7."),
    STREAMWRIGHT_TEXT("%1 from %2 to %3 carries %4 of %5 in preset %6: %7, above the headroom of %8.")};

constexpr standards::Citation sources[] = {
    {"IEEE", "802.3", "clause 4.4 (preamble, gap)"},
    {"IETF", "RFC 4541", "section 2.1 (streams go to members and to router ports)"},
    {"trade", "headroom", "share of a link that stays free", standards::Standing::practice}};

constexpr RuleWords words{.id = "link-overfull",
                          .revision = 2,  // told once a direction, no longer once a preset
                          .theme = Theme::links,
                          .title = "Direction overfull in a preset",
                          .meaning =
                              "Switches drop what does not fit, from every stream alike: all pictures on the link "
                              "break, not only the last one added.",
                          .measured =
                              "The streams that a preset sends over each direction of a link are added up as they "
                              "are on the wire, frame overhead included, and held against the link's capacity. Above"
                              " the headroom that the design asks for is a warning, above the capacity an error.",
                          .remedy =
                              "Use a faster link or a second one beside it, lower the rate of streams, or move "
                              "endpoints to the switch that sends most.",
                          .patterns = patterns,
                          .sources = sources};

/// One finding a direction, of the preset that fills it most: one link to mend, however many presets need it.
void judge(const LoadReader& r, const LinkLoads& loads, int arc, Findings& out) {
    const auto* fullest = fullest_preset(loads, arc);
    if (!fullest) return;
    const auto& preset = *fullest;
    const auto& load = preset.arcs[at(arc)];
    const auto& capacity = r.capacity.arcs[at(arc)];
    if (fill_of(load, capacity, r.wiring.design.settings().headroom_percent) == Fill::fits) return;
    const auto ends = graph::arc_ends(r.wiring, r.runs, r.network, arc);
    const int headroom = headroom_percent(r.wiring, ends, load.streams.size());
    const auto fill = fill_of(load.wire, capacity, headroom);
    if (fill == Fill::fits) return;
    if (too_fast_alone(r, arc, load.streams)) return;
    const bool over = fill == Fill::overfull;
    const base::Percent percent{base::percent_tenths(load.wire, *capacity)};
    std::vector<base::Value> values{named(ends.link), named(ends.from),     named(ends.to), load.wire.ceil(),
                                    *capacity,        named(preset.preset), percent};
    if (!over) values.emplace_back(base::Percent{headroom * 10});
    auto finding = found(words.id, over ? Severity::error : Severity::warning, {ends.link, ends.from, ends.to},
                         std::move(values), over ? 0 : 1);
    finding.measured = load.wire.ceil();
    finding.limit = *capacity;
    finding.terms = load_terms(r.wiring, r.network, r.paths, r.forwarding, arc, load.streams);
    if (auto more = other_presets(loads, arc, preset, *capacity, over ? 100 : headroom))
        finding.terms.push_back(std::move(*more));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::NetworkGraph& network,
           const LinkCapacity& capacity, const VlanPaths& paths, const Forwarding& forwarding, const LinkLoads& loads,
           Findings& out) {
    const LoadReader reader{wiring, runs, network, capacity, paths, forwarding};
    const auto chained = chained_links(network);  // chains have a rule of their own
    for (int arc = 0; arc < network.arc_count(); ++arc)
        if (!network.is_link_arc(arc) || !chained[at(arc / 2)]) judge(reader, loads, arc, out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::link_overfull
