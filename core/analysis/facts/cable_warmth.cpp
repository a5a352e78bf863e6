#include "core/analysis/facts/cable_warmth.h"

#include <algorithm>

namespace streamwright::analysis {

namespace cable_warmth_detail {

bool has_side(const graph::Wiring& wiring, const std::optional<graph::PortAt>& port, catalogue::PoeSide side) {
    if (!port) return false;
    const auto& poe = wiring.port_type(*port).poe;
    return poe && poe->side == side;
}

}  // namespace cable_warmth_detail

bool carries_power(const graph::Wiring& wiring, const graph::Run& run) {
    using namespace cable_warmth_detail;
    using enum catalogue::PoeSide;
    return (has_side(wiring, run.a, supplies) && has_side(wiring, run.b, takes)) ||
           (has_side(wiring, run.b, supplies) && has_side(wiring, run.a, takes));
}

CableWarmth cable_warmth(const graph::Wiring& wiring, const graph::Run& run) {
    using namespace base::literals;
    const auto& settings = wiring.design.settings();
    CableWarmth warmth{std::max(20_degC, settings.cable_temperature.value_or(20_degC)), {}};
    for (const auto& end : {run.a, run.b}) {
        const auto* room = end ? wiring.devices[static_cast<std::size_t>(end->device)].room : nullptr;
        if (room && room->temperature) warmth.way = std::max(warmth.way, *room->temperature);
    }
    if (carries_power(wiring, run)) warmth.rise = settings.cabling.bundle_rise;
    return warmth;
}

}  // namespace streamwright::analysis
