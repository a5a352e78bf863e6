// The network drawing's words and figures, read from the facts of a design.
#pragma once

#include "core/analysis/facts_set.h"
#include "core/deliver/drawing/network_view.h"

namespace streamwright::deliver {

NetworkView network_view(const analysis::Facts& facts, const base::NumberStyle& numbers);

}  // namespace streamwright::deliver
