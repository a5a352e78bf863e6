// Optical loss of a channel against the budget of its physical layer: fibre, mated pairs and splices added up.
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"
#include "core/standards/fibre_reach.h"

#include <optional>
#include <string_view>

namespace streamwright::standards {

struct LossBudget {
    std::string_view phy;
    FibreGrade grade;
    base::Loss most;
    Citation source;
};
std::optional<LossBudget> loss_budget(std::string_view phy, FibreGrade grade);

/// Greatest attenuation of the cabled fibre for a kilometre at that wavelength (850, 1300, 1310 or 1550 nm).
struct Attenuation {
    base::Loss per_km;
    Citation source;
};
std::optional<Attenuation> attenuation(FibreGrade grade, int wavelength_nm);

inline constexpr base::Loss mated_pair_most = base::Loss::from_count(750);  // TIA-568.3-D
inline constexpr base::Loss splice_most = base::Loss::from_count(300);      // TIA-568.3-D

/// length x attenuation + pairs x 0.75 dB + splices x 0.3 dB, rounded up to a thousandth of a decibel.
base::Loss channel_loss(base::Length length, base::Loss per_km, int mated_pairs, int splices);

}  // namespace streamwright::standards
