// What the tiles of a video wall show: the canvas that they make, which part of it each tile lights, from which decoder
// its picture comes, and which stream that is in each preset. Worked out when a rule or a document asks.
#pragma once

#include "core/analysis/facts/video_chain.h"
#include "core/base/text.h"
#include "core/graph/signal_graph.h"
#include "core/standards/wall_tiles.h"

#include <optional>
#include <vector>

namespace streamwright::analysis {

/// A decoder or source whose picture reaches a tile over leads.
struct TileFeed {
    int device = 0;
    bool decoder = false;
    std::optional<base::Duration> delay;  // to decode it and pass it on, as the types state; none: not known
    friend bool operator==(const TileFeed&, const TileFeed&) = default;
};

struct WallTile {
    int column = 0, row = 0;
    std::optional<int> device;    // none: the place is empty
    std::vector<TileFeed> feeds;  // nearest first
    bool fed = false;             // something reaches it, though what may not be known
    friend bool operator==(const WallTile&, const WallTile&) = default;

    /// The one decoder that feeds it; null where there is none, or a choice.
    const TileFeed* decoder() const;
};

struct WallPicture {
    const model::Wall* row = nullptr;
    std::optional<standards::WallTiles> raster;  // none: a tile's pixels are not known, or tiles differ
    std::optional<base::Length> width, height;   // of the lit image with its gaps; none: not known, or tiles differ
    std::vector<WallTile> tiles;                 // as in the row
};

/// The walls in the order of their rows.
std::vector<WallPicture> find_wall_pictures(const graph::Wiring& wiring, const graph::SignalGraph& signals);

/// The type of a tile's display; null for an empty place.
const catalogue::DeviceType* tile_type(const graph::Wiring& wiring, const WallTile& tile);

/// What the decoder shows in the preset, by input; a twin counts as the stream that it stands beside.
std::vector<const model::Stream*> shown_by(const graph::Wiring& wiring, int decoder, model::PresetId preset);

/// The picture size of the stream at its source; none where that is not known or more than one.
std::optional<standards::PixelSize> source_size(const VideoChains& chains, const graph::Wiring& wiring,
                                                const model::Stream& stream);

/// What a tile shows in a preset.
struct TilePicture {
    std::vector<const model::Stream*> streams;  // none: dark, or not known
    std::optional<standards::PixelSize> source;
    /// The part of the source that the tile lights: its own, where all tiles of the wall show the stream and it is
    /// spread over them; else all of it. None: not known.
    std::optional<standards::PixelRectangle> cut;
    friend bool operator==(const TilePicture&, const TilePicture&) = default;
};
TilePicture tile_picture(const graph::Wiring& wiring, const VideoChains& chains, const WallPicture& wall,
                         const WallTile& tile, model::PresetId preset);

/// The name of the wall, looked up when shown.
base::Ref wall_ref(const model::Wall& wall);
/// The tile where a finding about the whole wall stands: its first display.
model::DeviceId first_tile(const model::Wall& wall);

}  // namespace streamwright::analysis
