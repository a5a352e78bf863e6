#include "core/standards/spanning_tree_costs.h"

#include <algorithm>
#include <array>

namespace streamwright::standards {

namespace tree_cost_detail {

using namespace base::literals;

struct ShortCost {
    base::BitRate speed;
    std::int64_t cost;
};
/// IEEE 802.1D-1998 Table 8-5.
constexpr std::array short_costs{ShortCost{10_Gbps, 2}, ShortCost{1_Gbps, 4}, ShortCost{100_Mbps, 19},
                                 ShortCost{10_Mbps, 100}};

}  // namespace tree_cost_detail

std::int64_t long_path_cost(base::BitRate speed) {
    constexpr std::int64_t most = 200'000'000, product = 20'000'000'000'000;  // 20,000,000 x 1 Mb/s
    if (speed.count() <= 0) return most;
    return std::clamp<std::int64_t>(product / speed.count(), 1, most);
}

std::int64_t short_path_cost(base::BitRate speed) {
    using namespace tree_cost_detail;
    if (speed > short_costs.front().speed) return 1;
    for (const auto& row : short_costs)
        if (speed >= row.speed) return row.cost;
    return short_costs.back().cost;
}

Citation short_cost_source(base::BitRate speed) {
    if (speed > tree_cost_detail::short_costs.front().speed)
        return {"IEEE", "802.1D-1998", "beyond Table 8-5", Standing::practice};
    return {"IEEE", "802.1D-1998", "Table 8-5"};
}

bool bridge_priority_valid(int priority) {
    return priority >= 0 && priority <= most_bridge_priority && priority % bridge_priority_step == 0;
}

bool port_priority_valid(int priority) {
    constexpr int most = 240;
    return priority >= 0 && priority <= most && priority % port_priority_step == 0;
}

bool tree_timers_valid(const TreeTimers& timers) {
    const bool ranges = timers.hello_s >= 1 && timers.max_age_s >= 6 && timers.max_age_s <= 40 &&
                        timers.forward_delay_s >= 4 && timers.forward_delay_s <= 30;
    return ranges && 2 * (timers.forward_delay_s - 1) >= timers.max_age_s &&
           timers.max_age_s >= 2 * (timers.hello_s + 1);
}

}  // namespace streamwright::standards
