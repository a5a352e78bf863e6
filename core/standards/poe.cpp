#include "core/standards/poe.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace streamwright::standards {

namespace poe_detail {

using namespace base::literals;

constexpr Citation table{"IEEE", "802.3", "clauses 33 and 145, class tables"};

constexpr std::array classes{
    PoeClass{0, 1, 2, 15'400_mW, 12'950_mW, table}, PoeClass{1, 1, 2, 4'000_mW, 3'840_mW, table},
    PoeClass{2, 1, 2, 7'000_mW, 6'490_mW, table},   PoeClass{3, 1, 2, 15'400_mW, 12'950_mW, table},
    PoeClass{4, 2, 2, 30'000_mW, 25'500_mW, table}, PoeClass{5, 3, 4, 45'000_mW, 40'000_mW, table},
    PoeClass{6, 3, 4, 60'000_mW, 51'000_mW, table}, PoeClass{7, 4, 4, 75'000_mW, 62'000_mW, table},
    PoeClass{8, 4, 4, 90'000_mW, 71'300_mW, table},
};

constexpr std::array types{
    PoeType{1, 44'000, 57'000, 37'000, 350, 20'000, {"IEEE", "802.3", "clause 33"}},
    PoeType{2, 50'000, 57'000, 42'500, 600, 12'500, {"IEEE", "802.3", "clause 33"}},
    PoeType{3, 50'000, 57'000, 42'500, 600, 6'250, {"IEEE", "802.3", "clause 145"}},
    PoeType{4, 52'000, 57'000, 41'100, 960, 6'250, {"IEEE", "802.3", "clause 145"}},
};

/// Solid annealed copper at 20 degrees C, from the ASTM B258 diameters 0.127 x 92^((36-n)/39) mm.
struct Conductor {
    int awg;
    std::int64_t microohm_per_m;
};
constexpr std::array conductors{Conductor{22, 52'960}, Conductor{23, 66'790}, Conductor{24, 84'220},
                                Conductor{26, 133'900}, Conductor{28, 213'000}};

PoeFlow flow(double amperes, double volts, double ohms) {
    const double supplied = volts * amperes, lost = amperes * amperes * ohms;
    const auto milliwatts = [](double watts) { return base::Power::from_count(std::llround(watts * 1000)); };
    PoeFlow out;
    out.current_ua = std::llround(amperes * 1e6);
    out.device_mv = std::llround((volts - amperes * ohms) * 1000);
    out.at_supply = milliwatts(supplied);
    out.lost = milliwatts(lost);
    out.at_device = milliwatts(supplied - lost);
    return out;
}

}  // namespace poe_detail

std::span<const PoeClass> poe_classes() { return poe_detail::classes; }

const PoeClass* poe_class(int number) {
    const bool known = number >= 0 && number < static_cast<int>(poe_detail::classes.size());
    return known ? &poe_detail::classes[static_cast<std::size_t>(number)] : nullptr;
}

std::optional<int> class_for_draw(base::Power at_device) {
    for (const auto& row : poe_detail::classes)
        if (row.number > 0 && row.at_device >= at_device) return row.number;
    return std::nullopt;
}

const PoeType* poe_type(int number) {
    const bool known = number >= 1 && number <= static_cast<int>(poe_detail::types.size());
    return known ? &poe_detail::types[static_cast<std::size_t>(number - 1)] : nullptr;
}

std::optional<std::int64_t> loop_microohm(int awg, base::Length channel, int pairs, base::Temperature copper) {
    const auto& rows = poe_detail::conductors;
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const auto& each) { return each.awg == awg; });
    if (row == rows.end() || (pairs != 2 && pairs != 4)) return std::nullopt;
    // Out and back over pairs / 2 pairs each way, two conductors a pair: r x L x 2 / pairs.
    const double cold =
        static_cast<double>(row->microohm_per_m) * static_cast<double>(channel.count()) / 1e6 * 2 / pairs;
    const double warmer = static_cast<double>(copper.count() - 20'000) / 1000;
    return std::llround(cold * (1 + 0.00393 * warmer));
}

std::optional<PoeFlow> feed_device(base::Power at_device, std::int64_t supply_mv, std::int64_t microohm) {
    const double volts = static_cast<double>(supply_mv) / 1000, watts = static_cast<double>(at_device.count()) / 1000;
    const double ohms = static_cast<double>(microohm) / 1e6;
    if (volts <= 0 || watts < 0 || ohms < 0) return std::nullopt;
    const double inside = volts * volts - 4 * watts * ohms;
    if (inside < 0) return std::nullopt;
    // 2 P / (V + sqrt(V^2 - 4 P R)) is the same root as (V - sqrt(...)) / (2 R), and holds for R = 0 as well.
    return poe_detail::flow(2 * watts / (volts + std::sqrt(inside)), volts, ohms);
}

PoeFlow feed_from_supply(base::Power at_supply, std::int64_t supply_mv, std::int64_t microohm) {
    const double volts = static_cast<double>(supply_mv) / 1000;
    const double watts = static_cast<double>(at_supply.count()) / 1000;
    return poe_detail::flow(volts > 0 ? watts / volts : 0, volts, static_cast<double>(microohm) / 1e6);
}

}  // namespace streamwright::standards
