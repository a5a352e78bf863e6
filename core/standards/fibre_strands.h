// How many strands of fibre each optical physical layer lights, both ways together.
#pragma once

#include "core/standards/citation.h"

#include <array>
#include <optional>
#include <string_view>

namespace streamwright::standards {

struct FibreStrands {
    std::string_view phy;
    int strands;
};
/// Lanes each way x 2 of the parallel ones; one where both ways share a strand.
inline constexpr std::array<FibreStrands, 17> fibre_strands{{{"1000BASE-SX", 2},
                                                             {"1000BASE-LX", 2},
                                                             {"1000BASE-LX10", 2},
                                                             {"1000BASE-BX10-D", 1},
                                                             {"1000BASE-BX10-U", 1},
                                                             {"10GBASE-SR", 2},
                                                             {"10GBASE-LRM", 2},
                                                             {"10GBASE-LR", 2},
                                                             {"10GBASE-ER", 2},
                                                             {"25GBASE-SR", 2},
                                                             {"25GBASE-LR", 2},
                                                             {"40GBASE-SR4", 8},
                                                             {"40GBASE-LR4", 2},
                                                             {"100GBASE-SR10", 20},
                                                             {"100GBASE-SR4", 8},
                                                             {"100GBASE-LR4", 2},
                                                             {"400GBASE-SR8", 16}}};
inline constexpr Citation fibre_strands_source{"IEEE", "802.3", "lanes of each physical layer", Standing::memory};

constexpr std::optional<int> strands_of(std::string_view phy) {
    for (const auto& row : fibre_strands)
        if (row.phy == phy) return row.strands;
    return std::nullopt;
}

}  // namespace streamwright::standards
