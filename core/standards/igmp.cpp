#include "core/standards/igmp.h"

namespace streamwright::standards {

base::Duration membership_time(const IgmpTimers& timers, IgmpText text) {
    const int responses = text == IgmpText::rfc2236 ? 1 : 2;
    return timers.query_interval * timers.robustness + timers.response_interval * responses;
}

base::Duration other_querier_present(const IgmpTimers& timers) {
    return timers.query_interval * timers.robustness + timers.response_interval / 2;
}

base::Duration leave_time(const IgmpTimers& timers) {
    using namespace base::literals;
    return 1_s * timers.robustness;
}

Citation membership_source(IgmpText text) {
    if (text == IgmpText::rfc2236) return {"IETF", "RFC 2236", "8.4"};
    return {"IETF", "RFC 9776", "8.4"};
}

}  // namespace streamwright::standards
