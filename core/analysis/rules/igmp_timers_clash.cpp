// IGMP timers that the design may hold and that still do not fit each other. A response time not below the query
// interval, and a robustness outside 1 to 7, are refused before they come here (RFC 3376, 8.1 and 8.3).
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/standards/igmp.h"

#include <set>

namespace streamwright::analysis::rules::igmp_timers_clash {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("Robustness 1 in the queries of %1: one lost report is enough, and after %2 the stream stops."),
    STREAMWRIGHT_TEXT("Response time %2 in the queries of %1: IGMPv2 can say no more than 25.5 s.")};

constexpr standards::Citation sources[] = {
    {"IETF", "RFC 3376", "section 8.1 (must not be 0, should not be 1)"},
    {"IETF", "RFC 2236", "section 2.2 (8 bits of 1/10 s)", standards::Standing::memory}};

constexpr RuleWords words{.id = "igmp-timers-clash",
                          .severity = Severity::warning,
                          .theme = Theme::multicast,
                          .title = "IGMP timers that do not fit each other",
                          .meaning =
                              "Members are forgotten though they still watch: now and then a picture freezes for "
                              "minutes, and nobody finds out why.",
                          .measured =
                              "Where a querier asks, the robustness is held against 1 and, by RFC 2236, the response "
                              "time against what its field can hold.",
                          .remedy = "Use the published timers: robustness 2, query interval 125 s, response 10 s.",
                          .offers = "Set the robustness to 2, or the response time to 10 s.",
                          .patterns = patterns,
                          .sources = sources};

constexpr int most_response_v2_s = 25;  // 255 tenths of a second
constexpr standards::IgmpTimers published;

/// The devices on which queriers are set, by id.
std::vector<model::DeviceId> queriers(const graph::Wiring& wiring, const graph::NetworkGraph& network,
                                      const Forwarding& forwarding) {
    std::set<model::DeviceId> ids;
    for (const auto& vlan : forwarding.vlans)
        for (const int bridge : vlan.queriers)
            ids.insert(device_id(wiring, network.bridges[at(bridge)].devices.front()));
    return {ids.begin(), ids.end()};
}

void check(const graph::Wiring& wiring, const graph::NetworkGraph& network, const Forwarding& forwarding,
           Findings& out) {
    using namespace base::literals;
    const auto& settings = wiring.design.settings();
    const bool frail = settings.robustness == 1;
    const bool too_long =
        settings.igmp == model::IgmpDocument::rfc2236 && settings.query_response_s > most_response_v2_s;
    if (!frail && !too_long) return;
    const auto asking = queriers(wiring, network, forwarding);
    if (asking.empty()) return;
    std::vector<base::Ref> names;
    for (const auto id : asking) names.push_back(named(id));
    const standards::IgmpTimers timers{settings.robustness, 1_s * settings.query_interval_s,
                                       1_s * settings.query_response_s};
    const auto document = settings.igmp == model::IgmpDocument::rfc9776 ? standards::IgmpDocument::rfc9776
                                                                        : standards::IgmpDocument::rfc2236;
    auto finding =
        found(words.id, Severity::warning, {asking.front()},
              {std::move(names), frail ? standards::membership_time(timers, document) : timers.query_response},
              frail ? 0 : 1);
    auto row = settings;
    if (frail) row.robustness = published.robustness;
    if (too_long) row.query_response_s = static_cast<int>(published.query_response.count() / (1_s).count());
    finding.remedies.push_back({line(STREAMWRIGHT_TEXT("Set robustness %1 and response time %2"),
                                     {std::int64_t{row.robustness}, 1_s * row.query_response_s}),
                                model::SetSettings{std::move(row)}});
    out.push_back(std::move(finding));
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::igmp_timers_clash
