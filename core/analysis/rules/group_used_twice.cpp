// A multicast group names one stream: whoever joins it receives every stream sent to it.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

namespace streamwright::analysis::rules::group_used_twice {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 and %2 are both sent to group %3; whoever joins one receives both."),
    STREAMWRIGHT_TEXT("%1 and %2 of one encoder are both sent to group %3, on UDP ports %4 and %5; whoever joins one "
                      "receives both.")};

constexpr standards::Citation sources[] = {{"IETF", "RFC 1112", "section 4"}};

constexpr RuleWords words{.id = "group-used-twice",
                          .theme = Theme::multicast,
                          .title = "Two streams on one group",
                          .meaning =
                              "Decoders and links carry both streams where one was wanted, and decoders may show "
                              "the wrong one or flicker between them.",
                          .measured = "The groups of all streams that can meet in one VLAN are compared.",
                          .remedy = "Give one of the two streams another group.",
                          .offers = "Give the second stream the next free group.",
                          .patterns = patterns,
                          .sources = sources};

bool meet(const std::optional<model::VlanId>& a, const std::optional<model::VlanId>& b) { return !a || !b || a == b; }

Finding about(const AddressPlan& plan, const model::Stream& first, const model::Stream& second) {
    const bool ports = first.encoder == second.encoder && first.udp_port != second.udp_port;
    std::vector<base::Value> values{named(first.id), named(second.id), base::print(*first.group)};
    if (ports) {
        values.emplace_back(std::int64_t{first.udp_port});
        values.emplace_back(std::int64_t{second.udp_port});
    }
    auto finding = found(words.id, ports ? Severity::warning : Severity::error, {first.id, second.id},
                         std::move(values), ports ? 1 : 0);
    if (auto remedy = other_group(plan, second)) finding.remedies.push_back(std::move(*remedy));
    return finding;
}

void check(const graph::Wiring& wiring, const AddressPlan& plan, Findings& out) {
    const auto streams = streams_by_index(wiring);
    for (std::size_t i = 0; i < plan.groups.size(); ++i)
        for (std::size_t j = i + 1; j < plan.groups.size() && plan.groups[j].group == plan.groups[i].group; ++j) {
            if (!meet(plan.groups[i].vlan, plan.groups[j].vlan)) continue;
            out.push_back(about(plan, *streams[at(plan.groups[i].stream)], *streams[at(plan.groups[j].stream)]));
            break;  // the next of a longer chain is named with its own neighbour
        }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::group_used_twice
