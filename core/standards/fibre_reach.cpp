#include "core/standards/fibre_reach.h"

#include <array>

namespace streamwright::standards {

namespace fibre_reach_detail {

using namespace base::literals;
using enum FibreGrade;

constexpr Citation ieee(std::string_view clause, Standing standing = Standing::read) {
    return {"IEEE", "802.3", clause, standing};
}

// tests/reference/network-values.csv, rows FIB-001 to FIB-029.
constexpr std::array rows{
    FibreReach{"1000BASE-SX", om1, 2_m, 275_m, ieee("clause 38")},
    FibreReach{"1000BASE-SX", om2, 2_m, 550_m, ieee("clause 38")},
    FibreReach{"1000BASE-SX", om3, 2_m, 550_m, ieee("clause 38", Standing::memory)},
    FibreReach{"1000BASE-SX", om4, 2_m, 550_m, ieee("clause 38", Standing::memory)},
    FibreReach{"1000BASE-SX", om5, 2_m, 550_m, ieee("clause 38", Standing::memory)},
    FibreReach{"1000BASE-LX", om1, 2_m, 550_m, ieee("clause 38")},
    FibreReach{"1000BASE-LX", om2, 2_m, 550_m, ieee("clause 38")},
    FibreReach{"1000BASE-LX", os1a, 2_m, 5_km, ieee("clause 38")},
    FibreReach{"1000BASE-LX", os2, 2_m, 5_km, ieee("clause 38")},
    FibreReach{"1000BASE-LX10", os1a, 2_m, 10_km, ieee("clause 59", Standing::memory)},
    FibreReach{"1000BASE-LX10", os2, 2_m, 10_km, ieee("clause 59", Standing::memory)},
    FibreReach{"10GBASE-SR", om1, 2_m, 33_m, ieee("clause 52")},
    FibreReach{"10GBASE-SR", om2, 2_m, 82_m, ieee("clause 52")},
    FibreReach{"10GBASE-SR", om3, 2_m, 300_m, ieee("clause 52")},
    FibreReach{"10GBASE-SR", om4, 2_m, 400_m, ieee("clause 52")},
    FibreReach{"10GBASE-SR", om5, 2_m, 400_m, ieee("clause 52")},
    FibreReach{"10GBASE-LRM", om1, 500_mm, 220_m, ieee("clause 68")},
    FibreReach{"10GBASE-LRM", om2, 500_mm, 220_m, ieee("clause 68")},
    FibreReach{"10GBASE-LRM", om3, 500_mm, 220_m, ieee("clause 68")},
    FibreReach{"10GBASE-LR", os1a, 2_m, 10_km, ieee("clause 52")},
    FibreReach{"10GBASE-LR", os2, 2_m, 10_km, ieee("clause 52")},
    FibreReach{"10GBASE-ER", os1a, 2_m, 40_km, ieee("clause 52")},
    FibreReach{"10GBASE-ER", os2, 2_m, 40_km, ieee("clause 52")},
    FibreReach{"25GBASE-SR", om3, 500_mm, 70_m, ieee("clause 112")},
    FibreReach{"25GBASE-SR", om4, 500_mm, 100_m, ieee("clause 112")},
    FibreReach{"25GBASE-SR", om5, 500_mm, 100_m, ieee("clause 112")},
    FibreReach{"25GBASE-LR", os2, 2_m, 10_km, ieee("clause 114", Standing::memory)},
    FibreReach{"40GBASE-SR4", om3, 500_mm, 100_m, ieee("clause 86")},
    FibreReach{"40GBASE-SR4", om4, 500_mm, 150_m, ieee("clause 86")},
    FibreReach{"40GBASE-SR4", om5, 500_mm, 150_m, ieee("clause 86")},
    FibreReach{"40GBASE-LR4", os2, 2_m, 10_km, ieee("clause 87")},
    FibreReach{"40GBASE-LR4", os1a, 2_m, 4_km, ieee("clause 87")},
    FibreReach{"100GBASE-SR10", om3, 500_mm, 100_m, ieee("clause 86")},
    FibreReach{"100GBASE-SR10", om4, 500_mm, 150_m, ieee("clause 86")},
    FibreReach{"100GBASE-SR4", om3, 500_mm, 70_m, ieee("clause 95")},
    FibreReach{"100GBASE-SR4", om4, 500_mm, 100_m, ieee("clause 95")},
    FibreReach{"100GBASE-SR4", om5, 500_mm, 100_m, ieee("clause 95")},
    FibreReach{"100GBASE-LR4", os2, 2_m, 10_km, ieee("clause 88", Standing::memory)},
};

}  // namespace fibre_reach_detail

bool is_singlemode(FibreGrade grade) { return grade == FibreGrade::os1a || grade == FibreGrade::os2; }

std::span<const FibreReach> fibre_reaches() { return fibre_reach_detail::rows; }

std::optional<FibreReach> fibre_reach(std::string_view phy, FibreGrade grade) {
    for (const auto& row : fibre_reach_detail::rows)
        if (row.phy == phy && row.grade == grade) return row;
    return std::nullopt;
}

}  // namespace streamwright::standards
