// Where the parts of a plate lie. Sides follow the flow: what comes in stands left, what goes out right, and the
// network on the side that looks toward the switches.
#include "core/layout/plate.h"

#include "core/layout/text_width.h"

#include <algorithm>
#include <array>

namespace streamwright::layout {

namespace plate_detail {

using catalogue::DeviceKind;
using catalogue::DeviceType;
using catalogue::PortType;
using catalogue::Role;
using catalogue::Way;

constexpr base::Length least_width = 30 * measure::module, most_for_name = 45 * measure::module;

bool has_role(const DeviceType& type, const std::vector<Role>& roles, Role role) {
    if (!roles.empty()) return std::ranges::find(roles, role) != roles.end();
    return type.codec && !type.codec->roles.empty() && type.codec->roles.front() == role;
}

bool is_switch(const DeviceType& type) { return type.kind == DeviceKind::network_switch; }

bool is_end_of_chain(DeviceKind kind) {
    switch (kind) {
        case DeviceKind::display:
        case DeviceKind::projector:
        case DeviceKind::wall_tile:
        case DeviceKind::speaker:
        case DeviceKind::amplifier:
            return true;
        default:
            return false;
    }
}

bool is_sender(const DeviceType& type, const std::vector<Role>& roles) {
    return type.kind == DeviceKind::extender_sender || has_role(type, roles, Role::encoder);
}

/// Leads without a direction stand where their partner is: toward the source at a sender, else toward the display.
Side two_way_side(const DeviceType& type, const PortType& port, const std::vector<Role>& roles) {
    using catalogue::Signal;
    if (is_network(port.signal)) return is_sender(type, roles) ? Side::right : Side::left;
    if (port.signal == Signal::extender) return type.kind == DeviceKind::extender_receiver ? Side::left : Side::right;
    if (is_end_of_chain(type.kind)) return Side::left;
    if (port.signal == Signal::usb && is_sender(type, roles)) return Side::left;
    return Side::right;
}

/// The front face of a passive pair stands left, its rear right.
Side through_side(const DeviceType& type, std::size_t index) {
    const auto& partner = type.ports[index].passes_to;
    if (!partner) return Side::left;
    for (std::size_t i = 0; i < type.ports.size(); ++i)
        if (type.ports[i].key == *partner) return index < i ? Side::left : Side::right;
    return Side::left;
}

Side natural_side(const DeviceType& type, std::size_t index, const std::vector<Role>& roles) {
    const PortType& port = type.ports[index];
    switch (port.way) {
        case Way::in:
            return Side::left;
        case Way::out:
            return Side::right;
        case Way::through:
            return through_side(type, index);
        default:
            return two_way_side(type, port, roles);
    }
}

/// Switches: odd ports left, even right, cages on the right below; a switch of cages alone alternates them.
std::vector<Side> switch_sides(const DeviceType& type, const std::vector<Role>& roles) {
    const auto copper = std::ranges::count_if(
        type.ports, [](const PortType& p) { return is_network(p.signal) && !is_cage(p.connector); });
    std::vector<Side> sides;
    bool odd = true;
    for (std::size_t i = 0; i < type.ports.size(); ++i) {
        const PortType& port = type.ports[i];
        if (!is_network(port.signal)) {
            sides.push_back(natural_side(type, i, roles));
        } else if (is_cage(port.connector) && copper > 0) {
            sides.push_back(Side::right);
        } else {
            sides.push_back(odd ? Side::left : Side::right);
            odd = !odd;
        }
    }
    return sides;
}

std::vector<Side> sides_of(const DeviceType& type, const std::vector<Role>& roles) {
    if (is_switch(type)) return switch_sides(type, roles);
    std::vector<Side> sides;
    for (std::size_t i = 0; i < type.ports.size(); ++i) sides.push_back(natural_side(type, i, roles));
    return sides;
}

base::Length up_to_five(base::Length width) {
    const auto step = (5 * measure::module).count();
    return base::Length::from_count((width.count() + step - 1) / step * step);
}

/// Room for the fact line: stream and rate, or PoE and free ports.
base::Length least_width_of(const DeviceType& type) {
    if (is_switch(type)) return 45 * measure::module;
    return type.codec ? 35 * measure::module : least_width;
}

/// Wide enough for every row's two labels, a usual tag, and the name as far as it stays short.
base::Length width_of(const DeviceType& type, const std::vector<Side>& sides) {
    std::array<std::vector<base::Length>, 2> labels;
    for (std::size_t i = 0; i < sides.size(); ++i)
        labels[static_cast<std::size_t>(sides[i])].push_back(
            text_width(type.ports[i].label, measure::label_em, Weight::normal));
    base::Length widest;
    for (std::size_t row = 0; row < std::max(labels[0].size(), labels[1].size()); ++row) {
        base::Length pair = 4 * measure::module;
        for (const auto& side : labels)
            if (row < side.size()) pair += side[row];
        widest = std::max(widest, pair);
    }
    const auto name = std::min(text_width(type.name, measure::label_em, Weight::normal), most_for_name);
    const auto tag =
        text_width(type.tag_prefix + "-0000", measure::tag_em, Weight::bold) + measure::mark_size + 2 * measure::module;
    return up_to_five(std::max(least_width_of(type), 2 * measure::inset + std::max({widest, name, tag})));
}

bool tells_fact(const DeviceType& type) { return type.codec || is_switch(type); }

PortSpot spot_at(int port, Side side, const Box& body, base::Length middle, base::Length width, base::Length height) {
    PortSpot spot{port, side, {}, {}, {}};
    const bool left = side == Side::left;
    const auto edge = left ? body.at.x : body.at.x + body.width;
    spot.lug = {{left ? edge - width : edge, middle - height / 2}, width, height};
    spot.lead = {left ? edge - width : edge + width, middle};
    spot.label_baseline = middle + measure::label_em * 3 / 8;  // capitals are 0.75 em
    return spot;
}

void stand_in_rows(Plate& plate, const std::vector<Side>& sides) {
    std::array<int, 2> row{};
    for (std::size_t i = 0; i < sides.size(); ++i) {
        const auto middle = plate.body.at.y + measure::title_row + measure::type_row + measure::port_row / 2 +
                            measure::port_row * row[static_cast<std::size_t>(sides[i])]++;
        plate.spots.push_back(
            spot_at(static_cast<int>(i), sides[i], plate.body, middle, measure::lug_width, measure::lug_height));
    }
}

/// Folded: ticks share the height of the title row, so that cables stay attached and apart.
void stand_in_title(Plate& plate, const std::vector<Side>& sides) {
    std::array<int, 2> seen{};
    for (std::size_t i = 0; i < sides.size(); ++i) {
        const auto of_side = std::ranges::count(sides, sides[i]);
        const auto middle = plate.body.at.y + measure::folded_height *
                                                  (2 * seen[static_cast<std::size_t>(sides[i])]++ + 1) / (2 * of_side);
        const auto height = std::min(measure::module, measure::folded_height / of_side);
        plate.spots.push_back(spot_at(static_cast<int>(i), sides[i], plate.body, middle, measure::tick_width, height));
    }
}

void mark_edges(Plate& plate, const DeviceType& type) {
    for (const PortSpot& spot : plate.spots) {
        if (!is_network(type.ports[static_cast<std::size_t>(spot.port)].signal)) continue;
        if (type.kind == DeviceKind::patch_panel) continue;
        (spot.side == Side::left ? plate.heavy_left : plate.heavy_right) = true;
    }
}

}  // namespace plate_detail

bool Box::holds(model::SheetPoint p) const {
    return p.x >= at.x && p.y >= at.y && p.x <= at.x + width && p.y <= at.y + height;
}

bool Box::meets(const Box& other) const {
    return at.x < other.at.x + other.width && other.at.x < at.x + width && at.y < other.at.y + other.height &&
           other.at.y < at.y + height;
}

Box Box::grown(base::Length by) const { return {{at.x - by, at.y - by}, width + 2 * by, height + 2 * by}; }

Plate plate_of(const catalogue::DeviceType* type, const std::vector<catalogue::Role>& roles,
               const model::Place& place) {
    using namespace plate_detail;
    Plate plate;
    plate.folded = place.folded;
    plate.body = {place.at, least_width, measure::title_row + measure::foot};
    if (!type) return plate;
    auto sides = sides_of(*type, roles);
    plate.body.width = width_of(*type, sides);
    plate.rows =
        static_cast<int>(std::max(std::ranges::count(sides, Side::left), std::ranges::count(sides, Side::right)));
    plate.fact_line = tells_fact(*type) && !place.folded;
    if (place.turned)
        for (Side& side : sides) side = side == Side::left ? Side::right : Side::left;
    plate.body.height = place.folded ? measure::folded_height
                                     : measure::title_row + measure::type_row + measure::port_row * plate.rows +
                                           (plate.fact_line ? measure::fact_row : measure::foot);
    place.folded ? stand_in_title(plate, sides) : stand_in_rows(plate, sides);
    mark_edges(plate, *type);
    return plate;
}

}  // namespace streamwright::layout
