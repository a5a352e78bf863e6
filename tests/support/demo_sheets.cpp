#include "tests/support/demo_sheets.h"

#include "core/layout/cable_route.h"
#include "core/layout/plate.h"

#include <algorithm>
#include <set>
#include <stdexcept>

namespace streamwright::test {

namespace demo_sheets_detail {

constexpr int grid_mm = 5;
constexpr int side_margin_mm = 10, top_margin_mm = 15, foot_margin_mm = 5;

base::Length mm(std::int64_t count) { return base::Length::from_count(count * 1000); }

int up_to_grid(base::Length length) {
    const auto step = std::int64_t{grid_mm} * 1000;
    return static_cast<int>((length.count() + step - 1) / step * grid_mm);
}

int down_to_grid(base::Length length) { return static_cast<int>(length.count() / (grid_mm * 1000)) * grid_mm; }

layout::Box body_of(const model::Design& design, const model::Place& place) {
    const auto& device = *design.devices.find(place.on.device);
    return layout::plate_of(design.type_of(device), device.roles, place).body;
}

}  // namespace demo_sheets_detail

using namespace demo_sheets_detail;

int SheetPlan::put(const std::string& tag, int x_mm, int y_mm, bool turned) {
    auto place = model::Place::blank({sheet_, maker_.tagged(tag)});
    place.at = {mm(x_mm), mm(y_mm)};
    place.turned = turned;
    places_.push_back(place);
    const auto body = body_of(maker_.design(), place);
    return up_to_grid(body.at.y + body.height);
}

int SheetPlan::rows(const std::vector<int>& x_mm, int y_mm, const std::vector<std::vector<std::string>>& tags,
                    int gap_mm) {
    for (const auto& row : tags) {
        int below = y_mm;
        for (std::size_t i = 0; i < row.size(); ++i)
            if (!row[i].empty()) below = std::max(below, put(row[i], x_mm.at(i), y_mm));
        y_mm = below + gap_mm;
    }
    return y_mm;
}

model::Place SheetPlan::place_of(const std::string& tag) const {
    const auto id = maker_.tagged(tag);
    const auto at = std::find_if(places_.begin(), places_.end(), [&](const auto& p) { return p.on.device == id; });
    if (at == places_.end()) throw std::invalid_argument("not on the sheet: " + tag);
    return *at;
}

void SheetPlan::frame(model::RoomId room, const std::string& title, const std::vector<std::string>& tags) {
    base::Length left = mm(100000), top = mm(100000), right, bottom;
    for (const auto& tag : tags) {
        const auto body = body_of(maker_.design(), place_of(tag));
        left = std::min(left, body.at.x);
        top = std::min(top, body.at.y);
        right = std::max(right, body.at.x + body.width);
        bottom = std::max(bottom, body.at.y + body.height);
    }
    auto row = model::RoomFrame::blank(maker_.fresh<model::FrameId>());
    row.sheet = sheet_;
    row.room = room;
    row.title = title;
    const int x = down_to_grid(left) - side_margin_mm;
    const int y = down_to_grid(top) - top_margin_mm;
    row.at = {mm(x), mm(y)};
    row.width = mm(up_to_grid(right) + side_margin_mm - x);
    row.height = mm(up_to_grid(bottom) + foot_margin_mm - y);
    frames_.push_back(row);
}

void SheetPlan::note(int x_mm, int y_mm, const std::string& text) {
    auto row = model::Note::blank(maker_.fresh<model::NoteId>());
    row.sheet = sheet_;
    row.at = {mm(x_mm), mm(y_mm)};
    row.text = text;
    notes_.push_back(row);
}

void SheetPlan::finish() {
    model::AddRows drawn;
    for (const auto& frame : frames_) drawn.rows.emplace_back(frame);
    for (const auto& note : notes_) drawn.rows.emplace_back(note);
    if (!drawn.rows.empty()) maker_.run(drawn);
    maker_.run(model::MoveOnSheet{places_, {}, {}, {}});
    std::set<model::DeviceId> here;
    for (const auto& place : places_) here.insert(place.on.device);
    std::vector<model::CableId> cables;
    for (const auto& cable : maker_.design().cables)
        if (cable.a && cable.b && here.count(cable.a->port.device) && here.count(cable.b->port.device))
            cables.push_back(cable.id);
    if (cables.empty()) return;
    maker_.run(model::MoveOnSheet{{}, {}, {}, layout::reroute(maker_.design(), sheet_, cables)});
}

}  // namespace streamwright::test
