#include "app/canvas/sheet_scene.h"

#include "app/words/words.h"
#include "core/deliver/drawing/paper.h"
#include "core/deliver/drawing/schematic_fragments.h"
#include "core/deliver/sheet_size.h"
#include "core/layout/lines.h"

#include <algorithm>
#include <map>

namespace streamwright::app {

namespace sheet_scene_detail {

QRectF segment_box(QPointF a, QPointF b) { return QRectF(a, b).normalized().adjusted(-0.2, -0.2, 0.2, 0.2); }

/// Where the badge of a subject stands: ports badge their device.
Chosen badge_place(const Chosen& subject) {
    const auto* port = std::get_if<model::PortRef>(&subject);
    return port ? Chosen(port->device) : subject;
}

/// The first subject that has a place on a drawing; a VLAN has none, so its switch wears the badge.
std::optional<Chosen> badge_subject(const model::Design& design, const analysis::Finding& finding) {
    for (const auto& subject : finding.subjects)
        if (!std::holds_alternative<model::VlanId>(subject)) return chosen_for(design, subject);
    return std::nullopt;
}

struct Tally {
    analysis::Severity gravest = analysis::Severity::advice;
    int count = 0;
};

std::string subject_of(const Chosen& subject) {
    if (const auto* cable = std::get_if<model::CableId>(&subject)) return "cable:" + cable->text();
    if (const auto* device = std::get_if<model::DeviceId>(&subject)) return "device:" + device->text();
    return {};
}

template <class List, class Id, class Of>
auto by_id(const List& list, const Id& id, Of of) -> decltype(&list.front()) {
    const auto found = std::ranges::lower_bound(list, id, {}, of);
    return found != list.end() && of(*found) == id ? &*found : nullptr;
}

}  // namespace sheet_scene_detail

std::optional<model::PortRef> PlateOnSheet::port(int index) const {
    if (!type || index < 0 || static_cast<std::size_t>(index) >= type->ports.size()) return std::nullopt;
    return model::PortRef{device, type->ports[static_cast<std::size_t>(index)].key};
}

QRectF PlateOnSheet::whole() const {
    QRectF box = to_mm(plate.body);
    for (const auto& spot : plate.spots) box |= to_mm(spot.lug);
    return box;
}

SheetScene::SheetScene(const Document& document, model::SheetId sheet) : design_(document.design()), sheet_(sheet) {
    const auto* row = design_.sheets.find(sheet);
    if (!row) return;
    const auto size = deliver::sheet_size(row->paper);
    paper_ = QRectF(0, 0, to_mm(size.width), to_mm(size.height));
    drawing_area_ = to_mm(size.frame);
    title_block_ = QRectF(0, 0, to_mm(deliver::title_block_width), to_mm(deliver::title_block_height));
    title_block_.moveBottomRight(drawing_area_.bottomRight());
    const deliver::Scene scene{design_, document.analyser().facts(), sheet, phrasebook(design_)};
    for (const auto& frame : design_.room_frames)
        if (frame.sheet == sheet) frames_.push_back({frame, deliver::room_fragment(scene, frame)});
    auto lines = deliver::drawn_lines(scene, deliver::plates_of(scene));
    for (const auto& line : lines) cables_.push_back({line, deliver::cable_fragment_among(scene, line, lines)});
    add_plates(scene);
    for (const auto& note : design_.notes)
        if (note.sheet == sheet) notes_.push_back({note.id, deliver::note_fragment(scene, note)});
    add_badges(document, scene);
    make_index();
}

void SheetScene::add_plates(const deliver::Scene& scene) {
    for (const auto& place : design_.places) {
        if (place.on.sheet != sheet_) continue;
        const auto* device = design_.devices.find(place.on.device);
        if (!device) continue;
        plates_.push_back({place.on.device, deliver::plate_in(scene, place), deliver::type_in(scene, *device),
                           deliver::device_fragment(scene, place)});
    }
}

void SheetScene::add_badges(const Document& document, const deliver::Scene& scene) {
    using namespace sheet_scene_detail;
    std::map<Chosen, Tally> tallies;
    for (const auto& reported : document.reported()) {
        if (reported.waiver && !reported.waiver_outdated) continue;
        const auto subject = badge_subject(design_, reported.finding);
        if (!subject) continue;
        auto& tally = tallies[badge_place(*subject)];
        tally.gravest = std::min(tally.gravest, reported.finding.severity);
        ++tally.count;
    }
    for (const auto& [subject, tally] : tallies) {
        const auto text = subject_of(subject);
        if (text.empty()) continue;
        auto fragment = deliver::badge_fragment(scene, text, tally.gravest, tally.count);
        if (!fragment.shapes.empty()) badges_.push_back({subject, tally.gravest, tally.count, std::move(fragment)});
    }
}

void SheetScene::make_index() {
    using namespace sheet_scene_detail;
    std::vector<Target> targets;
    for (int i = 0; i < static_cast<int>(frames_.size()); ++i)
        targets.push_back({TargetKind::frame, i, 0, frames_[static_cast<std::size_t>(i)].box()});
    for (int i = 0; i < static_cast<int>(notes_.size()); ++i)
        targets.push_back({TargetKind::note, i, 0, to_mm(notes_[static_cast<std::size_t>(i)].fragment.bounds)});
    for (int i = 0; i < static_cast<int>(cables_.size()); ++i) {
        const auto& points = cables_[static_cast<std::size_t>(i)].line.points;
        for (std::size_t s = 0; s + 1 < points.size(); ++s)
            targets.push_back(
                {TargetKind::segment, i, static_cast<int>(s), segment_box(to_mm(points[s]), to_mm(points[s + 1]))});
    }
    for (int i = 0; i < static_cast<int>(plates_.size()); ++i) {
        const auto& plate = plates_[static_cast<std::size_t>(i)].plate;
        targets.push_back({TargetKind::plate, i, 0, to_mm(plate.body)});
        for (const auto& spot : plate.spots) targets.push_back({TargetKind::lug, i, spot.port, to_mm(spot.lug)});
    }
    for (int i = 0; i < static_cast<int>(badges_.size()); ++i)
        targets.push_back({TargetKind::badge, i, 0, to_mm(badges_[static_cast<std::size_t>(i)].fragment.bounds)});
    index_ = SceneIndex(std::move(targets));
}

const PlateOnSheet* SheetScene::plate(model::DeviceId device) const {
    return sheet_scene_detail::by_id(plates_, device, [](const auto& each) { return each.device; });
}

const CableOnSheet* SheetScene::cable(model::CableId cable) const {
    const auto found = std::ranges::find_if(cables_, [&](const auto& each) { return each.line.cable == cable; });
    return found == cables_.end() ? nullptr : &*found;
}

const layout::PortSpot* SheetScene::spot(const model::PortRef& ref) const {
    const auto* on_sheet = plate(ref.device);
    if (!on_sheet) return nullptr;
    for (const auto& spot : on_sheet->plate.spots)
        if (on_sheet->port(spot.port) == ref) return &spot;
    return nullptr;
}

std::optional<QRectF> SheetScene::bounds(const Chosen& subject) const {
    struct Find {
        const SheetScene& scene;
        std::optional<QRectF> operator()(model::DeviceId id) const {
            const auto* plate = scene.plate(id);
            return plate ? std::optional(to_mm(plate->plate.body)) : std::nullopt;
        }
        std::optional<QRectF> operator()(model::CableId id) const {
            const auto* cable = scene.cable(id);
            return cable ? std::optional(to_mm(cable->fragment.bounds)) : std::nullopt;
        }
        std::optional<QRectF> operator()(const model::PortRef& ref) const {
            const auto* spot = scene.spot(ref);
            return spot ? std::optional(to_mm(spot->lug)) : std::nullopt;
        }
        std::optional<QRectF> operator()(model::StreamId id) const {
            const auto* stream = scene.design().streams.find(id);
            return stream ? (*this)(stream->encoder) : std::nullopt;
        }
        std::optional<QRectF> operator()(model::FrameId id) const {
            for (const auto& frame : scene.frames())
                if (frame.row.id == id) return frame.box();
            return std::nullopt;
        }
        std::optional<QRectF> operator()(model::NoteId id) const {
            for (const auto& note : scene.notes())
                if (note.note == id) return to_mm(note.fragment.bounds);
            return std::nullopt;
        }
        std::optional<QRectF> operator()(model::VlanId) const { return std::nullopt; }
    };
    return std::visit(Find{*this}, subject);
}

QRectF SheetScene::drawn() const {
    QRectF all;
    for (const auto& frame : frames_) all |= frame.box();
    for (const auto& plate : plates_) all |= plate.whole();
    for (const auto& cable : cables_) all |= to_mm(cable.fragment.bounds);
    for (const auto& note : notes_) all |= to_mm(note.fragment.bounds);
    return all;
}

std::vector<layout::Box> SheetScene::obstacles() const {
    std::vector<layout::Box> boxes;
    for (const auto& plate : plates_) boxes.push_back(layout::obstacle(plate.plate));
    return boxes;
}

const FrameOnSheet* SheetScene::frame_at(QPointF mm) const {
    const FrameOnSheet* best = nullptr;
    const auto area = [](const FrameOnSheet& frame) { return frame.box().width() * frame.box().height(); };
    for (const auto& frame : frames_)
        if (frame.box().contains(mm) && (!best || area(frame) < area(*best))) best = &frame;
    return best;
}

}  // namespace streamwright::app
