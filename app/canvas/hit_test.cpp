#include "app/canvas/hit_test.h"

#include <algorithm>

namespace streamwright::app {

namespace hit_test_detail {

constexpr double lug_catch_px = 3, cable_catch_px = 4, frame_edge_px = 5, frame_head_mm = 6;

/// Frames are caught at their head and edges only, so that a marquee can start inside them.
bool on_frame(const FrameOnSheet& frame, QPointF mm, double edge) {
    const QRectF box = frame.box();
    if (!box.adjusted(-edge, -edge, edge, edge).contains(mm)) return false;
    return mm.y() < box.top() + frame_head_mm || !box.adjusted(edge, edge, -edge, -edge).contains(mm);
}

double distance(const QRectF& box, QPointF mm) {
    const QPointF off = mm - box.center();
    return off.x() * off.x() + off.y() * off.y();
}

/// Nearer to the eye is higher.
int rank(const Target& target) {
    switch (target.kind) {
        case TargetKind::badge:
            return 6;
        case TargetKind::lug:
            return 5;
        case TargetKind::plate:
            return 4;
        case TargetKind::segment:
            return 3;
        case TargetKind::note:
            return 2;
        case TargetKind::frame:
            return 1;
    }
    return 0;
}

bool counts(const SheetScene& scene, const Target& target, QPointF mm, double px) {
    const auto grown = [&](double by) { return target.box.adjusted(-by, -by, by, by).contains(mm); };
    switch (target.kind) {
        case TargetKind::lug:
            return grown(lug_catch_px * px);
        case TargetKind::segment:
            return grown(cable_catch_px * px);
        case TargetKind::frame:
            return on_frame(scene.frames()[static_cast<std::size_t>(target.index)], mm, frame_edge_px * px);
        default:
            return target.box.contains(mm);
    }
}

Hit hit_of(const SheetScene& scene, const Target& target) {
    const auto index = static_cast<std::size_t>(target.index);
    switch (target.kind) {
        case TargetKind::badge:
            return {Hit::Part::badge, scene.badges()[index].subject, -1};
        case TargetKind::lug: {
            const auto port = scene.plates()[index].port(target.part);
            return {Hit::Part::port, port ? std::optional<Chosen>(*port) : std::nullopt, -1};
        }
        case TargetKind::plate:
            return {Hit::Part::plate, Chosen(scene.plates()[index].device), -1};
        case TargetKind::segment:
            return {Hit::Part::cable, Chosen(scene.cables()[index].line.cable), target.part};
        case TargetKind::note:
            return {Hit::Part::note, Chosen(scene.notes()[index].note), -1};
        case TargetKind::frame:
            return {Hit::Part::frame, Chosen(scene.frames()[index].row.id), -1};
    }
    return {};
}

}  // namespace hit_test_detail

Hit hit_test(const SheetScene& scene, QPointF mm, double zoom) {
    using namespace hit_test_detail;
    const double px = 1 / (ViewTransform::pixels_per_mm * zoom);
    const double reach = frame_edge_px * px;
    std::optional<Target> best;
    for (const auto& target : scene.index().meeting(QRectF(mm.x() - reach, mm.y() - reach, 2 * reach, 2 * reach))) {
        if (!counts(scene, target, mm, px)) continue;
        const bool nearer = best && rank(target) == rank(*best) && distance(target.box, mm) < distance(best->box, mm);
        if (!best || rank(target) > rank(*best) || nearer) best = target;
    }
    return best ? hit_of(scene, *best) : Hit{};
}

std::set<Chosen> caught_by(const SheetScene& scene, const QRectF& mm) {
    std::set<Chosen> caught;
    for (const auto& plate : scene.plates())
        if (mm.intersects(to_mm(plate.plate.body))) caught.insert(plate.device);
    for (const auto& cable : scene.cables()) {
        const auto& points = cable.line.points;
        if (!points.empty() && std::ranges::all_of(points, [&](const auto& p) { return mm.contains(to_mm(p)); }))
            caught.insert(cable.line.cable);
    }
    for (const auto& note : scene.notes())
        if (mm.contains(to_mm(note.fragment.bounds))) caught.insert(note.note);
    for (const auto& frame : scene.frames())
        if (mm.contains(frame.box())) caught.insert(frame.row.id);
    return caught;
}

}  // namespace streamwright::app
