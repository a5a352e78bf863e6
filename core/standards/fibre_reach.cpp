#include "core/standards/fibre_reach.h"

#include <algorithm>
#include <array>

namespace streamwright::standards {

namespace fibre_reach_detail {

using namespace base::literals;
using enum FibreGrade;

constexpr Citation clause(std::string_view number, Standing standing = Standing::read) {
    return {"IEEE", "802.3", number, standing};
}
constexpr Citation c38 = clause("clause 38");
constexpr Citation c52 = clause("clause 52");
constexpr Citation c68 = clause("clause 68");
constexpr Citation c86 = clause("clause 86");
constexpr Citation c95 = clause("clause 95");
constexpr Citation c112 = clause("clause 112");
constexpr Citation c138 = clause("clause 138");

constexpr std::array reaches{
    FibreReach{"1000BASE-SX", old_62_5, 2_m, 220_m, c38},
    FibreReach{"1000BASE-SX", om1, 2_m, 275_m, c38},
    FibreReach{"1000BASE-SX", old_50, 2_m, 500_m, c38},
    FibreReach{"1000BASE-SX", om2, 2_m, 550_m, c38},
    // The clause ends with 500 MHz.km fibre; better fibre keeps its figure.
    FibreReach{"1000BASE-SX", om3, 2_m, 550_m, clause("clause 38", Standing::memory)},
    FibreReach{"1000BASE-SX", om4, 2_m, 550_m, clause("clause 38", Standing::memory)},
    FibreReach{"1000BASE-SX", om5, 2_m, 550_m, clause("clause 38", Standing::memory)},
    // OM1 and OM2 need a mode-conditioning cord.
    FibreReach{"1000BASE-LX", om1, 2_m, 550_m, c38},
    FibreReach{"1000BASE-LX", om2, 2_m, 550_m, c38},
    FibreReach{"1000BASE-LX", om3, 2_m, 550_m, c38},
    FibreReach{"1000BASE-LX", om4, 2_m, 550_m, c38},
    FibreReach{"1000BASE-LX", os1a, 2_m, 5_km, c38},
    FibreReach{"1000BASE-LX", os2, 2_m, 5_km, c38},
    FibreReach{"1000BASE-LX10", os1a, 0_m, 10_km, clause("clause 59", Standing::memory)},
    FibreReach{"1000BASE-LX10", os2, 0_m, 10_km, clause("clause 59", Standing::memory)},
    // One strand both ways; -D sends at 1490 nm, -U at 1310 nm.
    FibreReach{"1000BASE-BX10-D", os1a, 500_mm, 10_km, clause("clause 59", Standing::memory)},
    FibreReach{"1000BASE-BX10-D", os2, 500_mm, 10_km, clause("clause 59", Standing::memory)},
    FibreReach{"1000BASE-BX10-U", os1a, 500_mm, 10_km, clause("clause 59", Standing::memory)},
    FibreReach{"1000BASE-BX10-U", os2, 500_mm, 10_km, clause("clause 59", Standing::memory)},
    FibreReach{"10GBASE-SR", old_62_5, 0_m, 26_m, clause("clause 52", Standing::memory)},
    FibreReach{"10GBASE-SR", om1, 0_m, 33_m, c52},
    FibreReach{"10GBASE-SR", om2, 0_m, 82_m, c52},
    FibreReach{"10GBASE-SR", om3, 0_m, 300_m, c52},
    FibreReach{"10GBASE-SR", om4, 0_m, 400_m, c52},
    FibreReach{"10GBASE-SR", om5, 0_m, 400_m, c52},
    FibreReach{"10GBASE-LRM", om1, 0_m, 220_m, c68},
    FibreReach{"10GBASE-LRM", om2, 0_m, 220_m, c68},
    FibreReach{"10GBASE-LRM", om3, 0_m, 220_m, c68},
    FibreReach{"10GBASE-LRM", old_50, 0_m, 100_m, clause("clause 68", Standing::memory)},
    FibreReach{"10GBASE-LR", os1a, 0_m, 10_km, c52},
    FibreReach{"10GBASE-LR", os2, 0_m, 10_km, c52},
    FibreReach{"10GBASE-ER", os1a, 0_m, 40_km, c52},
    FibreReach{"10GBASE-ER", os2, 0_m, 40_km, c52},
    FibreReach{"25GBASE-SR", om3, 500_mm, 70_m, c112},
    FibreReach{"25GBASE-SR", om4, 500_mm, 100_m, c112},
    FibreReach{"25GBASE-SR", om5, 500_mm, 100_m, c112},
    FibreReach{"25GBASE-LR", os2, 0_m, 10_km, clause("clause 114", Standing::memory)},
    FibreReach{"40GBASE-SR4", om3, 0_m, 100_m, c86},
    FibreReach{"40GBASE-SR4", om4, 0_m, 150_m, c86},
    FibreReach{"40GBASE-SR4", om5, 0_m, 150_m, c86},
    FibreReach{"40GBASE-LR4", os2, 2_m, 10_km, clause("clause 87")},
    FibreReach{"40GBASE-LR4", os1a, 2_m, 4_km, clause("clause 87, information")},
    FibreReach{"100GBASE-SR10", om3, 0_m, 100_m, c86},
    FibreReach{"100GBASE-SR10", om4, 0_m, 150_m, c86},
    FibreReach{"100GBASE-SR4", om3, 0_m, 70_m, c95},
    FibreReach{"100GBASE-SR4", om4, 0_m, 100_m, c95},
    FibreReach{"100GBASE-SR4", om5, 0_m, 100_m, c95},
    FibreReach{"100GBASE-LR4", os2, 0_m, 10_km, clause("clause 88", Standing::memory)},
    FibreReach{"400GBASE-SR8", om3, 500_mm, 70_m, c138},
    FibreReach{"400GBASE-SR8", om4, 500_mm, 100_m, c138},
};

}  // namespace fibre_reach_detail

std::span<const FibreReach> fibre_reaches() { return fibre_reach_detail::reaches; }

const FibreReach* fibre_reach(std::string_view phy, FibreGrade grade) {
    const auto& rows = fibre_reach_detail::reaches;
    const auto found = std::find_if(rows.begin(), rows.end(),
                                    [&](const FibreReach& row) { return row.phy == phy && row.grade == grade; });
    return found == rows.end() ? nullptr : &*found;
}

bool is_fibre_phy(std::string_view phy) {
    const auto& rows = fibre_reach_detail::reaches;
    return std::any_of(rows.begin(), rows.end(), [&](const FibreReach& row) { return row.phy == phy; });
}

}  // namespace streamwright::standards
