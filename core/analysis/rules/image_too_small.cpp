// A picture too small for those who sit farthest away. Of each room its largest image is judged: who sits farthest
// looks at that one, and smaller ones beside it serve somebody nearer (a lectern, a side row). Where an image of the
// room is of unknown size, such as a projector's, it may be the larger one, and nothing is said.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/analysis/wall_picture.h"
#include "core/standards/viewing.h"

#include <map>
#include <set>

namespace streamwright::analysis::rules::image_too_small {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("The image of %1 in %2 is %3 high; the farthest viewer at %4 needs %5, this one reaches %6.")};

constexpr standards::Citation sources[] = {standards::viewing_source};

constexpr RuleWords words{.id = "image-too-small",
                          .severity = Severity::advice,
                          .theme = Theme::signals,
                          .title = "Image too small for the farthest viewer",
                          .meaning = "Those in the last row see that there is a picture and cannot read what is on it.",
                          .measured =
                              "The lit height of the largest image of a room, a wall as a whole, against what the "
                              "room's viewing task asks: for basic decision making farthest viewer / (200 x element "
                              "height), for analytical decision making farthest viewer x lines / 3438. Passive viewing "
                              "and full motion video ask for no size. Rooms without these facts, and images of unknown "
                              "size, are not judged.",
                          .remedy =
                              "Take a larger display, bring the last row nearer, or show larger letters and say so by "
                              "the element height of the room.",
                          .patterns = patterns,
                          .sources = sources};

/// An image of a room: a display, or a wall as one.
struct Image {
    model::DeviceId badge;
    base::Ref name;
    std::optional<base::Length> height;
    std::optional<std::int64_t> lines;
};

using ImagesOfRooms = std::map<model::RoomId, std::vector<Image>>;

bool is_display(catalogue::DeviceKind kind) {
    return kind == catalogue::DeviceKind::display || kind == catalogue::DeviceKind::projector ||
           kind == catalogue::DeviceKind::wall_tile;
}

void add_walls(const graph::Wiring& wiring, const graph::SignalGraph& signals, ImagesOfRooms& images,
               std::set<model::DeviceId>& tiles) {
    for (const auto& wall : find_wall_pictures(wiring, signals)) {
        for (const auto& tile : wall.row->tiles)
            if (tile) tiles.insert(*tile);
        const auto first = first_tile(*wall.row);
        const auto* device = wiring.design.devices.find(first);
        const auto room = wall.row->room || !device ? wall.row->room : device->room;
        if (!room) continue;
        Image image{first, wall_ref(*wall.row), wall.height, {}};
        if (wall.raster) image.lines = standards::wall_canvas(*wall.raster).height;
        images[*room].push_back(std::move(image));
    }
}

ImagesOfRooms images_of_rooms(const graph::Wiring& wiring, const graph::SignalGraph& signals) {
    ImagesOfRooms images;
    std::set<model::DeviceId> tiles;
    add_walls(wiring, signals, images, tiles);
    for (const auto& device : wiring.devices) {
        if (!device.type || !is_display(device.type->kind) || !device.row->room || tiles.contains(device.row->id))
            continue;
        Image image{device.row->id, named(device.row->id), {}, {}};
        if (const auto& facts = device.type->image) {
            image.height = facts->height;
            image.lines = facts->pixels_down;
        }
        images[*device.row->room].push_back(std::move(image));
    }
    return images;
}

struct Need {
    base::Length height, reach;
    base::Text term;
};

/// "3 %", "2.75 %".
std::string percent_text(standards::ElementHeight element) {
    auto digits = base::print_decimal(element.count(), 3);
    while (digits.back() == '0') digits.pop_back();
    if (digits.back() == '.') digits.pop_back();
    return digits + " %";
}

std::optional<Need> need_of(const model::Room& room, const Image& image) {
    if (!room.farthest_viewer || !room.viewing || !image.height) return std::nullopt;
    const auto farthest = *room.farthest_viewer;
    if (*room.viewing == standards::ViewingCategory::basic && room.element_height) {
        const auto element = *room.element_height;
        const auto height = standards::basic_image_height(farthest, element);
        return Need{height, standards::basic_farthest_viewer(*image.height, element),
                    line(STREAMWRIGHT_TEXT("%1 / (200 x %2) = %3"), {farthest, percent_text(element), height})};
    }
    if (*room.viewing == standards::ViewingCategory::analytical && image.lines && *image.lines <= 1'000'000) {
        const auto lines = static_cast<int>(*image.lines);
        const auto height = standards::analytical_image_height(farthest, lines);
        return Need{height, standards::analytical_farthest_viewer(*image.height, lines),
                    line(STREAMWRIGHT_TEXT("%1 x %2 lines / 3438 = %3"), {farthest, *image.lines, height})};
    }
    return std::nullopt;
}

void judge(const model::Room& room, const Image& image, Findings& out) {
    const auto need = need_of(room, image);
    if (!need || *image.height >= need->height) return;
    auto finding = found(words.id, Severity::advice, {image.badge},
                         {image.name, base::Ref{"room:" + room.id.text()}, *image.height, *room.farthest_viewer,
                          need->height, need->reach});
    finding.measured = *image.height;
    finding.limit = need->height;
    finding.terms.push_back(need->term);
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::SignalGraph& signals, Findings& out) {
    for (const auto& [id, images] : images_of_rooms(wiring, signals)) {
        const auto* room = wiring.design.rooms.find(id);
        if (!room || !room->viewing || !room->farthest_viewer) continue;
        std::optional<base::Length> largest;
        bool known = true;
        for (const auto& image : images) {
            known = known && image.height.has_value();
            if (image.height && (!largest || *image.height > *largest)) largest = image.height;
        }
        if (!known) continue;
        for (const auto& image : images)
            if (image.height == largest) judge(*room, image, out);
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::image_too_small
