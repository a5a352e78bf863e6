// What a port gives is not what arrives: a long, thin or warm cable keeps more than the class allows for.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/standards/poe.h"

namespace streamwright::analysis::rules::poe_too_little_arrives {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 draws %2, but of the %3 that %4 gives for class %5 only %6 arrive over %7 of cable.")};

constexpr standards::Citation sources[] = {
    {"IEEE", "802.3", "clauses 33 and 145 (class power, supply voltage, channel resistance)"},
    {"ASTM", "B258", "diameters of gauges; annealed copper, 0.393 % more per degree", standards::Standing::computed}};

constexpr RuleWords words{.id = "poe-too-little-arrives",
                          .theme = Theme::power,
                          .title = "Too little power arrives over the cable",
                          .meaning =
                              "The device starts and falls over under load, in summer first. The missing watts heat "
                              "the cable: local electrical codes limit bundles and come before this check.",
                          .measured =
                              "From the least voltage of the supply the power of the class less the heat in the "
                              "cable's loop against what the device draws. The loop follows from gauge, length, pairs "
                              "and warmth where every cable states its gauge, else from what IEEE 802.3 assumes for "
                              "the length.",
                          .remedy = "Shorten the way, use thicker conductors, or give the device its own supply.",
                          .patterns = patterns,
                          .sources = sources};

std::string ohms(std::int64_t microohm) { return base::print_decimal((microohm + 5'000) / 10'000, 2); }

std::vector<base::Text> terms_of(const PoeFeed& feed, base::Power given) {
    std::vector<base::Text> terms;
    if (feed.cable.by_gauge)
        terms.push_back(line(STREAMWRIGHT_TEXT("loop of %1 at %2: %3 ohm"),
                             {feed.cable.length, feed.cable.warmth, ohms(feed.cable.microohm)}));
    else
        terms.push_back(line(STREAMWRIGHT_TEXT("loop of %1 as IEEE 802.3 assumes: %2 ohm"),
                             {feed.cable.length, ohms(feed.cable.microohm)}));
    terms.push_back(line(STREAMWRIGHT_TEXT("%1 at %2 V - heat in the cable %3 = %4"),
                         {given, base::print_decimal(feed.supply_mv, 3), given - feed.arriving, feed.arriving}));
    terms.push_back(
        line(STREAMWRIGHT_TEXT("%1 - %2 = %3 too little"), {feed.drawn, feed.arriving, feed.drawn - feed.arriving}));
    return terms;
}

/// The table rounds what it says of 100 m of cable by less than a tenth of a watt; so much is no fault.
constexpr base::Power rounding = base::Power::from_count(100);

void check(const graph::Wiring& wiring, const PowerBudget& power, Findings& out) {
    for (const auto& feed : power.feeds) {
        if (feed.granted_class != feed.wanted_class || feed.drawn <= feed.arriving + rounding) continue;
        const auto given = standards::poe_class(feed.granted_class)->at_supply;
        auto finding =
            found(words.id, Severity::error, {port_subject(wiring, feed.device), port_subject(wiring, feed.supply)},
                  {port_ref(wiring, feed.device), feed.drawn, given, port_ref(wiring, feed.supply),
                   std::int64_t{feed.granted_class}, feed.arriving, feed.cable.length});
        finding.measured = feed.drawn;
        finding.limit = feed.arriving;
        finding.terms = terms_of(feed, given);
        out.push_back(std::move(finding));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::poe_too_little_arrives
