// A fibre link must keep its budget of light as well as its reach: joints and splices cost, however short the way.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/standards/fibre_loss.h"

namespace streamwright::analysis::rules::fibre_loss_too_high {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1: the fibre from %2 to %3 loses %4; %5 over %6 may lose %7."),
    STREAMWRIGHT_TEXT("%1: the fibre from %2 to %3 loses %4; %5 over %6 may lose %7 by a figure from memory: ask the "
                      "maker of the transceivers.")};

constexpr standards::Citation sources[] = {
    {"IEEE", "802.3", "clauses 38, 52, 68, 86 to 88, 95, 112, 114 (channel insertion loss)"},
    {"TIA", "568.3-D", "cabled attenuation, mated pairs, splices"}};

constexpr RuleWords words{.id = "fibre-loss-too-high",
                          .theme = Theme::cabling,
                          .title = "Fibre link loses too much light",
                          .meaning =
                              "The link drops out or never comes up although it is short enough: each pair of "
                              "connectors and each splice takes its share.",
                          .measured =
                              "Length times the attenuation of the fibre, the mated pairs of connectors on the way "
                              "(0.75 dB each) and the splices (0.3 dB each) against the budget of the physical layer. "
                              "What a pair and a splice lose are settings of the design, and a cable type may state "
                              "its own attenuation. Where the budget is a figure from memory the finding is a warning.",
                          .remedy =
                              "Take out a panel, splice instead of plugging, use connectors of proven low loss and "
                              "set what they lose, or take transceivers with a larger budget.",
                          .patterns = patterns,
                          .sources = sources};

std::vector<base::Text> terms_of(const FibreChannel& channel, base::Loss budget) {
    std::vector<base::Text> terms;
    terms.push_back(line(STREAMWRIGHT_TEXT("%1 of %2 at %3 nm: %4"),
                         {*channel.length, channel.grade_name, std::int64_t{channel.wavelength_nm}, *channel.glass}));
    const auto several = [&](std::string pattern, int count, base::Loss each) {
        if (count > 0) terms.push_back(line(std::move(pattern), {std::int64_t{count}, each, each * count}));
    };
    several(STREAMWRIGHT_TEXT("%1 connector pairs x %2 = %3"), channel.joints, channel.joint_loss);
    several(STREAMWRIGHT_TEXT("%1 splices x %2 = %3"), channel.splices, channel.splice_loss);
    terms.push_back(line(STREAMWRIGHT_TEXT("%1 - %2 = %3 too much"), {*channel.loss, budget, *channel.loss - budget}));
    return terms;
}

void judge(const graph::Wiring& wiring, const graph::Run& run, const std::string& phy, const FibreChannel& channel,
           Findings& out) {
    if (!channel.loss || !channel.grade) return;
    const auto* budget = standards::loss_budget(phy, *channel.grade);
    if (!budget || *channel.loss <= budget->budget) return;
    const bool remembered = budget->source.standing == standards::Standing::memory;
    const auto cable = cable_id(wiring, run.cables.front());
    auto finding = found(words.id, remembered ? Severity::warning : Severity::error, {cable},
                         {named(cable), port_ref(wiring, *run.a), port_ref(wiring, *run.b), *channel.loss, phy,
                          channel.grade_name, budget->budget},
                         remembered ? 1 : 0);
    finding.measured = *channel.loss;
    finding.limit = budget->budget;
    finding.terms = terms_of(channel, budget->budget);
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const LinkCapacity& capacity,
           const FibreChannels& fibres, Findings& out) {
    for (std::size_t i = 0; i < runs.list.size() && i < capacity.runs.size() && i < fibres.runs.size(); ++i)
        if (runs.list[i].a && runs.list[i].b && capacity.runs[i].rate && fibres.runs[i])
            judge(wiring, runs.list[i], capacity.runs[i].phy, *fibres.runs[i], out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::fibre_loss_too_high
