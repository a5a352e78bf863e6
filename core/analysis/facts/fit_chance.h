// Will streams fit on the members of an aggregation group? Each stream stays on one member (IEEE 802.1AX 6.2.4); where
// the choice is not known it is taken as uniform and independent, and the chance that no member is overfull is counted
// exactly for small groups and drawn by lot for larger ones.
#pragma once

#include "core/base/units.h"

#include <span>
#include <stop_token>

namespace streamwright::analysis {

/// Streams of one rate.
struct AlikeStreams {
    base::BitRate wire;
    int count = 0;
};

/// A probability, 0 to 1.
struct Probability {
    double value = 0;
    friend auto operator<=>(const Probability&, const Probability&) = default;
};

/// The chance that every member holds what falls on it.
struct FitChance {
    Probability fits{1};
    Probability least{1}, most{1};  // 95 % interval of what was drawn; all three alike where counted
    int draws = 0;                  // 0: counted
    friend bool operator==(const FitChance&, const FitChance&) = default;
};

/// Counting may take this many steps, a step being one way to fill one member; beyond it the chance is drawn.
inline constexpr double most_counting_steps = 5e6;
inline constexpr int chance_draws = 20'000;

/// Counted: f(v, k) is the chance that v streams fit on k members; the number on the first of them is binomial, class
/// by class (multinomial distribution, common mathematics), so f(v, k) = sum over u of P(u of v at 1/k) f(v - u, k -
/// 1). Drawn: the share of `chance_draws` seeded draws, with Wilson's score interval (1927, from memory). A stopped
/// draw answers with what it has.
FitChance fit_chance(std::span<const AlikeStreams> streams, int members, base::BitRate each,
                     const std::stop_token& stop = {});
/// Always by lot, whatever the size: what counting is compared with.
FitChance drawn_fit_chance(std::span<const AlikeStreams> streams, int members, base::BitRate each,
                           const std::stop_token& stop = {});

}  // namespace streamwright::analysis
