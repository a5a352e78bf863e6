// A duplex link sends on one strand and listens on the other; what one end sends must arrive where the other listens.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

namespace streamwright::analysis::rules::fibre_polarity {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1: from %2 to %3 the two strands change places %4 times; transmit meets transmit unless the "
                      "number is odd."),
    STREAMWRIGHT_TEXT("%1: from %2 to %3 not every part states whether it swaps the two strands, so whether transmit "
                      "meets receive is not known.")};

constexpr standards::Citation sources[] = {
    {"TIA", "568.3-D", "polarity of duplex links", standards::Standing::memory},
    {"IEEE", "802.3", "duplex physical layers: transmitter to receiver", standards::Standing::practice}};

constexpr RuleWords words{
    .id = "fibre-polarity",
    .theme = Theme::cabling,
    .title = "Duplex fibre with transmit on transmit",
    .meaning =
        "All parts are good, the loss is good, and the lamp stays dark. It shows on the day of switching on, when the "
        "trunk is ordered and pulled.",
    .measured =
        "For transceivers of two strands the swaps of leads, installed fibre and cassettes on the way are added up: "
        "the sum must be odd. Ways of which no part states its swaps are not judged; where only some do, that is said.",
    .remedy =
        "Use one crossed and one straight lead, turn the plug of one lead round, or take a trunk that flips its pairs.",
    .offers = "Take a lead of the design that is wired the other way.",
    .patterns = patterns,
    .sources = sources};

bool duplex(const graph::Wiring& wiring, graph::PortAt port) {
    const auto* type = wiring.module_at(port);
    return type && type->module && type->module->strands == 2;
}

/// The type of the design that is as this lead, but wired the other way.
std::shared_ptr<const catalogue::CableType> twin_of(const graph::Wiring& wiring, const catalogue::CableType& lead) {
    for (const auto& row : wiring.design.cable_types) {
        const auto& type = *row.type;
        if (type.use == lead.use && type.signal == lead.signal && type.medium == lead.medium &&
            type.grade == lead.grade && type.plugs == lead.plugs && type.polish == lead.polish &&
            type.made_length == lead.made_length && type.crossed && *type.crossed != *lead.crossed)
            return row.type;
    }
    return nullptr;
}

std::optional<Remedy> other_lead(const graph::Wiring& wiring, const graph::Run& run) {
    for (const int index : run.cables) {
        const auto& cable = wiring.cables[at(index)];
        const bool lead = cable.type->use == catalogue::CableUse::lead;
        if (!lead || !cable.type->crossed || cable.row->fibre.pair_swaps) continue;
        if (auto type = twin_of(wiring, *cable.type))
            return Remedy{line(STREAMWRIGHT_TEXT("Take %1 for %2"), {type->name, named(cable.row->id)}),
                          model::SetCableType{{cable.row->id}, std::move(type)}};
    }
    return std::nullopt;
}

void judge(const graph::Wiring& wiring, const graph::Run& run, const FibreChannel& channel, Findings& out) {
    if (!channel.swaps_stated || (channel.swaps && *channel.swaps % 2 == 1)) return;
    const auto cable = cable_id(wiring, run.cables.front());
    std::vector<base::Value> values{named(cable), port_ref(wiring, *run.a), port_ref(wiring, *run.b)};
    if (!channel.swaps) return out.push_back(found(words.id, Severity::advice, {cable}, std::move(values), 1));
    values.emplace_back(std::int64_t{*channel.swaps});
    auto finding = found(words.id, Severity::error, {cable}, std::move(values));
    finding.terms.push_back(line(STREAMWRIGHT_TEXT("%1 swaps: even, needed odd"), {std::int64_t{*channel.swaps}}));
    if (auto remedy = other_lead(wiring, run)) finding.remedies.push_back(std::move(*remedy));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const FibreChannels& fibres, Findings& out) {
    for (std::size_t i = 0; i < runs.list.size() && i < fibres.runs.size(); ++i) {
        const auto& run = runs.list[i];
        if (run.a && run.b && fibres.runs[i] && duplex(wiring, *run.a) && duplex(wiring, *run.b))
            judge(wiring, run, *fibres.runs[i], out);
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::fibre_polarity
