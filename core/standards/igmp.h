// IGMP timers: how long a membership outlives its reports, how long a stream keeps flowing after it was left, and who
// becomes querier.
#pragma once

#include "core/base/net_address.h"
#include "core/base/units.h"
#include "core/standards/citation.h"

#include <optional>
#include <span>

namespace streamwright::standards {

/// RFC 9776 (March 2025) counts the response interval twice in the membership time; RFC 2236 and 3376 once.
enum class IgmpDocument { rfc2236, rfc3376, rfc9776 };

/// The published defaults.
struct IgmpTimers {
    int robustness = 2;  // 1 to 7 in the configuration model (RFC 9166)
    base::Duration query_interval = base::Duration::from_count(125'000'000'000);
    base::Duration query_response = base::Duration::from_count(10'000'000'000);
    base::Duration last_member_interval = base::Duration::from_count(1'000'000'000);
    std::optional<int> last_member_count;  // none: the robustness
};

/// Group membership interval: a member that reports no more is dropped after it.
base::Duration membership_time(const IgmpTimers& timers, IgmpDocument document);
Citation membership_source(IgmpDocument document);

/// Other querier present interval: a silent querier is replaced after it.
base::Duration other_querier_time(const IgmpTimers& timers);
base::Duration startup_query_interval(const IgmpTimers& timers);
int startup_query_count(const IgmpTimers& timers);
/// Last member query time: a stream that was left flows on for so long, unless the port may leave fast.
base::Duration leave_time(const IgmpTimers& timers);

/// The response interval must be shorter than the query interval, the robustness at least 1.
bool timers_hold(const IgmpTimers& timers);

/// The lowest address wins; 0.0.0.0 (a proxy) never does. Nothing without a candidate.
std::optional<base::Ipv4> elected_querier(std::span<const base::Ipv4> candidates);

inline constexpr Citation igmp_timer_source{"IETF", "RFC 2236", "section 8"};
inline constexpr Citation leave_time_source{"IETF", "RFC 3376", "section 8.8"};
inline constexpr Citation querier_election_source{"IETF", "RFC 2236", "section 3", Standing::memory};

}  // namespace streamwright::standards
