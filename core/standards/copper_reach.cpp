#include "core/standards/copper_reach.h"

#include <algorithm>
#include <array>

namespace streamwright::standards {

namespace copper_detail {

using base::BitRate;
using base::Length;
using namespace base::literals;
using enum CopperGrade;
using enum Support;

constexpr Citation clause_25{"IEEE", "802.3", "clause 25"};
constexpr Citation clause_40{"IEEE", "802.3", "clause 40"};
constexpr Citation clause_126{"IEEE", "802.3", "clause 126"};
constexpr Citation clause_55{"IEEE", "802.3", "clause 55"};
constexpr Citation clause_55_cat6{"IEEE / TIA", "802.3 / TSB-155-A", "clause 55"};
constexpr Citation clause_55_memory{"IEEE", "802.3", "clause 55", Standing::memory};
constexpr Citation clause_113{"IEEE", "802.3", "clause 113"};
constexpr Citation clause_113_memory{"IEEE", "802.3", "clause 113", Standing::memory};

constexpr std::array reaches{
    CopperReach{"100BASE-TX", 100_Mbps, cat5e, full, 100_m, clause_25},
    CopperReach{"100BASE-TX", 100_Mbps, cat6, full, 100_m, clause_25},
    CopperReach{"100BASE-TX", 100_Mbps, cat6a, full, 100_m, clause_25},
    CopperReach{"100BASE-TX", 100_Mbps, cat8, full, 100_m, clause_25},
    CopperReach{"1000BASE-T", 1_Gbps, cat5e, full, 100_m, clause_40},
    CopperReach{"1000BASE-T", 1_Gbps, cat6, full, 100_m, clause_40},
    CopperReach{"1000BASE-T", 1_Gbps, cat6a, full, 100_m, clause_40},
    CopperReach{"1000BASE-T", 1_Gbps, cat8, full, 100_m, clause_40},
    // On installed category 5e and 6 the answer hangs on alien crosstalk and bundling (TIA TSB-5021).
    CopperReach{"2.5GBASE-T", 2500_Mbps, cat5e, conditional, 100_m, clause_126},
    CopperReach{"2.5GBASE-T", 2500_Mbps, cat6, conditional, 100_m, clause_126},
    CopperReach{"2.5GBASE-T", 2500_Mbps, cat6a, full, 100_m, clause_126},
    CopperReach{"2.5GBASE-T", 2500_Mbps, cat8, full, 100_m, clause_126},
    CopperReach{"5GBASE-T", 5_Gbps, cat5e, conditional, 100_m, clause_126},
    CopperReach{"5GBASE-T", 5_Gbps, cat6, conditional, 100_m, clause_126},
    CopperReach{"5GBASE-T", 5_Gbps, cat6a, full, 100_m, clause_126},
    CopperReach{"5GBASE-T", 5_Gbps, cat8, full, 100_m, clause_126},
    CopperReach{"10GBASE-T", 10_Gbps, cat5e, none, 0_m, clause_55_memory},
    CopperReach{"10GBASE-T", 10_Gbps, cat6, full, 55_m, clause_55_cat6},
    CopperReach{"10GBASE-T", 10_Gbps, cat6a, full, 100_m, clause_55},
    CopperReach{"10GBASE-T", 10_Gbps, cat8, full, 100_m, clause_55},
    // Written for category 8 alone; lesser grades are no medium of these at any length.
    CopperReach{"25GBASE-T", 25_Gbps, cat5e, none, 0_m, clause_113_memory},
    CopperReach{"25GBASE-T", 25_Gbps, cat6, none, 0_m, clause_113_memory},
    CopperReach{"25GBASE-T", 25_Gbps, cat6a, none, 0_m, clause_113_memory},
    CopperReach{"25GBASE-T", 25_Gbps, cat8, full, 30_m, clause_113},
    CopperReach{"40GBASE-T", 40_Gbps, cat5e, none, 0_m, clause_113_memory},
    CopperReach{"40GBASE-T", 40_Gbps, cat6, none, 0_m, clause_113_memory},
    CopperReach{"40GBASE-T", 40_Gbps, cat6a, none, 0_m, clause_113_memory},
    CopperReach{"40GBASE-T", 40_Gbps, cat8, full, 30_m, clause_113},
};

constexpr CopperReach hostile_cat6{
    "10GBASE-T", 10_Gbps, cat6, full, 37_m, {"TIA", "TSB-155-A", "hostile alien crosstalk", Standing::memory}};

constexpr std::array twinax{
    // Not a name of IEEE 802.3, but the one the trade uses; passive assemblies are usually sold to 7 m.
    TwinaxReach{"10G direct attach", 10_Gbps, 7_m, {"SFF", "SFF-8431", "annex E", Standing::memory}},
    TwinaxReach{"25GBASE-CR", 25_Gbps, 5_m, {"IEEE", "802.3", "clause 110, with RS-FEC"}},
    TwinaxReach{"25GBASE-CR-S", 25_Gbps, 3_m, {"IEEE", "802.3", "clause 110, without RS-FEC", Standing::memory}},
    TwinaxReach{"40GBASE-CR4", 40_Gbps, 7_m, {"IEEE", "802.3", "clause 85"}},
    TwinaxReach{"100GBASE-CR4", 100_Gbps, 5_m, {"IEEE", "802.3", "clause 92", Standing::memory}},
};

template <class Rows, class Same>
auto find_row(const Rows& rows, Same same) -> decltype(&rows[0]) {
    const auto found = std::find_if(rows.begin(), rows.end(), same);
    return found == rows.end() ? nullptr : &*found;
}

/// TIA-568 annex on higher temperatures: average over the run, cords of 10 m at 20 degrees C.
struct HotRow {
    std::int64_t celsius;
    Length unscreened, screened;
};
constexpr std::array hot_rows{
    HotRow{20, 90_m, 90_m},           HotRow{25, 89_m, 89'500_mm},      HotRow{30, 87_m, 88'500_mm},
    HotRow{35, 85'500_mm, 87'700_mm}, HotRow{40, 84_m, 87_m},           HotRow{45, 81'700_mm, 86'500_mm},
    HotRow{50, 79'500_mm, 85'500_mm}, HotRow{55, 77'200_mm, 84'700_mm}, HotRow{60, 75_m, 83_m}};

/// Growth of attenuation above 20 degrees C in parts per million (TIA-568-C.2 clause 6.4.7).
std::int64_t attenuation_growth(std::int64_t millidegrees, bool screened) {
    if (screened) return (millidegrees - 20'000) * 2;
    const auto mild = std::min<std::int64_t>(millidegrees, 40'000) - 20'000;
    const auto hot = std::max<std::int64_t>(millidegrees - 40'000, 0);
    return mild * 4 + hot * 6;
}

constexpr std::int64_t million = 1'000'000;

/// Cords of that gauge lose more than solid cable: 20 % for 24 AWG, 50 % for 26 AWG. `room` are the equipment and patch
/// cords of the room, `cap` the longest work-area cord.
struct Gauge {
    std::int64_t loss_tenths;  // of that of solid cable: 12, 15
    Length room, cap;
};
std::optional<Gauge> gauge(int awg) {
    if (awg == 24) return Gauge{12, 5_m, 22_m};
    if (awg == 26) return Gauge{15, 4_m, 17_m};
    return std::nullopt;
}

}  // namespace copper_detail

std::span<const CopperReach> copper_reaches() { return copper_detail::reaches; }

const CopperReach* copper_reach(std::string_view phy, CopperGrade grade) {
    return copper_detail::find_row(copper_detail::reaches,
                                   [&](const CopperReach& row) { return row.phy == phy && row.grade == grade; });
}

const CopperReach* copper_reach(base::BitRate rate, CopperGrade grade) {
    return copper_detail::find_row(copper_detail::reaches,
                                   [&](const CopperReach& row) { return row.rate == rate && row.grade == grade; });
}

const CopperReach& cat6_among_hostile_neighbours() { return copper_detail::hostile_cat6; }

std::span<const TwinaxReach> twinax_reaches() { return copper_detail::twinax; }

const TwinaxReach* twinax_reach(base::BitRate rate) {
    const TwinaxReach* longest = nullptr;
    for (const auto& row : copper_detail::twinax)
        if (row.rate == rate && (!longest || row.most > longest->most)) longest = &row;
    return longest;
}

std::optional<base::Length> permanent_link_at(base::Temperature average, bool screened, DeratingRule rule) {
    using namespace copper_detail;
    constexpr std::int64_t reference = 20'000, hottest = 60'000;
    const auto millidegrees = average.count();
    if (millidegrees > hottest) return std::nullopt;
    if (millidegrees <= reference) return permanent_link_limit;
    if (rule == DeratingRule::table) {
        const auto row = std::find_if(hot_rows.begin(), hot_rows.end(),
                                      [&](const HotRow& each) { return each.celsius * 1000 >= millidegrees; });
        return screened ? row->screened : row->unscreened;
    }
    const auto growth = attenuation_growth(millidegrees, screened);
    const auto full_length = permanent_link_limit.count();
    if (rule == DeratingRule::linear) return Length::from_count(full_length * (million - growth) / million);
    return Length::from_count(full_length * million / (million + growth));
}

Citation derating_source(DeratingRule rule) {
    if (rule == DeratingRule::table) return {"TIA", "568", "annex on higher temperatures", Standing::memory};
    if (rule == DeratingRule::linear) return {"TIA / ISO/IEC", "568-C.2 / 11801", "clause 6.4.7, linear rule"};
    return {"TIA", "568-C.2", "clause 6.4.7, quotient of attenuation", Standing::computed};
}

std::optional<base::Length> combined_cords(base::Length horizontal, int awg) {
    using namespace copper_detail;
    const auto cord = gauge(awg);
    if (!cord) return std::nullopt;
    const auto left = std::max((102_m - horizontal), 0_m);
    return Length::from_count(left.count() * 10 / cord->loss_tenths);
}

std::optional<base::Length> work_area_cord(base::Length horizontal, int awg) {
    using namespace copper_detail;
    const auto cord = gauge(awg);
    if (!cord) return std::nullopt;
    return std::clamp(*combined_cords(horizontal, awg) - cord->room, 0_m, cord->cap);
}

base::Length horizontal_given_up(base::Length extra_cord) { return extra_cord * 3 / 2; }

}  // namespace streamwright::standards
