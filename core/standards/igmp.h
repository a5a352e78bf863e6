// IGMP timers: how long a membership lasts without a querier, how long leaving takes.
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"

namespace streamwright::standards {

enum class IgmpText { rfc2236, rfc9776 };

struct IgmpTimers {
    int robustness = 2;
    base::Duration query_interval = base::Duration::from_count(125'000'000'000);
    base::Duration response_interval = base::Duration::from_count(10'000'000'000);
};

/// robustness x interval + response (RFC 2236 8.4, RFC 3376 8.4: 260 s), twice the response by RFC 9776 8.4 (270 s).
base::Duration membership_time(const IgmpTimers& timers, IgmpText text);
/// robustness x interval + response / 2 (RFC 2236 8.5): 255 s.
base::Duration other_querier_present(const IgmpTimers& timers);
/// Last member query interval (1 s) x count (robustness), RFC 3376 8.8: 2 s.
base::Duration leave_time(const IgmpTimers& timers);

Citation membership_source(IgmpText text);

}  // namespace streamwright::standards
