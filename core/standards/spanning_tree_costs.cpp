#include "core/standards/spanning_tree_costs.h"

#include <algorithm>

namespace streamwright::standards {

std::int64_t long_path_cost(base::BitRate rate) {
    constexpr std::int64_t scale = 20'000'000'000'000;  // 20,000,000 x 1 Mb/s
    constexpr std::int64_t most = 200'000'000;
    if (rate.count() <= 0) return most;
    return std::clamp<std::int64_t>(scale / rate.count(), 1, most);
}

std::int64_t short_path_cost(base::BitRate rate) {
    using namespace base::literals;
    if (rate >= 10_Gbps) return 2;
    if (rate >= 1_Gbps) return 4;
    if (rate >= 100_Mbps) return 19;
    return 100;
}

Citation path_cost_source() { return {"IEEE", "802.1Q", "clause 13"}; }

}  // namespace streamwright::standards
