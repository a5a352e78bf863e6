// Signals outside the network: which source feeds which encoder input, which decoder output feeds which display.
#pragma once

#include "core/graph/runs.h"
#include "core/graph/wiring.h"

#include <span>
#include <vector>

namespace streamwright::graph {

/// A run that carries a signal from an output to an input.
struct SignalHop {
    PortAt from, to;
    int run = 0;
    friend bool operator==(const SignalHop&, const SignalHop&) = default;
};

/// Hops of each device, in one piece of memory: a list of its own for each of ten thousand devices costs more to make
/// than all the rest.
class HopLists {
public:
    HopLists() = default;
    /// `device_of` gives each hop's device; lists keep the order of the hops.
    template <class DeviceOf>
    HopLists(std::size_t devices, const std::vector<SignalHop>& hops, DeviceOf&& device_of) : starts_(devices + 1, 0) {
        for (const auto& hop : hops) ++starts_[static_cast<std::size_t>(device_of(hop)) + 1];
        for (std::size_t i = 1; i < starts_.size(); ++i) starts_[i] += starts_[i - 1];
        auto next = starts_;
        list_.resize(hops.size());
        for (std::size_t i = 0; i < hops.size(); ++i)
            list_[static_cast<std::size_t>(next[static_cast<std::size_t>(device_of(hops[i]))]++)] = static_cast<int>(i);
    }
    std::span<const int> operator[](std::size_t device) const {
        return {list_.data() + starts_[device], list_.data() + starts_[device + 1]};
    }
    friend bool operator==(const HopLists&, const HopLists&) = default;

private:
    std::vector<int> starts_, list_;
};

struct SignalGraph {
    std::vector<SignalHop> hops;  // by run
    HopLists hops_from, hops_to;  // per device
    friend bool operator==(const SignalGraph&, const SignalGraph&) = default;
};

SignalGraph build_signals(const Wiring& wiring, const Runs& runs);

/// Whether a picture can reach the device from anything that makes pictures (source, camera, ...), through extenders,
/// switchers and the like, however many hops; rings end.
bool fed_by_source(const Wiring& wiring, const SignalGraph& signals, int device);
/// Whether a picture leaving the device reaches anything that shows it.
bool reaches_display(const Wiring& wiring, const SignalGraph& signals, int device);

}  // namespace streamwright::graph
