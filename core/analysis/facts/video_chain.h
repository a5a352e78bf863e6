// What every source sends and what arrives of it at each place that shows it: the best format that the whole way
// allows, the one that is sent, and what is left of it.
#pragma once

#include "core/analysis/facts/format_space.h"
#include "core/analysis/facts/picture_inputs.h"
#include "core/graph/signal_graph.h"
#include "core/graph/wiring.h"

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace streamwright::analysis {

/// A picture of one source at one place. Formats are numbers of the space.
struct PictureArrival {
    graph::PortAt at;               // input that shows it, or that encodes it
    int stream = -1, decoder = -1;  // the first on the way; -1: by cables alone
    bool shows = false;
    std::optional<int> left;           // of what is sent; none: no picture, or not known what is sent
    std::optional<int> best, best_by;  // the most that could arrive, and what would have to be sent; none: nothing fits
    std::optional<graph::PortAt> silent;  // a port on the way whose type states nothing of pictures
    friend bool operator==(const PictureArrival&, const PictureArrival&) = default;
};

/// How it comes that the source sends what it sends.
enum class SentBecause { set, announced, not_known, nothing_common };

struct PictureOrigin {
    graph::PortAt out;
    int hop = 0;  // of the signal graph, by which it leaves
    SentBecause because = SentBecause::not_known;
    std::optional<int> sent;
    std::vector<PictureArrival> arrivals;  // by stream, decoder, place
    friend bool operator==(const PictureOrigin&, const PictureOrigin&) = default;
};

struct VideoChains {
    FormatSpace space;
    std::map<std::string, FormatSet> links;   // what each link named in the design carries
    std::vector<PictureOrigin> origins;       // by hop
    std::shared_ptr<const PictureInputs> of;  // what all this was worked out from
    friend bool operator==(const VideoChains& a, const VideoChains& b) {
        return a.space == b.space && a.links == b.links && a.origins == b.origins;
    }
};

/// A source sends the format that is set at its output; else the best that it can give of what the input before it
/// announces. A source of which nothing is stated sends nobody knows what.
/// `before` spares work where it names the same rasters; it changes no answer.
VideoChains find_video_chains(const graph::Wiring& wiring, const graph::Runs& runs, const graph::SignalGraph& signals,
                              const VideoChains& before = {});
/// Nothing where `before` was worked out from the same: then it is the answer.
std::optional<VideoChains> find_video_chains_again(const graph::Wiring& wiring, const graph::Runs& runs,
                                                   const graph::SignalGraph& signals, const VideoChains& before);

}  // namespace streamwright::analysis
