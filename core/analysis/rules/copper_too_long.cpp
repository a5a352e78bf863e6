// Balanced copper: the channel reaches as far as speed and grade allow, its installed part 10 m less, and less still in
// warm ways.
#include "core/analysis/reach_help.h"
#include "core/analysis/rule.h"
#include "core/standards/copper_reach.h"

#include <algorithm>

namespace streamwright::analysis::rules::copper_too_long {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1: the channel from %2 to %3 is %4 long; %5 over %6 reaches %7."),
    STREAMWRIGHT_TEXT("%1: the installed part from %2 to %3 is %4 long; with %5 over %6 it may be %7."),
    STREAMWRIGHT_TEXT(
        "%1: the installed part from %2 to %3 is %4 long; at %8 it may be %7 by the stricter rule, %9 by the "
        "other."),
    STREAMWRIGHT_TEXT("%1: %5 is not defined over %6 (from %2 to %3)."),
    STREAMWRIGHT_TEXT("%1: %5 over %6 from %2 to %3 works at %4 only where neighbouring cables do not disturb it."),
    STREAMWRIGHT_TEXT("%1: the grade of the cable from %2 to %3 is not stated, so its reach at %5 is not known."),
    STREAMWRIGHT_TEXT(
        "%1: the way from %2 to %3 is at %7; no document says how far copper reaches above 60 degrees C.")};

constexpr standards::Citation sources[] = {{"IEEE", "802.3", "clauses 25, 40, 55, 113, 126"},
                                           {"ANSI/TIA", "568.2-D", "permanent link and channel"},
                                           {"ISO/IEC", "11801-1", "permanent link and channel"},
                                           {"ANSI/TIA", "568-C.2", "clause 6.4.7 (temperature)"}};

constexpr RuleWords words{.id = "copper-too-long",
                          .theme = Theme::cabling,
                          .title = "Copper link over its reach",
                          .meaning =
                              "The link drops to a lower speed, loses packets or stays dark, often only when "
                              "the ceiling is warm.",
                          .measured =
                              "Installed part and leads are added up from port to port, through panels and outlets. "
                              "They are held against the reach of the link's speed over the lowest grade on the way:"
                              " 100 m for the whole channel and 90 m for its installed part where the standard gives"
                              " the full reach, less in warm ways. Which of three published rules shortens warm cable"
                              " is a setting of the design; where none is named, a length between them is a warning."
                              " The rise of a bundle of powered cables, another setting, counts on cables that carry"
                              " PoE.",
                          .remedy =
                              "Shorten the way, move a switch nearer, pull a better grade where one reaches, or use "
                              "fibre.",
                          .offers = "Pull a better grade of cable where one reaches that far.",
                          .patterns = patterns,
                          .sources = sources};

/// A run under judgement. Names are made only once there is something to say.
struct Link {
    const graph::Wiring* wiring;
    const graph::Run* run;
    base::BitRate rate;
    std::string grade;
};

Finding about(const Link& link, Severity severity, const std::optional<base::Length>& have,
              std::vector<base::Value> more, int variant) {
    const auto cable = cable_id(*link.wiring, link.run->cables.front());
    std::vector<base::Value> values{named(cable),
                                    port_ref(*link.wiring, *link.run->a),
                                    port_ref(*link.wiring, *link.run->b),
                                    have.value_or(base::Length{}),
                                    link.rate,
                                    link.grade};
    values.insert(values.end(), more.begin(), more.end());
    auto finding = found(words.id, severity, {cable}, std::move(values), variant);
    if (have) finding.measured = *have;
    return finding;
}

base::Text over(base::Length have, base::Length most) {
    return line(STREAMWRIGHT_TEXT("%1 - %2 = %3 too long"), {have, most, have - most});
}

base::Text channel_sum(const RunLength& length, base::Length most) {
    if (length.permanent && length.leads)
        return line(STREAMWRIGHT_TEXT("installed %1 + leads %2 = %3"),
                    {*length.permanent, *length.leads, *length.channel});
    return over(*length.channel, most);
}

base::Text warm_limit(base::Length cool, base::Length warm, base::Temperature warmth, standards::DeratingRule by) {
    return line(STREAMWRIGHT_TEXT("%1 at 20 degrees C, %2 at %3 by %4"), {cool, warm, warmth, rule_words(by)});
}

/// What the heat took from the limit, by which rule, and what makes the way so warm.
void add_heat(std::vector<base::Text>& terms, const CopperLimits& limits, const CableWarmth& warmth, bool both) {
    if (limits.lenient == limits.full && limits.strict == limits.full) return;
    if (both) terms.push_back(warm_limit(limits.full, limits.strict, warmth.total(), limits.strict_rule));
    terms.push_back(warm_limit(limits.full, limits.lenient, warmth.total(), limits.lenient_rule));
    if (warmth.rise.count() > 0)
        terms.push_back(line(STREAMWRIGHT_TEXT("way %1 + bundle of powered cables %2 = %3"),
                             {warmth.way, warmth.rise, warmth.total()}));
}

std::optional<Finding> judge_lengths(const Link& link, const RunLength& length, const CopperLimits& limits,
                                     const CableWarmth& warmth) {
    // Warm cable takes from the cords' share as well.
    const auto channel = limits.channel - (limits.full - limits.lenient);
    if (length.permanent && *length.permanent > limits.lenient) {
        auto finding = about(link, Severity::error, length.permanent, {limits.lenient}, 1);
        finding.limit = limits.lenient;
        finding.terms.push_back(over(*length.permanent, limits.lenient));
        add_heat(finding.terms, limits, warmth, false);
        return finding;
    }
    if (length.channel && *length.channel > channel) {
        auto finding = about(link, Severity::error, length.channel, {channel}, 0);
        finding.limit = channel;
        finding.terms.push_back(channel_sum(length, channel));
        add_heat(finding.terms, limits, warmth, false);
        return finding;
    }
    if (length.permanent && *length.permanent > limits.strict) {
        auto finding =
            about(link, Severity::warning, length.permanent, {limits.strict, warmth.total(), limits.lenient}, 2);
        finding.limit = limits.strict;
        finding.terms.push_back(over(*length.permanent, limits.strict));
        add_heat(finding.terms, limits, warmth, true);
        return finding;
    }
    return std::nullopt;
}

std::optional<Finding> verdict(const graph::Wiring& wiring, const graph::Run& run, const Link& link,
                               const CopperRun& copper, const RunLength& length) {
    if (!copper.grade) return about(link, Severity::advice, length.channel, {}, 5);
    const auto* reach = standards::copper_reach(link.rate, *copper.grade);
    if (!reach || reach->support == standards::Support::none)
        return about(link, Severity::error, length.channel, {}, 3);
    const auto warmth = cable_warmth(wiring, run);
    const auto limits = copper_limits(wiring.design.settings().cabling, *reach, warmth.total(), copper.screened);
    if (!limits) return about(link, Severity::advice, length.channel, {warmth.total()}, 6);
    auto finding = judge_lengths(link, length, *limits, warmth);
    if (!finding && reach->support == standards::Support::conditional && length.channel)
        finding = about(link, Severity::warning, length.channel, {}, 4);
    return finding;
}

void judge(const graph::Wiring& wiring, const graph::Run& run, const std::optional<CopperRun>& copper,
           base::BitRate rate, const RunLength& length, Findings& out) {
    using namespace base::literals;
    if (!copper || rate < 100_Mbps) return;  // slower speeds run over anything
    const Link link{&wiring, &run, rate, copper->name};
    auto finding = verdict(wiring, run, link, *copper, length);
    if (!finding) return;
    if (finding->severity != Severity::advice)
        if (auto remedy = better_copper(wiring, run, rate, length)) finding->remedies.push_back(std::move(*remedy));
    out.push_back(std::move(*finding));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const LinkCapacity& capacity,
           const CableLengths& lengths, Findings& out) {
    graph::ByKind<std::optional<CopperRun>> coppers(runs);
    for (std::size_t i = 0; i < runs.list.size() && i < capacity.runs.size(); ++i) {
        if (!runs.list[i].a || !runs.list[i].b || !capacity.runs[i].rate) continue;
        const auto& copper = coppers.of(i, [&](const graph::Run& run) { return copper_of(wiring, run); });
        judge(wiring, runs.list[i], copper, *capacity.runs[i].rate, lengths.runs[i], out);
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::copper_too_long
