#include "core/standards/copper_reach.h"

#include <algorithm>
#include <array>

namespace streamwright::standards {

namespace copper_reach_detail {

using namespace base::literals;

// tests/reference/network-values.csv, rows PHY-001 to PHY-010.
constexpr Citation fast{"IEEE", "802.3", "clause 25"};
constexpr Citation gigabit{"IEEE", "802.3", "clause 40"};
constexpr Citation multi_gigabit{"IEEE", "802.3", "clause 126"};
constexpr Citation ten_gigabit{"IEEE", "802.3", "clause 55"};
constexpr Citation ten_gigabit_cat6{"IEEE", "802.3", "clause 55, TIA TSB-155-A"};
constexpr Citation forty_gigabit{"IEEE", "802.3", "clause 113"};

constexpr std::array rows{
    CopperReach{"100BASE-TX", 100_Mbps, CopperGrade::cat5e, 100_m, false, fast},
    CopperReach{"1000BASE-T", 1_Gbps, CopperGrade::cat5e, 100_m, false, gigabit},
    CopperReach{"2.5GBASE-T", 2500_Mbps, CopperGrade::cat5e, 100_m, true, multi_gigabit},
    CopperReach{"2.5GBASE-T", 2500_Mbps, CopperGrade::cat6, 100_m, true, multi_gigabit},
    CopperReach{"2.5GBASE-T", 2500_Mbps, CopperGrade::cat6a, 100_m, false, multi_gigabit},
    CopperReach{"5GBASE-T", 5_Gbps, CopperGrade::cat5e, 100_m, true, multi_gigabit},
    CopperReach{"5GBASE-T", 5_Gbps, CopperGrade::cat6, 100_m, true, multi_gigabit},
    CopperReach{"5GBASE-T", 5_Gbps, CopperGrade::cat6a, 100_m, false, multi_gigabit},
    CopperReach{"10GBASE-T", 10_Gbps, CopperGrade::cat6, 55_m, true, ten_gigabit_cat6},
    CopperReach{"10GBASE-T", 10_Gbps, CopperGrade::cat6a, 100_m, false, ten_gigabit},
    CopperReach{"25GBASE-T", 25_Gbps, CopperGrade::cat8, 30_m, false, forty_gigabit},
    CopperReach{"40GBASE-T", 40_Gbps, CopperGrade::cat8, 30_m, false, forty_gigabit},
};

/// Rise of insertion loss over 20 degrees C in millionths.
std::int64_t rise_millionths(base::Temperature average, bool screened) {
    const std::int64_t over = std::max<std::int64_t>(0, average.count() - 20000);  // thousandths of a degree
    if (screened) return over * 2;
    return std::min<std::int64_t>(over, 20000) * 4 + std::max<std::int64_t>(0, over - 20000) * 6;
}

}  // namespace copper_reach_detail

std::span<const CopperReach> copper_reaches() { return copper_reach_detail::rows; }

std::optional<CopperReach> copper_reach(base::BitRate rate, CopperGrade grade) {
    // A better grade carries all that a lesser one does: the best row at or below the grade counts.
    std::optional<CopperReach> best;
    for (const auto& row : copper_reach_detail::rows)
        if (row.rate == rate && row.grade <= grade) best = row;
    return best;
}

base::Length permanent_link_limit(base::Length channel) {
    using namespace base::literals;
    return std::min(90_m, channel - 10_m);
}

Citation permanent_link_source() { return {"TIA", "568.2-D", "and ISO/IEC 11801-1"}; }

base::Length derated(base::Length limit, base::Temperature average, bool screened, DeratingRule rule) {
    constexpr std::int64_t one = 1000000;
    const std::int64_t rise = copper_reach_detail::rise_millionths(average, screened);
    __extension__ using Wide = __int128;
    const Wide length = limit.count();
    const Wide shorter = rule == DeratingRule::linear ? length * std::max<std::int64_t>(0, one - rise) / one
                                                      : length * one / (one + rise);
    return base::Length::from_count(static_cast<std::int64_t>(shorter));
}

Citation derating_source() { return {"TIA", "568-C.2", "clause 6.4.7"}; }

}  // namespace streamwright::standards
