#include "core/standards/fibre_loss.h"

#include <algorithm>
#include <array>
#include <cstdlib>

namespace streamwright::standards {

namespace fibre_loss_detail {

using namespace base::literals;
using enum FibreGrade;

constexpr Citation clause(std::string_view number, Standing standing = Standing::memory) {
    return {"IEEE", "802.3", number, standing};
}

constexpr std::array budgets{
    LossBudget{"1000BASE-SX", om1, 275_m, 2600_mdB, clause("clause 38")},
    LossBudget{"1000BASE-SX", om2, 550_m, 3560_mdB, clause("clause 38")},
    LossBudget{"1000BASE-LX", om1, 550_m, 2350_mdB, clause("clause 38")},
    LossBudget{"1000BASE-LX", om2, 550_m, 2350_mdB, clause("clause 38")},
    LossBudget{"1000BASE-LX", om3, 550_m, 2350_mdB, clause("clause 38")},
    LossBudget{"1000BASE-LX", os1a, 5_km, 4570_mdB, clause("clause 38")},
    LossBudget{"1000BASE-LX", os2, 5_km, 4570_mdB, clause("clause 38")},
    LossBudget{"10GBASE-SR", om3, 300_m, 2600_mdB, clause("clause 52", Standing::read)},
    LossBudget{"10GBASE-SR", om4, 400_m, 2900_mdB, clause("clause 52", Standing::read)},
    LossBudget{"10GBASE-SR", om2, 82_m, 1800_mdB, clause("clause 52")},
    LossBudget{"10GBASE-SR", om1, 33_m, 1600_mdB, clause("clause 52")},
    LossBudget{"10GBASE-LRM", om1, 220_m, 1900_mdB, clause("clause 68")},
    LossBudget{"10GBASE-LRM", om2, 220_m, 1900_mdB, clause("clause 68")},
    LossBudget{"10GBASE-LRM", om3, 220_m, 1900_mdB, clause("clause 68")},
    LossBudget{"10GBASE-LR", os1a, 10_km, 6200_mdB, clause("clause 52")},
    LossBudget{"10GBASE-LR", os2, 10_km, 6200_mdB, clause("clause 52")},
    LossBudget{"10GBASE-ER", os1a, 40_km, 10900_mdB, clause("clause 52")},
    LossBudget{"10GBASE-ER", os2, 40_km, 10900_mdB, clause("clause 52")},
    LossBudget{"25GBASE-SR", om3, 70_m, 1800_mdB, clause("clause 112", Standing::read)},
    LossBudget{"25GBASE-SR", om4, 100_m, 1900_mdB, clause("clause 112", Standing::read)},
    LossBudget{"25GBASE-SR", om5, 100_m, 1900_mdB, clause("clause 112", Standing::read)},
    LossBudget{"25GBASE-LR", os2, 10_km, 6300_mdB, clause("clause 114")},
    LossBudget{"40GBASE-SR4", om3, 100_m, 1900_mdB, clause("clause 86")},
    LossBudget{"40GBASE-SR4", om4, 150_m, 1500_mdB, clause("clause 86", Standing::read)},
    LossBudget{"40GBASE-LR4", os1a, 10_km, 6700_mdB, clause("clause 87", Standing::read)},
    LossBudget{"40GBASE-LR4", os2, 10_km, 6700_mdB, clause("clause 87", Standing::read)},
    LossBudget{"100GBASE-SR4", om3, 70_m, 1800_mdB, clause("clause 95")},
    LossBudget{"100GBASE-SR4", om4, 100_m, 1900_mdB, clause("clause 95")},
    LossBudget{"100GBASE-LR4", os2, 10_km, 6300_mdB, clause("clause 88")},
};

constexpr Citation table{"TIA", "568.3-D", "transmission table"};
constexpr Citation remembered{"TIA", "568.3-D", "transmission table", Standing::memory};
constexpr Citation with_iso{"TIA / ISO/IEC", "568.3-D / 11801-1", "transmission table"};

constexpr std::array per_km{
    Attenuation{om1, 850, 3500_mdB, table},       Attenuation{om2, 850, 3500_mdB, table},
    Attenuation{om3, 850, 3000_mdB, table},       Attenuation{om4, 850, 3000_mdB, table},
    Attenuation{om5, 850, 3000_mdB, table},       Attenuation{om5, 953, 2300_mdB, remembered},
    Attenuation{om1, 1300, 1500_mdB, remembered}, Attenuation{om2, 1300, 1500_mdB, remembered},
    Attenuation{om3, 1300, 1500_mdB, remembered}, Attenuation{om4, 1300, 1500_mdB, remembered},
    Attenuation{om5, 1300, 1500_mdB, remembered}, Attenuation{os1a, 1310, 1000_mdB, with_iso},
    Attenuation{os1a, 1383, 1000_mdB, with_iso},  Attenuation{os1a, 1550, 1000_mdB, with_iso},
    Attenuation{os2, 1310, 400_mdB, with_iso},    Attenuation{os2, 1383, 400_mdB, with_iso},
    Attenuation{os2, 1550, 400_mdB, with_iso},
};

}  // namespace fibre_loss_detail

std::span<const LossBudget> loss_budgets() { return fibre_loss_detail::budgets; }

const LossBudget* loss_budget(std::string_view phy, FibreGrade grade) {
    const auto& rows = fibre_loss_detail::budgets;
    const auto found = std::find_if(rows.begin(), rows.end(),
                                    [&](const LossBudget& row) { return row.phy == phy && row.grade == grade; });
    return found == rows.end() ? nullptr : &*found;
}

std::span<const Attenuation> attenuations() { return fibre_loss_detail::per_km; }

const Attenuation* attenuation(FibreGrade grade, int wavelength_nm) {
    const auto& rows = fibre_loss_detail::per_km;
    const auto found = std::find_if(rows.begin(), rows.end(), [&](const Attenuation& row) {
        return row.grade == grade && row.wavelength_nm == wavelength_nm;
    });
    return found == rows.end() ? nullptr : &*found;
}

const Attenuation* attenuation_near(FibreGrade grade, int wavelength_nm) {
    const bool single = !is_multimode(grade);
    if (single && (wavelength_nm < 1260 || wavelength_nm > 1625)) return nullptr;
    const Attenuation* nearest = nullptr;
    const auto off = [&](const Attenuation& row) { return std::abs(row.wavelength_nm - wavelength_nm); };
    for (const auto& row : fibre_loss_detail::per_km)
        if (row.grade == grade && (!nearest || off(row) < off(*nearest))) nearest = &row;
    return nearest && (single || off(*nearest) <= 60) ? nearest : nullptr;
}

base::Loss channel_loss(const FibreChannel& channel) {
    constexpr std::int64_t um_per_km = 1'000'000'000;
    __extension__ using Wide = __int128;
    const Wide scaled = Wide{channel.length.count()} * channel.per_km.count();
    const auto fibre = static_cast<std::int64_t>((scaled + um_per_km - 1) / um_per_km);
    return base::Loss::from_count(fibre) + channel.per_pair * channel.mated_pairs +
           channel.per_splice * channel.splices;
}

}  // namespace streamwright::standards
