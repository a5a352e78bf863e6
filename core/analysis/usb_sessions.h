// USB over the network, session by session: which end faces the computer, which ends bear the peripherals.
#pragma once

#include "core/graph/runs.h"

#include <vector>

namespace streamwright::analysis {

/// One USB stream in one preset.
struct UsbSession {
    model::PresetId preset;
    model::StreamId stream;
    std::vector<int> ends;  // devices, sender and subscribers, in the order of their ids
    bool known = true;      // each end is a device of known type
};
/// By preset, then stream.
std::vector<UsbSession> usb_sessions(const graph::Wiring&);

/// Cabled toward a computer, or toward peripherals.
bool faces_computer(const graph::Wiring&, int device);
bool bears_peripherals(const graph::Wiring&, int device);

}  // namespace streamwright::analysis
