// Signals outside the network: which source feeds which encoder input, which decoder output feeds which display.
#pragma once

#include "core/graph/runs.h"
#include "core/graph/wiring.h"

#include <vector>

namespace streamwright::graph {

/// A run that carries a signal from an output to an input.
struct SignalHop {
    PortAt from, to;
    int run = 0;
    friend bool operator==(const SignalHop&, const SignalHop&) = default;
};

struct SignalGraph {
    std::vector<SignalHop> hops;              // by run
    std::vector<std::vector<int>> hops_from;  // per device
    std::vector<std::vector<int>> hops_to;    // per device
    friend bool operator==(const SignalGraph&, const SignalGraph&) = default;
};

SignalGraph build_signals(const Wiring& wiring, const Runs& runs);

/// Whether a picture can reach the device from anything that makes pictures (source, camera, ...), through extenders,
/// switchers and the like, however many hops; rings end.
bool fed_by_source(const Wiring& wiring, const SignalGraph& signals, int device);
/// Whether a picture leaving the device reaches anything that shows it.
bool reaches_display(const Wiring& wiring, const SignalGraph& signals, int device);

}  // namespace streamwright::graph
