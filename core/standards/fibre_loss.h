// What an optical channel may lose, and what its fibre, mated pairs and splices do lose. A link must keep both its
// reach and its budget: 40GBASE-SR4 at 150 m has only 1.0 dB left for joints, which two 0.75 dB pairs break.
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"
#include "core/standards/fibre_reach.h"

#include <span>
#include <string_view>

namespace streamwright::standards {

/// Most insertion loss of the whole channel, stated for its full reach.
struct LossBudget {
    std::string_view phy;
    FibreGrade grade;
    base::Length reach;
    base::Loss budget;
    Citation source;
};
std::span<const LossBudget> loss_budgets();
const LossBudget* loss_budget(std::string_view phy, FibreGrade grade);  // null: not known

/// Most attenuation of cabled fibre.
struct Attenuation {
    FibreGrade grade;
    int wavelength_nm;
    base::Loss per_km;
    Citation source;
};
std::span<const Attenuation> attenuations();
const Attenuation* attenuation(FibreGrade grade, int wavelength_nm);  // null: not known
/// The row that holds for the light of a transceiver: multimode within 60 nm of a stated wavelength, single-mode the
/// nearest row from 1260 to 1625 nm (its figure is the same from 1310 to 1550 nm). Null: not known.
const Attenuation* attenuation_near(FibreGrade grade, int wavelength_nm);

/// Most that any mated pair of connectors and any splice may lose.
inline constexpr base::Loss mated_pair_loss = base::Loss::from_count(750);
inline constexpr Citation mated_pair_source{"TIA", "568.3-D", "connectors, random mating"};
inline constexpr base::Loss splice_loss = base::Loss::from_count(300);
inline constexpr Citation splice_source{"TIA", "568.3-D", "splices, fusion or mechanical"};

struct FibreChannel {
    base::Length length;
    base::Loss per_km;
    int mated_pairs = 2;
    base::Loss per_pair = mated_pair_loss;
    int splices = 0;
    base::Loss per_splice = splice_loss;
};
/// length x per_km + pairs + splices, rounded up to thousandths of a decibel.
base::Loss channel_loss(const FibreChannel& channel);

}  // namespace streamwright::standards
