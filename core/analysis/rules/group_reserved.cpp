// Groups that a plan must keep clear of: the local control block, all groups on its MAC addresses, and what no stream
// may use at all.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/standards/multicast.h"

namespace streamwright::analysis::rules::group_reserved {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1: %2 is no multicast group; groups run from 224.0.0.0 to 239.255.255.255."),
    STREAMWRIGHT_TEXT("%1: %2 is in the local control block 224.0.0.0/24, which switches send to every port."),
    STREAMWRIGHT_TEXT(
        "%1: %2 falls on the MAC address %3 of the local control block, which switches send to every port, "
        "snooping or not."),
    STREAMWRIGHT_TEXT("%1: %2 is in the reserved top 256 groups of its scope."),
    STREAMWRIGHT_TEXT("%1: %2 is in a block kept for examples in documents."),
    STREAMWRIGHT_TEXT("%1: %2 is in a block that is handed out to others.")};

constexpr standards::Citation sources[] = {{"IETF", "RFC 5771", "section 4"},
                                           {"IETF", "RFC 4541", "section 2.1.2 rule 2"},
                                           {"IETF", "RFC 1112", "section 6.4"},
                                           {"IETF", "RFC 2365", "sections 6.2 and 9"},
                                           {"IETF", "RFC 6676", "section 2"}};

constexpr RuleWords words{.id = "group-reserved",
                          .theme = Theme::multicast,
                          .title = "Group on the reserved block or on its MAC addresses",
                          .meaning =
                              "Such a stream reaches every port of the VLAN, wanted or not, and slow ports "
                              "drown in it.",
                          .measured =
                              "The group of each stream, and the MAC address it falls on, against the blocks that "
                              "standards set aside. Blocks that are merely kept for others are a warning.",
                          .remedy = "Take a group from 239.192.0.0/14, clear of x.0.0.y and x.128.0.y.",
                          .offers = "Give the stream the next free group.",
                          .patterns = patterns,
                          .sources = sources};

/// Which pattern, and how grave; nothing for a group that may be used.
std::optional<std::pair<int, Severity>> verdict(base::Ipv4 group) {
    using enum standards::GroupVerdict;
    switch (standards::judge_group(group)) {
        case good:
            return std::nullopt;
        case not_a_group:
            return std::pair{0, Severity::error};
        case control_block:
            return std::pair{1, Severity::error};
        case control_block_mac:
            return std::pair{2, Severity::error};
        case reserved_top:
            return std::pair{3, Severity::warning};
        case documentation:
            return std::pair{4, Severity::warning};
        case not_for_plans:
            return std::pair{5, Severity::warning};
    }
    return std::nullopt;
}

void check(const graph::Wiring& wiring, const AddressPlan& plan, Findings& out) {
    const auto streams = streams_by_index(wiring);
    for (const auto& use : plan.groups) {
        const auto judged = verdict(use.group);
        if (!judged) continue;
        const auto& stream = *streams[at(use.stream)];
        std::vector<base::Value> values{named(stream.id), base::print(use.group)};
        if (judged->first == 2) values.emplace_back(base::print(use.mac));
        auto finding = found(words.id, judged->second, {stream.id}, std::move(values), judged->first);
        if (auto remedy = other_group(plan, stream)) finding.remedies.push_back(std::move(*remedy));
        out.push_back(std::move(finding));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::group_reserved
