#include "core/standards/igmp.h"

namespace streamwright::standards {

base::Duration membership_time(const IgmpTimers& timers, IgmpDocument document) {
    const int responses = document == IgmpDocument::rfc9776 ? 2 : 1;
    return timers.query_interval * timers.robustness + timers.query_response * responses;
}

Citation membership_source(IgmpDocument document) {
    if (document == IgmpDocument::rfc9776) return {"IETF", "RFC 9776", "section 8.4"};
    return {"IETF", document == IgmpDocument::rfc3376 ? "RFC 3376" : "RFC 2236", "section 8.4"};
}

base::Duration other_querier_time(const IgmpTimers& timers) {
    return timers.query_interval * timers.robustness + timers.query_response / 2;
}

base::Duration startup_query_interval(const IgmpTimers& timers) { return timers.query_interval / 4; }

int startup_query_count(const IgmpTimers& timers) { return timers.robustness; }

base::Duration leave_time(const IgmpTimers& timers) {
    return timers.last_member_interval * timers.last_member_count.value_or(timers.robustness);
}

bool timers_hold(const IgmpTimers& timers) {
    constexpr int most_robust = 7;
    return timers.robustness >= 1 && timers.robustness <= most_robust && timers.query_response > base::Duration() &&
           timers.query_response < timers.query_interval;
}

std::optional<base::Ipv4> elected_querier(std::span<const base::Ipv4> candidates) {
    std::optional<base::Ipv4> lowest;
    for (const auto candidate : candidates)
        if (candidate.bits != 0 && (!lowest || candidate < *lowest)) lowest = candidate;
    return lowest;
}

}  // namespace streamwright::standards
