#include "core/analysis/wall_picture.h"

#include "core/analysis/rule_help.h"

#include <algorithm>
#include <map>
#include <set>

namespace streamwright::analysis {

namespace wall_picture_detail {

using catalogue::DeviceKind;

bool is_display(DeviceKind kind) {
    return kind == DeviceKind::display || kind == DeviceKind::projector || kind == DeviceKind::wall_tile;
}

/// What a device between decoder and tile adds. Displays that loop a picture through pass it on at once, as extenders
/// and splitters do (common practice); what computes must state what it takes.
std::optional<base::Duration> passing_delay(const catalogue::DeviceType& type) {
    if (is_display(type.kind)) return base::Duration{};  // its own delay is that of what it shows itself
    const bool at_once = type.kind == DeviceKind::extender_sender || type.kind == DeviceKind::extender_receiver ||
                         type.kind == DeviceKind::other || type.codec;
    return type.delay || !at_once ? type.delay : base::Duration{};
}

std::optional<base::Duration> sum(const std::optional<base::Duration>& a, const std::optional<base::Duration>& b) {
    if (!a || !b) return std::nullopt;
    return *a + *b;
}

struct Follower {
    const graph::Wiring& wiring;
    const graph::SignalGraph& signals;
    std::set<int> seen;
    WallTile* tile = nullptr;

    void add_feed(int device, bool decoder, const std::optional<base::Duration>& delay) {
        const auto known = [&](const TileFeed& feed) { return feed.device == device; };
        if (std::ranges::none_of(tile->feeds, known)) tile->feeds.push_back({device, decoder, delay});
    }
    /// What stands before the device; `delay` is what all behind it takes.
    void back(int device, const std::optional<base::Duration>& delay) {
        if (!seen.insert(device).second) return;
        for (const int index : signals.hops_to[at(device)]) {
            const auto& hop = signals.hops[at(index)];
            const auto& out = wiring.port_type(hop.from);
            if (out.signal == catalogue::Signal::audio) continue;
            tile->fed = true;
            const auto& before = wiring.devices[at(hop.from.device)];
            if (!before.type) continue;
            const auto& type = *before.type;
            if (type.codec && !out.local_output) {
                if (type.can(catalogue::Role::decoder))
                    add_feed(hop.from.device, true, sum(delay, type.codec->decode_latency));
            } else if (type.kind == DeviceKind::source || type.kind == DeviceKind::camera) {
                add_feed(hop.from.device, false, delay);
            } else {
                back(hop.from.device, sum(delay, passing_delay(type)));
            }
        }
    }
};

const catalogue::ImageFacts* image_of(const graph::Wiring& wiring, const WallTile& tile) {
    const auto* type = tile_type(wiring, tile);
    return type && type->image ? &*type->image : nullptr;
}

/// The image that all tiles have; null where one states none or another.
const catalogue::ImageFacts* common_image(const graph::Wiring& wiring, const std::vector<WallTile>& tiles) {
    const catalogue::ImageFacts* common = nullptr;
    for (const auto& tile : tiles) {
        if (!tile.device) continue;
        const auto* image = image_of(wiring, tile);
        if (!image || (common && !(*image == *common))) return nullptr;
        common = image;
    }
    return common;
}

/// Pixels behind a seam; none where the size of the image is not stated and the gap would need it.
std::optional<int> hidden(base::Length gap, const std::optional<base::Length>& image, int pixels) {
    if (gap.count() == 0) return 0;
    if (!image) return std::nullopt;
    return standards::hidden_pixels(gap, *image, pixels);
}

void measure(const graph::Wiring& wiring, WallPicture& wall) {
    const auto* image = common_image(wiring, wall.tiles);
    if (!image) return;
    const auto& row = *wall.row;
    const auto across = hidden(row.gap_across, image->width, image->pixels_across);
    const auto down = hidden(row.gap_down, image->height, image->pixels_down);
    if (across && down)
        wall.raster =
            standards::WallTiles{row.columns, row.rows, image->pixels_across, image->pixels_down, *across, *down};
    if (image->width) wall.width = row.columns * *image->width + (row.columns - 1) * row.gap_across;
    if (image->height) wall.height = row.rows * *image->height + (row.rows - 1) * row.gap_down;
}

}  // namespace wall_picture_detail

const TileFeed* WallTile::decoder() const { return feeds.size() == 1 && feeds[0].decoder ? &feeds[0] : nullptr; }

std::vector<WallPicture> find_wall_pictures(const graph::Wiring& wiring, const graph::SignalGraph& signals) {
    std::vector<WallPicture> walls;
    for (const auto& row : wiring.design.walls) {
        WallPicture wall;
        wall.row = &row;
        for (int place = 0; place < static_cast<int>(row.tiles.size()); ++place) {
            WallTile tile;
            tile.column = place % row.columns;
            tile.row = place / row.columns;
            if (const auto& device = row.tiles[at(place)]) tile.device = wiring.device_index(*device);
            if (tile_type(wiring, tile)) {
                wall_picture_detail::Follower follower{wiring, signals};
                follower.tile = &tile;
                follower.back(*tile.device, base::Duration{});
            }
            wall.tiles.push_back(std::move(tile));
        }
        wall_picture_detail::measure(wiring, wall);
        walls.push_back(std::move(wall));
    }
    return walls;
}

const catalogue::DeviceType* tile_type(const graph::Wiring& wiring, const WallTile& tile) {
    return tile.device ? wiring.devices[at(*tile.device)].type : nullptr;
}

std::vector<const model::Stream*> shown_by(const graph::Wiring& wiring, int decoder, model::PresetId preset) {
    std::map<model::InputKey, const model::Stream*> shown;
    for (const auto& row : wiring.design.subscriptions) {
        if (row.preset != preset || row.decoder != device_id(wiring, decoder)) continue;
        const auto* stream = wiring.design.streams.find(row.stream);
        if (!stream || stream->kind != catalogue::StreamKind::video) continue;
        if (stream->twin && *stream->twin < stream->id)
            if (const auto* first = wiring.design.streams.find(*stream->twin)) stream = first;
        shown.emplace(row.input, stream);
    }
    std::vector<const model::Stream*> streams;
    for (const auto& [input, stream] : shown)
        if (std::ranges::find(streams, stream) == streams.end()) streams.push_back(stream);
    return streams;
}

std::optional<standards::PixelSize> source_size(const VideoChains& chains, const graph::Wiring& wiring,
                                                const model::Stream& stream) {
    const auto streams = streams_by_index(wiring);
    const auto carries = [&](const PictureArrival& arrival) {
        if (arrival.stream < 0) return false;
        const auto& row = *streams[at(arrival.stream)];
        return row.id == stream.id || row.twin == stream.id || stream.twin == row.id;
    };
    std::optional<standards::PixelSize> size;
    for (const auto& origin : chains.origins) {
        if (std::ranges::none_of(origin.arrivals, carries)) continue;
        if (!origin.sent) return std::nullopt;
        const auto format = chains.space.format(*origin.sent);
        const standards::PixelSize here{format.width, format.height};
        if (size && !(*size == here)) return std::nullopt;
        size = here;
    }
    return size;
}

namespace wall_picture_detail {

std::vector<const model::Stream*> streams_of(const graph::Wiring& wiring, const WallTile& tile,
                                             model::PresetId preset) {
    const auto* feed = tile.decoder();
    return feed ? shown_by(wiring, feed->device, preset) : std::vector<const model::Stream*>{};
}

}  // namespace wall_picture_detail

TilePicture tile_picture(const graph::Wiring& wiring, const VideoChains& chains, const WallPicture& wall,
                         const WallTile& tile, model::PresetId preset) {
    using wall_picture_detail::streams_of;
    TilePicture picture{streams_of(wiring, tile, preset), {}, {}};
    if (picture.streams.size() != 1) return picture;
    picture.source = source_size(chains, wiring, *picture.streams.front());
    if (!picture.source) return picture;
    const bool spread = std::ranges::all_of(
        wall.tiles, [&](const WallTile& other) { return streams_of(wiring, other, preset) == picture.streams; });
    if (!spread)
        picture.cut = standards::PixelRectangle{0, 0, picture.source->width, picture.source->height};
    else if (wall.raster)
        picture.cut = standards::tile_of_source(*wall.raster, tile.column, tile.row, *picture.source);
    return picture;
}

base::Ref wall_ref(const model::Wall& wall) { return {"wall:" + wall.id.text()}; }

model::DeviceId first_tile(const model::Wall& wall) {
    const auto first = std::ranges::find_if(wall.tiles, [](const auto& tile) { return tile.has_value(); });
    return first == wall.tiles.end() ? model::DeviceId(0) : **first;
}

}  // namespace streamwright::analysis
