#include "core/standards/poe.h"

#include <array>
#include <cmath>

namespace streamwright::standards {

namespace poe_detail {

using namespace base::literals;

constexpr Citation source{"IEEE", "802.3", "clauses 33 and 145"};

// tests/reference/network-values.csv, rows POE-015 to POE-032.
constexpr std::array classes{
    PoeClass{0, 15400_mW, 12950_mW, 2, source}, PoeClass{1, 4000_mW, 3840_mW, 2, source},
    PoeClass{2, 7000_mW, 6490_mW, 2, source},   PoeClass{3, 15400_mW, 12950_mW, 2, source},
    PoeClass{4, 30_W, 25500_mW, 2, source},     PoeClass{5, 45_W, 40_W, 4, source},
    PoeClass{6, 60_W, 51_W, 4, source},         PoeClass{7, 75_W, 62_W, 4, source},
    PoeClass{8, 90_W, 71300_mW, 4, source},
};

}  // namespace poe_detail

std::span<const PoeClass> poe_classes() { return poe_detail::classes; }

std::optional<PoeClass> poe_class(int number) {
    if (number < 0 || number >= static_cast<int>(poe_detail::classes.size())) return std::nullopt;
    return poe_detail::classes[static_cast<std::size_t>(number)];
}

std::optional<PoeFeedSolution> solve_feed(base::Power drawn, std::int64_t supply_mV, std::int64_t loop_mohm) {
    const double volts = static_cast<double>(supply_mV) / 1000.0;
    const double ohms = static_cast<double>(loop_mohm) / 1000.0;
    const double watts = static_cast<double>(drawn.count()) / 1000.0;
    if (ohms <= 0) return PoeFeedSolution{drawn, {}};
    const double inside = volts * volts - 4 * watts * ohms;
    if (inside < 0) return std::nullopt;
    const double amperes = (volts - std::sqrt(inside)) / (2 * ohms);
    const auto supplied = base::Power::from_count(std::llround(volts * amperes * 1000.0));
    return PoeFeedSolution{supplied, supplied - drawn};
}

}  // namespace streamwright::standards
