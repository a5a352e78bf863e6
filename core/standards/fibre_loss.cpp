#include "core/standards/fibre_loss.h"

#include <array>

namespace streamwright::standards {

namespace fibre_loss_detail {

using namespace base::literals;
using enum FibreGrade;

constexpr Citation ieee(std::string_view clause, Standing standing) { return {"IEEE", "802.3", clause, standing}; }
constexpr auto read = Standing::read;
constexpr auto memory = Standing::memory;

// tests/reference/network-values.csv, rows LOSS-001 to LOSS-020.
constexpr std::array budgets{
    LossBudget{"1000BASE-SX", om1, 2600_mdB, ieee("clause 38", memory)},
    LossBudget{"1000BASE-SX", om2, 3560_mdB, ieee("clause 38", memory)},
    LossBudget{"1000BASE-LX", om1, 2350_mdB, ieee("clause 38", memory)},
    LossBudget{"1000BASE-LX", om2, 2350_mdB, ieee("clause 38", memory)},
    LossBudget{"1000BASE-LX", os1a, 4570_mdB, ieee("clause 38", memory)},
    LossBudget{"1000BASE-LX", os2, 4570_mdB, ieee("clause 38", memory)},
    LossBudget{"10GBASE-SR", om1, 1600_mdB, ieee("clause 52", memory)},
    LossBudget{"10GBASE-SR", om2, 1800_mdB, ieee("clause 52", memory)},
    LossBudget{"10GBASE-SR", om3, 2600_mdB, ieee("clause 52", read)},
    LossBudget{"10GBASE-SR", om4, 2900_mdB, ieee("clause 52", read)},
    LossBudget{"10GBASE-LRM", om1, 1900_mdB, ieee("clause 68", memory)},
    LossBudget{"10GBASE-LRM", om2, 1900_mdB, ieee("clause 68", memory)},
    LossBudget{"10GBASE-LRM", om3, 1900_mdB, ieee("clause 68", memory)},
    LossBudget{"10GBASE-LR", os1a, 6200_mdB, ieee("clause 52", memory)},
    LossBudget{"10GBASE-LR", os2, 6200_mdB, ieee("clause 52", memory)},
    LossBudget{"10GBASE-ER", os2, 10900_mdB, ieee("clause 52", memory)},
    LossBudget{"25GBASE-SR", om3, 1800_mdB, ieee("clause 112", read)},
    LossBudget{"25GBASE-SR", om4, 1900_mdB, ieee("clause 112", read)},
    LossBudget{"25GBASE-SR", om5, 1900_mdB, ieee("clause 112", read)},
    LossBudget{"25GBASE-LR", os2, 6300_mdB, ieee("clause 114", memory)},
    LossBudget{"40GBASE-SR4", om3, 1900_mdB, ieee("clause 86", memory)},
    LossBudget{"40GBASE-SR4", om4, 1500_mdB, ieee("clause 86", read)},
    LossBudget{"40GBASE-LR4", os2, 6700_mdB, ieee("clause 87", read)},
    LossBudget{"40GBASE-LR4", os1a, 6700_mdB, ieee("clause 87", read)},
    LossBudget{"100GBASE-SR4", om3, 1800_mdB, ieee("clause 95", memory)},
    LossBudget{"100GBASE-SR4", om4, 1900_mdB, ieee("clause 95", memory)},
    LossBudget{"100GBASE-LR4", os2, 6300_mdB, ieee("clause 88", memory)},
};

constexpr Citation tia{"TIA", "568.3-D", "transmission table"};
constexpr Citation tia_memory{"TIA", "568.3-D", "transmission table", Standing::memory};

}  // namespace fibre_loss_detail

std::optional<LossBudget> loss_budget(std::string_view phy, FibreGrade grade) {
    for (const auto& row : fibre_loss_detail::budgets)
        if (row.phy == phy && row.grade == grade) return row;
    return std::nullopt;
}

std::optional<Attenuation> attenuation(FibreGrade grade, int wavelength_nm) {
    using namespace base::literals;
    const bool long_wave = wavelength_nm >= 1260 && wavelength_nm <= 1625;
    if (grade == FibreGrade::os1a && long_wave) return Attenuation{1000_mdB, fibre_loss_detail::tia};
    if (grade == FibreGrade::os2 && long_wave) return Attenuation{400_mdB, fibre_loss_detail::tia};
    if (is_singlemode(grade)) return std::nullopt;
    if (wavelength_nm == 850) {
        const bool older = grade == FibreGrade::om1 || grade == FibreGrade::om2;
        return Attenuation{older ? 3500_mdB : 3000_mdB, fibre_loss_detail::tia};
    }
    if (wavelength_nm == 1300 || wavelength_nm == 1310) return Attenuation{1500_mdB, fibre_loss_detail::tia_memory};
    return std::nullopt;
}

base::Loss channel_loss(base::Length length, base::Loss per_km, int mated_pairs, int splices) {
    constexpr std::int64_t um_per_km = 1000000000;
    __extension__ using Wide = __int128;
    const Wide fibre = (static_cast<Wide>(length.count()) * per_km.count() + um_per_km - 1) / um_per_km;
    return base::Loss::from_count(static_cast<std::int64_t>(fibre)) + mated_pair_most * mated_pairs +
           splice_most * splices;
}

}  // namespace streamwright::standards
