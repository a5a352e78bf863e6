// One picture's way told hop by hop: what it is on each part of the way, and where it ends and why. Worked out again
// when somebody asks, for findings, the properties panel and documents.
#pragma once

#include "core/analysis/facts/picture_ways.h"
#include "core/analysis/facts/video_chain.h"
#include "core/standards/picture_links.h"

#include <optional>
#include <string>
#include <vector>

namespace streamwright::analysis {

/// Why a picture goes no further.
enum class BreakKind {
    link,         // the link of a port carries less
    cable,        // a cable is made for less
    not_given,    // the output does not give it
    not_taken,    // the input does not take it
    not_encoded,  // larger or faster than the codecs take
    together      // each part of the way would pass something, but nothing passes all
};

struct PictureBreak {
    BreakKind kind = BreakKind::together;
    graph::PortAt at;              // the port that says no
    int cable = -1;                // cable: which
    standards::VideoFormat asked;  // the best that comes that far
    std::string link;              // link and cable: its name
    std::optional<standards::LinkFit> fit;
};

/// A part of the way on which the picture stays the same: from a source's or decoder's output to the next input that
/// ends or encodes it.
struct WayPart {
    std::vector<graph::PortAt> ports;  // outputs and inputs in turn
    std::vector<int> hops;             // of the signal graph
    int stream = -1;                   // by which the picture came to the first output; -1: the part begins the way
    std::optional<int> format;         // number of the best that leaves it; none: broken
};

struct PictureWay {
    std::vector<WayPart> parts;
    std::optional<PictureBreak> broken;
};

/// The way of the origin's picture, sent in that format, to its arrival of that index.
PictureWay follow(PictureWays& ways, const PictureOrigin& origin, std::size_t arrival, int sent);

/// Sampling, depth and range alone, as they differ from plain 8-bit RGB: "4:2:0 10-bit PQ".
std::string form_text(const standards::VideoFormat& format);

}  // namespace streamwright::analysis
