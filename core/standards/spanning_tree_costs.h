// Path costs of spanning tree by speed (IEEE 802.1Q clause 13, long; IEEE 802.1D-1998, short).
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"

namespace streamwright::standards {

/// 20,000,000 / Mb/s, at least 1, at most 200,000,000.
std::int64_t long_path_cost(base::BitRate rate);
/// 100 at 10 Mb/s, 19 at 100 Mb/s, 4 at 1 Gb/s, 2 at 10 Gb/s and everything faster.
std::int64_t short_path_cost(base::BitRate rate);

Citation path_cost_source();

}  // namespace streamwright::standards
