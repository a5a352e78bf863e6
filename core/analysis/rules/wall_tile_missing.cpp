// A place of a video wall that stays dark: no display stands there, nothing feeds it, or a preset forgets it.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/analysis/wall_picture.h"

#include <algorithm>

namespace streamwright::analysis::rules::wall_tile_missing {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 stays dark in %2 of its %3 places."),
    STREAMWRIGHT_TEXT("In %2 %3 of %1 show nothing, while other tiles of the wall do.")};

constexpr RuleWords words{.id = "wall-tile-missing",
                          .theme = Theme::signals,
                          .title = "Dark place in a video wall",
                          .meaning =
                              "A wall with a hole in it is seen by everybody in the room, and a picture spread over "
                              "the wall lacks that part.",
                          .measured =
                              "Each place of the wall: whether a display stands there, and whether a picture can reach "
                              "it over leads, extenders and processors. For each preset that shows something on the "
                              "wall, whether each decoder that feeds a tile shows something, too; that is a warning.",
                          .remedy =
                              "Set a display into the place, draw its lead, or let the preset show a stream there. If "
                              "the wall is smaller than was said, change its columns and rows.",
                          .patterns = patterns,
                          .no_source = "Follows from the drawing."};

base::Text place_line(const graph::Wiring& wiring, const WallTile& tile) {
    const std::int64_t column = tile.column + 1, row = tile.row + 1;
    if (!tile.device) return line(STREAMWRIGHT_TEXT("column %1, row %2: no display"), {column, row});
    return line(STREAMWRIGHT_TEXT("column %1, row %2: nothing feeds %3"),
                {column, row, named(device_id(wiring, *tile.device))});
}

void judge_places(const graph::Wiring& wiring, const WallPicture& wall, Findings& out) {
    std::vector<base::Text> terms;
    std::optional<model::DeviceId> first;
    for (const auto& tile : wall.tiles) {
        if (tile.device && tile.fed) continue;
        terms.push_back(place_line(wiring, tile));
        if (!first && tile.device) first = device_id(wiring, *tile.device);
    }
    if (terms.empty()) return;
    const auto dark = static_cast<std::int64_t>(terms.size());
    auto finding = found(words.id, Severity::error, {first.value_or(first_tile(*wall.row))},
                         {wall_ref(*wall.row), dark, static_cast<std::int64_t>(wall.tiles.size())});
    finding.measured = dark;
    finding.limit = std::int64_t{0};
    finding.terms = std::move(terms);
    out.push_back(std::move(finding));
}

/// A preset that shows nothing on the wall at all leaves it dark on purpose.
void judge_preset(const graph::Wiring& wiring, const WallPicture& wall, model::PresetId preset, Findings& out) {
    std::vector<base::Ref> dark;
    bool shows = false;
    for (const auto& tile : wall.tiles) {
        const auto* feed = tile.decoder();
        if (!feed) continue;
        if (shown_by(wiring, feed->device, preset).empty())
            dark.push_back(named(device_id(wiring, *tile.device)));
        else
            shows = true;
    }
    if (!shows || dark.empty()) return;
    out.push_back(found(words.id, Severity::warning, {first_tile(*wall.row), preset},
                        {wall_ref(*wall.row), named(preset), std::move(dark)}, 1));
}

void check(const graph::Wiring& wiring, const graph::SignalGraph& signals, Findings& out) {
    for (const auto& wall : find_wall_pictures(wiring, signals)) {
        judge_places(wiring, wall, out);
        for (const auto& preset : wiring.design.presets) judge_preset(wiring, wall, preset.id, out);
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::wall_tile_missing
