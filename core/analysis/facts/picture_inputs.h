// All that the ways of pictures are worked out from, side by side: where it is as it was before, so are they. Most
// edits of a design leave it alone.
#pragma once

#include "core/graph/runs.h"
#include "core/graph/signal_graph.h"
#include "core/graph/wiring.h"

#include <memory>
#include <optional>
#include <utility>
#include <vector>

namespace streamwright::analysis {

/// Per encoder, by index of its device: the streams of pictures that decoders that take them are asked to show in any
/// preset, with the decoder; sorted, no doubles.
using SentStreams = std::vector<std::vector<std::pair<int, int>>>;
SentStreams sent_streams(const graph::Wiring& wiring);

struct PictureInputs {
    /// Kept alive, so that no other type takes the place of one in memory.
    std::vector<std::shared_ptr<const catalogue::DeviceType>> device_types;
    std::vector<std::shared_ptr<const catalogue::CableType>> cable_types;
    std::vector<const catalogue::DeviceType*> devices;          // by index
    std::vector<std::pair<graph::PortAt, graph::PortAt>> hops;  // runs are numbered anew when any cable goes
    std::vector<const catalogue::CableType*> cables;            // of the hops in turn; null: not known
    std::vector<int> cables_of_hop;                             // how many
    SentStreams sent;
    /// What is set on a port, and the port whose EDID it copies, by indices.
    struct Setting {
        graph::PortAt port;
        std::optional<standards::VideoFormat> picture;
        std::optional<model::EdidPolicy> edid;
        std::optional<graph::PortAt> from;
        friend bool operator==(const Setting&, const Setting&) = default;
    };
    std::vector<Setting> settings;
    friend bool operator==(const PictureInputs&, const PictureInputs&) = default;
};

PictureInputs picture_inputs(const graph::Wiring& wiring, const graph::Runs& runs, const graph::SignalGraph& signals);

}  // namespace streamwright::analysis
