// Which way sound goes in one preset: over sound leads, inside the leads of pictures, and over the network with the
// streams that are subscribed. An endpoint's two sides stand apart: what it encodes does not come out of its decoder.
#pragma once

#include "core/graph/signal_graph.h"

#include <optional>
#include <vector>

namespace streamwright::graph {

/// A place that sound passes: a device, or one side of an endpoint.
struct SoundPlace {
    int device = 0;
    bool decoding = false;  // an endpoint's decoder side; false for all else
    friend auto operator<=>(const SoundPlace&, const SoundPlace&) = default;
};

/// Over a lead or with a stream.
struct SoundHop {
    SoundPlace from, to;
    int hop = -1;                           // index into SignalGraph::hops; -1: with a stream
    const model::Stream* stream = nullptr;  // null: over a lead
};

struct SoundPaths {
    std::vector<SoundHop> hops;
    std::vector<std::vector<int>> from, to;  // per device twice: its hops as plain or encoding, then as decoding place

    static std::size_t place(const SoundPlace& at) {
        return 2 * static_cast<std::size_t>(at.device) + (at.decoding ? 1 : 0);
    }
};

/// Without a preset: over leads alone.
SoundPaths find_sound_paths(const Wiring&, const SignalGraph&, std::optional<model::PresetId> preset);

/// Whether some lead carries sound on its own; without one nothing below has anything to say.
bool has_sound_leads(const Wiring&, const SignalGraph&);

/// Whether sound made somewhere can come to the device over leads: a source, a microphone, a decoder or a device of
/// unknown type is before it, through whatever passes sound on; rings end.
bool fed_with_sound(const Wiring&, const SignalGraph&, int device);

/// Places whose sound comes round to them again, each ring as one list, in the order of their indices. A microphone
/// that hears a loudspeaker is not drawn and so not found.
std::vector<std::vector<SoundPlace>> sound_rings(const SoundPaths&);

}  // namespace streamwright::graph
