// A preset that shows more different sources across a link than people have agreed. What was bought rests on that
// number, so it is held even where this preset still fits.
#include "core/analysis/agreed_contention.h"
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

namespace streamwright::analysis::rules::agreed_sources_exceeded {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT(
        "Preset %4 shows %5 different sources over %1 from %2 to %3, more than the number agreed, %6 (%7)."),
    STREAMWRIGHT_TEXT(
        "Preset %4 shows %5 different sources over %1 from %2 to %3, close to the number agreed, %6 (%7).")};

constexpr standards::Citation sources[] = {
    {"trade", "agreed contention", "how many sources may cross at once", standards::Standing::practice}};

constexpr RuleWords words{
    .id = "agreed-sources-exceeded",
    .theme = Theme::links,
    .title = "More sources across a link than agreed",
    .meaning = "The link was chosen for the number agreed; whoever operates the room may now overfill it.",
    .measured =
        "For each preset and direction of a link with an agreement the different picture streams on it that a decoder "
        "beyond is shown. More than agreed is an error; above the headroom of that number a warning.",
    .remedy =
        "Show fewer different sources there in that preset, or agree on another number and check the link for it.",
    .patterns = patterns,
    .sources = sources};

struct Reader {
    const graph::Wiring& wiring;
    const graph::Runs& runs;
    const graph::NetworkGraph& network;
    const VlanPaths& paths;
    const SpanningTrees& trees;
    const Forwarding& forwarding;
    const LinkLoads& loads;
};

/// The preset with most sources speaks for all.
void judge(const Reader& r, const Agreement& agreement, int arc, Findings& out) {
    std::vector<int> most;
    const PresetLoad* where = nullptr;
    for (const auto& preset : r.loads.presets) {
        auto across = sources_across(r.wiring, r.network, r.paths, r.trees, r.forwarding, preset, arc);
        if (where && across.size() <= most.size()) continue;
        most = std::move(across);
        where = &preset;
    }
    const std::int64_t count = static_cast<std::int64_t>(most.size()), agreed = agreement.agreed.sources;
    if (count == 0 || count * 100 <= agreed * r.wiring.design.settings().headroom_percent) return;
    const auto ends = graph::arc_ends(r.wiring, r.runs, r.network, arc);
    const bool over = count > agreed;
    auto finding = found(words.id, over ? Severity::error : Severity::warning, {ends.link, ends.from, ends.to},
                         {named(ends.link), named(ends.from), named(ends.to), named(where->preset), count, agreed,
                          by_whom(agreement.agreed)},
                         over ? 0 : 1);
    finding.measured = count;
    finding.limit = agreed;
    const auto rows = streams_by_index(r.wiring);
    std::vector<base::Ref> names;
    for (const int stream : most) names.push_back(named(rows[at(stream)]->id));
    finding.terms.push_back(line(STREAMWRIGHT_TEXT("sources across: %1"), {std::move(names)}));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::NetworkGraph& network,
           const VlanPaths& paths, const SpanningTrees& trees, const Forwarding& forwarding, const LinkLoads& loads,
           Findings& out) {
    const Reader r{wiring, runs, network, paths, trees, forwarding, loads};
    for (const auto& agreement : find_agreements(wiring, runs, network))
        for (const bool a_to_b : {true, false}) judge(r, agreement, network.link_arc(agreement.link, a_to_b), out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::agreed_sources_exceeded
