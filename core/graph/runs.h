// Runs: what lies between two active ports. Passive faces (patch panels, wall outlets) join cables into one run,
// so that reach is judged on the whole channel and on its installed part.
#pragma once

#include "core/graph/wiring.h"

#include <optional>
#include <vector>

namespace streamwright::graph {

struct Run {
    std::vector<int> cables;     // indices, from end a to end b
    std::optional<PortAt> a, b;  // active ports; none: an open end
    friend bool operator==(const Run&, const Run&) = default;
};

struct Runs {
    std::vector<Run> list;          // by smallest cable index
    std::vector<int> run_of_cable;  // per cable
    friend bool operator==(const Runs&, const Runs&) = default;
};

/// Every cable is in exactly one run; a ring of passive ports is cut at its smallest cable.
Runs find_runs(const Wiring& wiring);

}  // namespace streamwright::graph
