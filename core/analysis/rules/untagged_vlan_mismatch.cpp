// The two ends of a link put untagged frames into different VLANs, which joins those VLANs without anyone meaning it.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

namespace streamwright::analysis::rules::untagged_vlan_mismatch {

constexpr std::string_view patterns[] = {STREAMWRIGHT_TEXT("%1: untagged frames are %3 at %2 and %5 at %4."),
                                         STREAMWRIGHT_TEXT("%1: untagged frames are %3 at %2, but %4 takes none.")};

constexpr standards::Citation sources[] = {
    {"IEEE", "802.1Q", "clause 6.9 (port VLAN identifier)", standards::Standing::memory}};

constexpr RuleWords words{.id = "untagged-vlan-mismatch",
                          .theme = Theme::multicast,
                          .title = "Untagged VLAN differs at the two ends",
                          .meaning =
                              "Frames change their VLAN as they cross the link: streams turn up where they do not "
                              "belong, and are missing where they do.",
                          .measured = "The untagged VLAN of the two ports of each link between switches.",
                          .remedy = "Set the same untagged VLAN at both ends.",
                          .offers = "Make the VLAN of one end the untagged one at the other end.",
                          .patterns = patterns,
                          .sources = sources};

base::Value vlan_value(const VlanPaths& paths, VlanIndex vlan) {
    if (const auto id = paths.vlans[at(vlan)]) return named(*id);
    return std::string(STREAMWRIGHT_TEXT("the only VLAN"));
}

std::optional<Remedy> align(const graph::Wiring& wiring, const VlanPaths& paths, graph::PortAt port, VlanIndex vlan) {
    const auto id = paths.vlans[at(vlan)];
    if (!id) return std::nullopt;
    auto row = port_settings(wiring, port);
    row.untagged = *id;
    row.no_untagged = false;
    std::erase(row.tagged, *id);
    return Remedy{line(STREAMWRIGHT_TEXT("Make %1 untagged at %2"), {named(*id), port_ref(wiring, port)}),
                  model::ConfigurePort{std::move(row), nullptr}};
}

void judge(const graph::Wiring& wiring, const graph::Runs& runs, const VlanPaths& paths, const graph::Link& link,
           const LinkVlans& vlans, Findings& out) {
    const bool turned = !vlans.a.untagged;
    const auto& from = turned ? vlans.b.untagged : vlans.a.untagged;
    const auto& to = turned ? vlans.a.untagged : vlans.b.untagged;
    if (from == to || !from) return;
    const auto from_port = (turned ? link.b_ports : link.a_ports).front();
    const auto to_port = (turned ? link.a_ports : link.b_ports).front();
    const auto cable = cable_id(wiring, runs.list[at(link.runs.front())].cables.front());
    std::vector<base::Value> values{named(cable), port_ref(wiring, from_port), vlan_value(paths, *from),
                                    port_ref(wiring, to_port)};
    if (to) values.push_back(vlan_value(paths, *to));
    auto finding = found(words.id, to ? Severity::error : Severity::warning, {cable}, std::move(values), to ? 0 : 1);
    if (link.runs.size() == 1) {
        if (auto remedy = align(wiring, paths, to_port, *from)) finding.remedies.push_back(std::move(*remedy));
        if (to)
            if (auto remedy = align(wiring, paths, from_port, *to)) finding.remedies.push_back(std::move(*remedy));
    }
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const graph::NetworkGraph& network,
           const VlanPaths& paths, Findings& out) {
    for (std::size_t i = 0; i < network.links.size() && i < paths.links.size(); ++i)
        judge(wiring, runs, paths, network.links[i], paths.links[i], out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::untagged_vlan_mismatch
