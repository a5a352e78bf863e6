#include "core/model/edits/set_wall.h"

#include "core/model/edits/edit_helpers.h"

#include <algorithm>
#include <tuple>

namespace streamwright::model {

namespace set_wall_detail {

bool shows_pictures(const Design& design, DeviceId id) {
    using catalogue::DeviceKind;
    const auto* device = design.devices.find(id);
    const auto* type = device ? design.type_of(*device) : nullptr;
    return type && (type->kind == DeviceKind::display || type->kind == DeviceKind::wall_tile ||
                    type->kind == DeviceKind::projector);
}

/// The least number of columns that is no less than the rows: 4 stand two by two, 6 three by two, 5 in one row.
int columns_for(int count) {
    for (int columns = 1; columns < count; ++columns)
        if (count % columns == 0 && columns >= count / columns) return columns;
    return count;
}

std::string next_name(const Design& design) {
    struct Named {
        std::string tag;
    };
    std::vector<Named> named;
    for (const auto& wall : design.walls) named.push_back({wall.name});
    return edit_detail::next_numbered(named, "Wall ", 1);
}

/// The room that all of them stand in.
std::optional<RoomId> shared_room(const Design& design, const std::vector<DeviceId>& displays) {
    std::optional<RoomId> room;
    for (const auto id : displays) {
        const auto* device = design.devices.find(id);
        if (!device || !device->room || (room && room != device->room)) return std::nullopt;
        room = device->room;
    }
    return room;
}

/// In reading order of the sheet, row by row; those not drawn there last, by tag.
void put_in_order(const Design& design, std::vector<DeviceId>& displays, SheetId sheet, std::size_t columns) {
    const auto at = [&](DeviceId id) {
        const auto* place = design.places.find({sheet, id});
        return place ? std::optional(place->at) : std::nullopt;
    };
    const auto tag = [&](DeviceId id) { return design.devices.find(id)->tag; };
    std::ranges::sort(displays, [&](DeviceId a, DeviceId b) {
        const auto one = at(a), other = at(b);
        if (!one || !other) return std::tuple(!one, tag(a)) < std::tuple(!other, tag(b));
        return std::tuple(one->y, one->x, tag(a)) < std::tuple(other->y, other->x, tag(b));
    });
    for (std::size_t row = 0; row + columns <= displays.size(); row += columns) {
        const auto first = displays.begin() + static_cast<std::ptrdiff_t>(row);
        std::sort(first, first + static_cast<std::ptrdiff_t>(columns), [&](DeviceId a, DeviceId b) {
            const auto one = at(a), other = at(b);
            return one && other && std::tuple(one->x, one->y, tag(a)) < std::tuple(other->x, other->y, tag(b));
        });
    }
}

}  // namespace set_wall_detail

base::Result<Delta> make(const Design& design, const SetWall& edit) {
    Wall row = edit.row;
    if (row.name.empty()) row.name = set_wall_detail::next_name(design);
    for (const auto& tile : row.tiles) {
        const auto* device = tile ? design.devices.find(*tile) : nullptr;
        if (device && !set_wall_detail::shows_pictures(design, *tile))
            return base::Error{"%1 shows no pictures and cannot be a tile of a wall.", {device->tag}};
    }
    if (auto trouble = shared_tile(design, row)) return *trouble;
    Editing editing(design);
    if (auto trouble = edit_detail::put_checked(editing, std::move(row))) return *trouble;
    return editing.done();
}

const Wall* wall_of(const Design& design, DeviceId device) {
    for (const auto& wall : design.walls)
        if (std::ranges::find(wall.tiles, std::optional(device)) != wall.tiles.end()) return &wall;
    return nullptr;
}

std::vector<DeviceId> tiles_among(const Design& design, const std::vector<DeviceId>& devices) {
    std::vector<DeviceId> found;
    for (const auto id : devices)
        if (set_wall_detail::shows_pictures(design, id) && !wall_of(design, id)) found.push_back(id);
    return found;
}

Wall new_wall(const Design& design, WallId id, const std::vector<DeviceId>& displays, std::optional<SheetId> sheet) {
    auto wall = Wall::blank(id);
    wall.name = set_wall_detail::next_name(design);
    wall.room = set_wall_detail::shared_room(design, displays);
    wall.columns = set_wall_detail::columns_for(static_cast<int>(displays.size()));
    wall.rows = wall.columns ? static_cast<int>(displays.size()) / wall.columns : 0;
    auto ordered = displays;
    if (sheet) set_wall_detail::put_in_order(design, ordered, *sheet, static_cast<std::size_t>(wall.columns));
    wall.tiles.assign(ordered.begin(), ordered.end());
    return wall;
}

Wall resized(Wall wall, int columns, int rows) {
    if (columns < 1 || rows < 1 || columns > most_wall_side || rows > most_wall_side) {
        wall.columns = columns;  // refused in words when it is made
        wall.rows = rows;
        return wall;
    }
    std::vector<std::optional<DeviceId>> tiles(static_cast<std::size_t>(columns) * static_cast<std::size_t>(rows));
    const auto place = [](int row, int row_of, int column) {
        return static_cast<std::size_t>(row) * static_cast<std::size_t>(row_of) + static_cast<std::size_t>(column);
    };
    const auto held = std::min(wall.rows, rows), across = std::min(wall.columns, columns);
    for (int row = 0; row < held; ++row)
        for (int column = 0; column < across; ++column)
            tiles[place(row, columns, column)] = wall.tiles[place(row, wall.columns, column)];
    wall.columns = columns;
    wall.rows = rows;
    wall.tiles = std::move(tiles);
    return wall;
}

std::optional<Wall> without_tile(Wall wall, DeviceId device) {
    std::ranges::replace(wall.tiles, std::optional(device), std::optional<DeviceId>());
    if (std::ranges::none_of(wall.tiles, [](const auto& tile) { return tile.has_value(); })) return std::nullopt;
    return wall;
}

}  // namespace streamwright::model
