// Failures on demand: of everything that can fail, for the document that lists them, and of things that someone names.
#pragma once

#include "core/analysis/facts_set.h"
#include "core/base/result.h"

#include <span>
#include <string>

namespace streamwright::analysis {

/// Nothing if stopped.
std::optional<Failures> find_every_failure(const Facts& facts, const std::stop_token& stop = {},
                                           const Progress& progress = {});

/// What is meant by ids or tags of cables and devices and by names of ducts, with all that dies with it; a name that
/// means nothing, or more than one thing, is refused.
base::Result<graph::Lost> named_failures(const Facts& facts, std::span<const std::string> names);

/// The design without those rows. Streams and subscriptions stay, though they may come from nowhere.
model::Design design_after(const Facts& facts, const graph::Lost& lost);

}  // namespace streamwright::analysis
