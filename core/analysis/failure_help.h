// What the rules about failures share: what fails, named, and which pictures the design asks to outlive it.
#pragma once

#include "core/analysis/rule_help.h"

#include <map>
#include <vector>

namespace streamwright::analysis {

/// The cable, the device, or the duct by its name.
base::Value failing_name(const graph::Wiring& wiring, const Failing& failing);
/// Where the badge stands; all cables of a duct.
std::vector<Subject> failing_subjects(const graph::Wiring& wiring, const Failing& failing);
/// Whether pictures of the preset (an index into LinkLoads::presets) must outlive failures.
bool must_outlive(const graph::Wiring& wiring, const LinkLoads& loads, int preset);

/// The subscriptions in the order of their indices.
std::vector<const model::Subscription*> subscriptions_by_index(const graph::Wiring& wiring);

}  // namespace streamwright::analysis
