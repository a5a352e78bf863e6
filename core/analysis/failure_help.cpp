#include "core/analysis/failure_help.h"

#include <algorithm>

namespace streamwright::analysis {

base::Value failing_name(const graph::Wiring& wiring, const Failing& failing) {
    if (failing.cable >= 0) return named(cable_id(wiring, failing.cable));
    if (failing.device >= 0) return named(device_id(wiring, failing.device));
    return failing.duct;
}

std::vector<Subject> failing_subjects(const graph::Wiring& wiring, const Failing& failing) {
    if (failing.cable >= 0) return {cable_id(wiring, failing.cable)};
    if (failing.device >= 0) return {device_id(wiring, failing.device)};
    std::vector<Subject> cables;
    for (const int cable : failing.lost.cables) cables.emplace_back(cable_id(wiring, cable));
    return cables;
}

bool must_outlive(const graph::Wiring& wiring, const LinkLoads& loads, int preset) {
    const auto& asked = wiring.design.settings().survive_presets;
    if (preset < 0) return false;
    return asked.empty() || std::find(asked.begin(), asked.end(), loads.presets[at(preset)].preset) != asked.end();
}

std::vector<const model::Subscription*> subscriptions_by_index(const graph::Wiring& wiring) {
    std::vector<const model::Subscription*> rows;
    for (const auto& row : wiring.design.subscriptions) rows.push_back(&row);
    return rows;
}

}  // namespace streamwright::analysis
