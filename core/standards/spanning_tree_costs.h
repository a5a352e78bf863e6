// Spanning tree figures: path costs by speed, priorities and timers.
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"

#include <cstdint>

namespace streamwright::standards {

/// 32-bit costs: 20,000,000 / speed in Mb/s, from 1 to 200,000,000.
std::int64_t long_path_cost(base::BitRate speed);
inline constexpr Citation long_cost_source{"IEEE", "802.1Q", "Table 13-4"};

/// 16-bit costs. They stop at 10 Gb/s (2): all above look the same (1, by practice). A speed between two rows takes the
/// row below it.
std::int64_t short_path_cost(base::BitRate speed);
Citation short_cost_source(base::BitRate speed);

inline constexpr int usual_bridge_priority = 32768;
inline constexpr int most_bridge_priority = 61440;
inline constexpr int bridge_priority_step = 4096;
inline constexpr int usual_port_priority = 128;
inline constexpr int port_priority_step = 16;
inline constexpr Citation priority_source{"IEEE", "802.1Q", "Table 13-3"};
bool bridge_priority_valid(int priority);
bool port_priority_valid(int priority);

struct TreeTimers {
    int hello_s = 2;
    int max_age_s = 20;        // 6 to 40
    int forward_delay_s = 15;  // 4 to 30
};
/// 2 x (forward delay - 1) >= max age >= 2 x (hello + 1), each within its range.
bool tree_timers_valid(const TreeTimers& timers);
inline constexpr Citation tree_timer_source{"IEEE", "802.1Q", "section 13.25", Standing::memory};

}  // namespace streamwright::standards
