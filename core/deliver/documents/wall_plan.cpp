// Wall plan: the canvas of each video wall and what each tile shows of a picture, for whoever makes the picture and
// whoever sets up the decoders.
#include "core/analysis/wall_picture.h"
#include "core/deliver/documents/all_documents.h"
#include "core/deliver/documents/words.h"

#include <algorithm>
#include <tuple>

namespace streamwright::deliver {

namespace wall_plan_detail {

using analysis::WallPicture;
using analysis::WallTile;

constexpr std::size_t at(int index) { return static_cast<std::size_t>(index); }

struct Reader {
    const Source& source;
    const graph::Wiring& wiring;
    const analysis::VideoChains& chains;
};

std::string raster_words(const standards::PixelSize& size) {
    return std::to_string(size.width) + " x " + std::to_string(size.height);
}

/// "1.78" of a share in hundredths.
std::string hundredths(std::int64_t value) {
    const auto rest = std::to_string(value % 100);
    return std::to_string(value / 100) + '.' + std::string(2 - rest.size(), '0') + rest;
}

std::int64_t scale_of(std::int64_t shown, std::int64_t cut) { return cut ? (200 * shown + cut) / (2 * cut) : 0; }

std::string scale_words(const standards::WallTiles& raster, const standards::PixelRectangle& cut) {
    const auto across = scale_of(raster.tile_width, cut.width), down = scale_of(raster.tile_height, cut.height);
    // A rounded edge makes a hundredth of difference, which is no distortion.
    if (std::abs(across - down) <= 1) return "x " + hundredths(across);
    return "x " + hundredths(across) + " across, x " + hundredths(down) + " down";
}

/// What a tile shows, as written.
struct Picture {
    std::string stream;
    std::optional<standards::PixelSize> size;
    std::optional<standards::PixelRectangle> cut;
    friend bool operator==(const Picture&, const Picture&) = default;
};

std::optional<Picture> picture_of(const Reader& r, const WallPicture& wall, const WallTile& tile,
                                  model::PresetId preset) {
    const auto shown = analysis::tile_picture(r.wiring, r.chains, wall, tile, preset);
    if (shown.streams.empty()) return std::nullopt;
    std::vector<std::string> names;
    for (const auto* stream : shown.streams) names.push_back(stream->tag);
    return Picture{listed(names), shown.source, shown.cut};
}

std::string place_words(const WallTile& tile) {
    return "column " + std::to_string(tile.column + 1) + ", row " + std::to_string(tile.row + 1);
}

std::string feed_words(const Reader& r, const WallTile& tile) {
    if (!tile.device) return {};
    std::vector<std::string> tags;
    for (const auto& feed : tile.feeds) tags.push_back(device_tag(r.wiring, feed.device));
    return tags.empty() ? (tile.fed ? "not known" : "none") : listed(tags);
}

TableRow row_of(const Reader& r, const WallPicture& wall, const WallTile& tile, const std::string& preset,
                const std::optional<Picture>& picture) {
    TableRow row;
    row.group = wall.row->name;
    if (tile.device) row.subject = "device:" + r.wiring.devices[at(*tile.device)].row->id.text();
    std::string on_canvas;
    if (wall.raster) {
        const auto here = standards::tile_on_canvas(*wall.raster, tile.column, tile.row);
        on_canvas = std::to_string(here.left) + ", " + std::to_string(here.top);
    }
    const bool cut = picture && picture->cut;
    row.cells = {text_cell(place_words(tile)),
                 text_cell(tile.device ? device_tag(r.wiring, *tile.device) : "none"),
                 text_cell(feed_words(r, tile)),
                 text_cell(on_canvas),
                 text_cell(preset),
                 text_cell(picture ? picture->stream : std::string()),
                 text_cell(picture && picture->size ? raster_words(*picture->size) : std::string()),
                 text_cell(cut && wall.raster ? scale_words(*wall.raster, *picture->cut) : std::string())};
    if (cut)
        for (const auto value : {picture->cut->left, picture->cut->top, picture->cut->width, picture->cut->height})
            row.cells.emplace_back(value);
    row.cells.resize(12);
    return row;
}

/// One row where all presets that use the tile show the same on it, else one a preset.
void add_tile(const Reader& r, const WallPicture& wall, const WallTile& tile, TablePart& table) {
    std::vector<std::pair<const model::Preset*, Picture>> pictures;
    for (const auto& preset : r.source.design.presets)
        if (auto picture = picture_of(r, wall, tile, preset.id)) pictures.emplace_back(&preset, std::move(*picture));
    std::ranges::sort(pictures, {}, [](const auto& each) { return std::pair(each.first->number, each.first->id); });
    if (pictures.empty()) {
        table.rows.push_back(row_of(r, wall, tile, {}, {}));
        return;
    }
    const auto same = [&](const auto& each) { return each.second == pictures.front().second; };
    if (pictures.size() > 1 && std::ranges::all_of(pictures, same)) {
        table.rows.push_back(row_of(r, wall, tile, "each that uses it", pictures.front().second));
        return;
    }
    for (const auto& [preset, picture] : pictures) table.rows.push_back(row_of(r, wall, tile, preset->name, picture));
}

TablePart tiles_part(const Reader& r, const std::vector<WallPicture>& walls) {
    TablePart table;
    table.name = "Wall tiles";
    table.title = "What each tile shows";
    table.columns = {{"Place", ColumnKind::text, 44},       {"Display", ColumnKind::text, 26, true},
                     {"Fed by", ColumnKind::text, 36},      {"On canvas", ColumnKind::text, 28},
                     {"Preset", ColumnKind::text, 44},      {"Stream", ColumnKind::text, 30},
                     {"Source", ColumnKind::text, 32},      {"Scaled", ColumnKind::text, 56},
                     {"Cut left", ColumnKind::number, 20},  {"Cut top", ColumnKind::number, 20},
                     {"Cut width", ColumnKind::number, 22}, {"Cut height", ColumnKind::number, 24}};
    for (const auto& wall : walls)
        for (const auto& tile : wall.tiles) add_tile(r, wall, tile, table);
    table.notes = {
        "Pixels count from 0 at the left top, as the audience sees the wall. The cut is the part of the source that "
        "the "
        "tile lights; what lies between two cuts hides behind the seam.",
        "A picture that all tiles of a wall show is spread over the whole canvas. Where tiles show different pictures, "
        "each shows its own whole.",
        "Where the source's picture size is not known, the cut is left open."};
    return table;
}

TableRow wall_row(const Reader& r, const WallPicture& wall) {
    const auto* room = wall.row->room ? r.source.design.rooms.find(*wall.row->room) : nullptr;
    std::string pixels = "not known", hidden, canvas;
    if (wall.raster) {
        pixels = raster_words({wall.raster->tile_width, wall.raster->tile_height});
        hidden = std::to_string(wall.raster->hidden_columns) + " across, " + std::to_string(wall.raster->hidden_rows) +
                 " down";
        canvas = raster_words(standards::wall_canvas(*wall.raster));
    }
    TableRow row;
    row.subject = "device:" + analysis::first_tile(*wall.row).text();
    row.cells = {text_cell(wall.row->name),
                 text_cell(!room ? std::string() : (room->name.empty() ? room->number : room->name)),
                 text_cell(std::to_string(wall.row->columns) + " across, " + std::to_string(wall.row->rows) + " down"),
                 text_cell(pixels),
                 text_cell(hidden),
                 text_cell(canvas),
                 text_cell(wall.row->note),
                 wall.width ? Cell(*wall.width) : Cell(),
                 wall.height ? Cell(*wall.height) : Cell()};
    return row;
}

TablePart walls_part(const Reader& r, const std::vector<WallPicture>& walls) {
    TablePart table;
    table.name = "Walls";
    table.title = "Video walls";
    table.columns = {{"Wall", ColumnKind::text, 44, true},
                     {"Room", ColumnKind::text, 44},
                     {"Tiles", ColumnKind::text, 36},
                     {"Pixels of a tile", ColumnKind::text, 36},
                     {"Hidden in a seam", ColumnKind::text, 40},
                     {"Canvas", ColumnKind::text, 36},
                     {"Note", ColumnKind::text, 86},
                     {"Lit width, m", ColumnKind::length_m, 30},
                     {"Lit height, m", ColumnKind::length_m, 30}};
    for (const auto& wall : walls) table.rows.push_back(wall_row(r, wall));
    table.notes = {
        "The canvas counts the pixels of all tiles and those that hide behind the seams: gap / lit size of a tile x "
        "its "
        "pixels, to the nearest whole pixel.",
        "Not known: the types of the tiles do not state their pixels, or differ in them."};
    return table;
}

}  // namespace wall_plan_detail

Content make_wall_plan(const Source& source) {
    using namespace wall_plan_detail;
    const auto& wiring = wiring_of(source);
    const Reader reader{source, wiring, source.analysis.facts.get<analysis::VideoChains>()};
    auto walls = analysis::find_wall_pictures(wiring, source.analysis.facts.get<graph::SignalGraph>());
    std::ranges::stable_sort(
        walls, [](const WallPicture& a, const WallPicture& b) { return counts_before(a.row->name, b.row->name); });
    return {"wall-plan", "Wall plan", {walls_part(reader, walls), tiles_part(reader, walls)}};
}

}  // namespace streamwright::deliver
