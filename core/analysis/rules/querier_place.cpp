// All streams of a VLAN go toward its querier, wanted there or not; with the querier elsewhere the fullest trunk may
// carry less.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>

namespace streamwright::analysis::rules::querier_place {

constexpr std::string_view patterns[] = {STREAMWRIGHT_TEXT(
    "%2 asks for members in %1, and a trunk carries up to %4; with %3 asking, the fullest would carry "
    "%5.")};

constexpr standards::Citation sources[] = {
    {"IETF", "RFC 4541", "section 2.1.2 rule 1 (streams go to router ports as well)"},
    {"IETF", "RFC 4541", "section 2.1.1 rule 1 (queries make router ports)"}};

constexpr RuleWords words{.id = "querier-place",
                          .severity = Severity::advice,
                          .theme = Theme::multicast,
                          .title = "Querier better placed elsewhere",
                          .meaning =
                              "Every stream travels to the querier whether or not it is wanted there, so trunks carry "
                              "streams that nobody watches, and less is left for those that are.",
                          .measured =
                              "Each switch that could ask in the VLAN is tried in place of the one that does. The "
                              "greatest load of a direction between two switches that carries the VLAN, idle or in any "
                              "preset, is compared. Said only where another place makes it smaller, and where one "
                              "switch alone asks, from an address; networks with more than 200,000 switches times "
                              "directions are not tried.",
                          .remedy = "Let the switch named ask in the VLAN, as a rule the one with most encoders.",
                          .offers = "Move the querier there.",
                          .patterns = patterns,
                          .sources = sources};

struct Reader {
    const graph::Wiring& wiring;
    const graph::Runs& runs;
    const graph::NetworkGraph& network;
    const AddressPlan& plan;
};

/// The member of the bridge that is set to ask.
std::optional<model::DeviceId> asking_member(const Reader& r, int bridge, model::VlanId vlan) {
    for (const int device : r.network.bridges[at(bridge)].devices) {
        const auto& row = *r.wiring.devices[at(device)].row;
        const auto& queriers = row.bridging.queriers;
        if (std::any_of(queriers.begin(), queriers.end(), [&](const auto& each) { return each.vlan == vlan; }))
            return row.id;
    }
    return std::nullopt;
}

std::optional<base::Ipv4> address_there(const Reader& r, int bridge, model::VlanId vlan) {
    for (const auto& use : r.plan.hosts)
        if (use.vlan == vlan && !use.querier && use.device == r.network.bridges[at(bridge)].devices.front())
            return use.address;
    const auto* row = r.wiring.design.vlans.find(vlan);
    return row ? free_address(r.plan, *row) : std::nullopt;
}

base::Text term(const Reader& r, model::DeviceId asking, const FullestArc& fullest) {
    const auto ends = graph::arc_ends(r.wiring, r.runs, r.network, fullest.arc);
    return line(STREAMWRIGHT_TEXT("with %1: %2 from %3 to %4"),
                {named(asking), fullest.wire.ceil(), named(ends.from), named(ends.to)});
}

void judge(const Reader& r, const QuerierPlace& place, model::VlanId vlan, Findings& out) {
    const auto asking = asking_member(r, place.now, vlan);
    if (!asking) return;
    const auto better = device_id(r.wiring, r.network.bridges[at(place.best)].devices.front());
    auto finding =
        found(words.id, Severity::advice, {vlan, *asking},
              {named(vlan), named(*asking), named(better), place.with_now.wire.ceil(), place.with_best.wire.ceil()});
    finding.measured = place.with_now.wire.ceil();
    finding.limit = place.with_best.wire.ceil();
    finding.terms = {term(r, *asking, place.with_now), term(r, better, place.with_best)};
    if (const auto address = address_there(r, place.best, vlan))
        finding.remedies.push_back(
            {line(STREAMWRIGHT_TEXT("Let %1 ask in %2 in place of %3"), {named(better), named(vlan), named(*asking)}),
             model::MoveQuerier{vlan, *asking, better, address}});
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::NetworkGraph& network,
           const VlanPaths& paths, const AddressPlan& plan, const QuerierPlaces& places, Findings& out) {
    const Reader reader{wiring, runs, network, plan};
    for (const auto& place : places.places)
        if (const auto vlan = paths.vlans[at(place.vlan)]; vlan && place.best != place.now)
            judge(reader, place, *vlan, out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::querier_place
