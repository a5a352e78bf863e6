// The ways of pictures: from an input through extenders, splitters, encoders, streams and decoders to every place that
// shows it, each way with what is left of each format at its end.
#pragma once

#include "core/analysis/facts/picture_sets.h"
#include "core/graph/signal_graph.h"
#include "core/graph/wiring.h"

#include <optional>
#include <vector>

namespace streamwright::analysis {

/// What a device does with a picture that enters it.
enum class PicturePart {
    shows,   // displays, and processors that make a new picture of it
    passes,  // on to all its outputs, unchanged: extenders, splitters, converters
    codes,   // endpoints
    none
};
PicturePart picture_part(const catalogue::DeviceType& type);
bool picture_port(const catalogue::PortType& port);
/// An output at which a picture begins: of a source, or of a processor.
bool begins_pictures(const catalogue::DeviceType& type, const catalogue::PortType& port);

/// One step of a way: over a cable run to another device's input, or in a stream to a decoder.
struct WayStep {
    int hop = -1;                   // of the signal graph; -1: a stream
    int stream = -1, decoder = -1;  // indices
    int node = -1;                  // where it leads
};

/// One place that a picture comes to.
struct WayEnd {
    graph::PortAt at;                     // input that shows it, or that encodes it
    TableNo left = 0;                     // what is left of each format there
    int stream = -1, decoder = -1;        // the first on the way; -1: cables alone
    std::optional<graph::PortAt> silent;  // a port on the way that states nothing of pictures
    bool shows = false;
    int step = -1, nth = 0;  // the way goes on by that step, to that end of the node there
};

struct WayNode {
    graph::PortAt in;  // port -1: a decoder, whose picture comes by stream
    std::vector<WayStep> steps;
    std::vector<WayEnd> ends;  // by stream, decoder, place; more than 4,096 of one input are not followed
    SetNo announced = 0;       // what the input tells upstream that it takes
};

class PictureWays {
public:
    PictureWays(const graph::Wiring& wiring, const graph::Runs& runs, const graph::SignalGraph& signals);
    /// With what links carry, where it is known of this space.
    PictureWays(const graph::Wiring& wiring, const graph::Runs& runs, const graph::SignalGraph& signals,
                FormatSpace space, LinkSets known);

    PictureSets& sets() { return sets_; }
    const FormatSpace& space() const { return sets_.space(); }
    const graph::Wiring& wiring() const { return wiring_; }
    const graph::SignalGraph& signals() const { return signals_; }

    /// Index of the input's node.
    int node_at(graph::PortAt in);
    const WayNode& node(int index) const { return nodes_[static_cast<std::size_t>(index)]; }
    /// What the output gives: the format set there, else what its type states.
    SetNo given(graph::PortAt out);
    const std::vector<int>& cables_of(int hop) const;
    /// What the cables of the hop are made for.
    SetNo cabled(int hop);
    /// The ends of a picture that leaves by the hop; their tables begin with the output, whatever is set there.
    std::vector<WayEnd> ends_by(int hop);
    /// What the input takes by its type alone, an encoder's codec with it.
    SetNo own(graph::PortAt in);

private:
    void fill(int index, int depth);
    void add_cable_steps(WayNode& node, int depth);
    void add_stream_steps(WayNode& node, int depth);
    int reach(graph::PortAt in, int depth);
    void gather_ends(WayNode& node);
    SetNo announced_by(const WayNode& node);
    TableNo begun(const WayNode& node, const WayStep& step, const WayEnd& end);

    const graph::Wiring& wiring_;
    const graph::Runs& runs_;
    const graph::SignalGraph& signals_;
    PictureSets sets_;
    std::vector<WayNode> nodes_;
    std::vector<int> node_of_input_;                      // per flat port
    std::vector<int> node_of_decoder_;                    // per device
    std::vector<std::vector<std::pair<int, int>>> sent_;  // per encoder: stream and decoder, sorted
    std::vector<bool> open_;                              // nodes being filled: a ring ends there
};

}  // namespace streamwright::analysis
