// Fibre reaches as far as its transceivers and its grade allow together, and some transceivers need a least length.
#include "core/analysis/reach_help.h"
#include "core/analysis/rule.h"

namespace streamwright::analysis::rules::fibre_too_long {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1: %2 from %3 to %4 is %5 long; over %6 it reaches %7."),
    STREAMWRIGHT_TEXT("%1: %2 from %3 to %4 is %5 long; over %6 it needs %7 at least."),
    STREAMWRIGHT_TEXT("%1: %2 from %3 to %4 is not defined over %6."),
    STREAMWRIGHT_TEXT("%1: the grade of the fibre from %3 to %4 is not stated, so the reach of %2 is not known."),
    STREAMWRIGHT_TEXT("%1: no published reach is known for %2 (from %3 to %4).")};

constexpr standards::Citation sources[] = {{"IEEE", "802.3", "clauses 38, 52, 59, 68, 86 to 88, 95, 112, 114"}};

constexpr RuleWords words{.id = "fibre-too-long",
                          .theme = Theme::cabling,
                          .title = "Fibre link over its reach",
                          .meaning =
                              "Bits get lost as the pulses smear and fade: the link drops out, or never comes up. Old "
                              "fibre that ran 1 Gb/s for years may not do 10 Gb/s.",
                          .measured =
                              "The length from transceiver to transceiver against the published reach of that "
                              "physical layer over the lowest grade of fibre on the way, and against its least "
                              "length.",
                          .remedy =
                              "Take transceivers that reach farther, a better grade of fibre, or a shorter way. Too "
                              "short a way needs an attenuator.",
                          .offers = "Pull a better grade of fibre where one reaches that far.",
                          .patterns = patterns,
                          .sources = sources};

/// A run under judgement. Names are made only once there is something to say.
struct Link {
    const graph::Wiring* wiring;
    const graph::Run* run;
    std::string phy, grade;
};

Finding about(const Link& link, Severity severity, const std::optional<base::Length>& have,
              const std::optional<base::Length>& limit, int variant) {
    const auto cable = cable_id(*link.wiring, link.run->cables.front());
    std::vector<base::Value> values{named(cable),
                                    link.phy,
                                    port_ref(*link.wiring, *link.run->a),
                                    port_ref(*link.wiring, *link.run->b),
                                    have.value_or(base::Length{}),
                                    link.grade};
    if (limit) values.emplace_back(*limit);
    auto finding = found(words.id, severity, {cable}, std::move(values), variant);
    if (have) finding.measured = *have;
    if (limit) finding.limit = *limit;
    return finding;
}

void judge(const graph::Wiring& wiring, const graph::Run& run, const std::string& phy, const RunLength& length,
           Findings& out) {
    const auto fibre = fibre_of(wiring, run);
    if (!fibre || phy.empty()) return;
    const Link link{&wiring, &run, phy, fibre->name};
    const auto& have = length.channel;
    if (!fibre->grade) return out.push_back(about(link, Severity::advice, have, {}, 3));
    if (!standards::is_fibre_phy(phy)) return out.push_back(about(link, Severity::advice, have, {}, 4));
    const auto* reach = standards::fibre_reach(phy, *fibre->grade);
    if (reach && (!have || (reach->least <= *have && *have <= reach->most))) return;
    auto finding = about(link, Severity::error, have, {}, 2);
    if (reach) {
        const bool over = *have > reach->most;
        finding = about(link, over ? Severity::error : Severity::warning, have, over ? reach->most : reach->least,
                        over ? 0 : 1);
        finding.terms.push_back(line(STREAMWRIGHT_TEXT("%1 over %2: %3 to %4 (%5)"),
                                     {phy, fibre->name, reach->least, reach->most, reach->source.text()}));
        finding.terms.push_back(
            over ? line(STREAMWRIGHT_TEXT("%1 - %2 = %3 too long"), {*have, reach->most, *have - reach->most})
                 : line(STREAMWRIGHT_TEXT("%1 - %2 = %3 too short"), {reach->least, *have, reach->least - *have}));
    }
    if (!reach || *have > reach->most)
        if (auto remedy = better_fibre(wiring, run, phy, length)) finding.remedies.push_back(std::move(*remedy));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const LinkCapacity& capacity,
           const CableLengths& lengths, Findings& out) {
    for (std::size_t i = 0; i < runs.list.size() && i < capacity.runs.size(); ++i)
        if (runs.list[i].a && runs.list[i].b && capacity.runs[i].rate)
            judge(wiring, runs.list[i], capacity.runs[i].phy, lengths.runs[i], out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::fibre_too_long
