// Tiles of one video wall with other pixels or another size of the image than their neighbours.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/analysis/wall_picture.h"

namespace streamwright::analysis::rules::wall_tiles_differ {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("Tiles of %1 differ: %2 has %3 x %4 pixels, %5 has %6 x %7."),
    STREAMWRIGHT_TEXT("Tiles of %1 differ: the image of %2 is %3 wide and %4 high, that of %5 %6 and %7.")};

constexpr RuleWords words{
    .id = "wall-tiles-differ",
    .severity = Severity::warning,
    .theme = Theme::signals,
    .title = "Unlike tiles in a video wall",
    .meaning =
        "Lines break at the seams and no cut of the picture is right for all tiles; unlike panels "
        "differ in colour and brightness as well.",
    .measured =
        "The pixels and the lit size that the types of a wall's displays state, against those of "
        "its first. A type that states nothing is not judged.",
    .remedy = "Take displays of one type for one wall, and keep a spare of it.",
    .patterns = patterns,
    .no_source = "Follows from what the types state; one panel type a wall is common practice."};

struct Known {
    model::DeviceId device;
    const catalogue::ImageFacts* image;
};

/// The displays whose types state an image, in their order.
std::vector<Known> known_images(const graph::Wiring& wiring, const WallPicture& wall) {
    std::vector<Known> known;
    for (const auto& tile : wall.tiles)
        if (const auto* type = tile_type(wiring, tile); type && type->image)
            known.push_back({device_id(wiring, *tile.device), &*type->image});
    return known;
}

bool pixels_differ(const catalogue::ImageFacts& a, const catalogue::ImageFacts& b) {
    return a.pixels_across != b.pixels_across || a.pixels_down != b.pixels_down;
}

bool sizes_differ(const catalogue::ImageFacts& a, const catalogue::ImageFacts& b) {
    const auto apart = [](const auto& one, const auto& other) { return one && other && *one != *other; };
    return apart(a.width, b.width) || apart(a.height, b.height);
}

void judge(const WallPicture& wall, const Known& first, const Known& other, Findings& out) {
    const auto &a = *first.image, &b = *other.image;
    const std::vector<Subject> subjects{first.device, other.device};
    if (pixels_differ(a, b))
        out.push_back(
            found(words.id, Severity::warning, subjects,
                  {wall_ref(*wall.row), named(first.device), std::int64_t{a.pixels_across}, std::int64_t{a.pixels_down},
                   named(other.device), std::int64_t{b.pixels_across}, std::int64_t{b.pixels_down}}));
    else
        out.push_back(found(
            words.id, Severity::warning, subjects,
            {wall_ref(*wall.row), named(first.device), *a.width, *a.height, named(other.device), *b.width, *b.height},
            1));
}

void check(const graph::Wiring& wiring, const graph::SignalGraph& signals, Findings& out) {
    for (const auto& wall : find_wall_pictures(wiring, signals)) {
        const auto known = known_images(wiring, wall);
        // One finding a wall: who mixes panels mixes many of them.
        for (const auto& other : known)
            if (pixels_differ(*known.front().image, *other.image) || sizes_differ(*known.front().image, *other.image)) {
                judge(wall, known.front(), other, out);
                break;
            }
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::wall_tiles_differ
