// How warm a run of copper is planned to be: its way, and the rise of a bundle of powered cables.
#pragma once

#include "core/base/units.h"
#include "core/graph/runs.h"

namespace streamwright::analysis {

struct CableWarmth {
    base::Temperature way;   // hottest planned of the design and of the rooms at its ends; 20 degrees C at least
    base::Temperature rise;  // where one end feeds the other over the cable
    base::Temperature total() const { return way + rise; }
};

CableWarmth cable_warmth(const graph::Wiring& wiring, const graph::Run& run);

/// One end supplies PoE and the other takes it, by their types.
bool carries_power(const graph::Wiring& wiring, const graph::Run& run);

}  // namespace streamwright::analysis
