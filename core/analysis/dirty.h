// The only place that says what an edit spoils.
#pragma once

#include "core/analysis/facts_set.h"
#include "core/model/delta.h"

namespace streamwright::analysis {

struct Spoilt {
    FactSet facts;             // to be computed again, then compared with the old
    bool wiring_seen = false;  // rules can see that the wiring changed; lengths they read from CableLengths alone
    bool findings = false;     // false: names, notes or drawing only; nothing to run
};

Spoilt spoilt_by(const model::Delta& delta);

/// Which facts are computed from these, directly (used to spread a change that was found). The wiring spreads nothing:
/// what the rows in it spoil is said row by row.
FactSet derived_from(FactSet changed);

}  // namespace streamwright::analysis
