#include "app/canvas/painter.h"

#include "app/canvas/far_painter.h"
#include "app/render/paint_fragment.h"

#include <QPainter>
#include <QPainterPath>

#include <cmath>

namespace streamwright::app {

namespace scene_painting {

constexpr double dimmed = 0.45;

void paint_ground(QPainter& painter, const PaintRequest& request) {
    const auto& theme = request.theme;
    painter.fillRect(QRectF(QPointF(), request.size), theme.ground("canvas"));
    const QRectF paper = request.view.to_view(request.scene.paper());
    painter.setPen(QPen(theme.rule("hair"), 0));
    painter.setBrush(Qt::NoBrush);
    painter.drawRect(paper);
    painter.drawRect(request.view.to_view(request.scene.drawing_area()));
    painter.drawRect(request.view.to_view(request.scene.title_block()));
    const double step = 5 * request.view.scale();
    if (step < 12) return;
    const QRectF seen = paper.intersected(QRectF(QPointF(), request.size));
    QVector<QRectF> dots;
    const double x0 = paper.left() + std::ceil((seen.left() - paper.left()) / step) * step;
    const double y0 = paper.top() + std::ceil((seen.top() - paper.top()) / step) * step;
    for (double y = y0; y < seen.bottom(); y += step)
        for (double x = x0; x < seen.right(); x += step) dots.append({x - 0.5, y - 0.5, 1, 1});
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme.rule("hair"));
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.drawRects(dots);
    painter.setRenderHint(QPainter::Antialiasing, true);
}

QPainterPath rounded_line(const std::vector<model::SheetPoint>& points, const ViewTransform& view, double radius) {
    QPainterPath path;
    for (std::size_t i = 0; i < points.size(); ++i) {
        const QPointF at = view.to_view(to_mm(points[i]));
        if (i == 0 || i + 1 == points.size()) {
            i == 0 ? path.moveTo(at) : path.lineTo(at);
            continue;
        }
        const auto toward = [&](std::size_t other) {
            const QPointF way = view.to_view(to_mm(points[other])) - at;
            const double length = std::hypot(way.x(), way.y());
            return at + (length > 0 ? way / length : QPointF()) * std::min(radius, length / 2);
        };
        path.lineTo(toward(i - 1));
        path.quadTo(at, toward(i + 1));
    }
    return path;
}

/// Dark flanks round a pale wash under a selected cable.
void paint_flanks(QPainter& painter, const PaintRequest& request, const CableOnSheet& cable) {
    const double zoom = std::max(request.view.zoom, 0.5);
    const auto path = rounded_line(cable.line.points, request.view, 6 * request.view.zoom);
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(request.theme.colour("select", "outline"), 13 * zoom, Qt::SolidLine, Qt::FlatCap));
    painter.drawPath(path);
    painter.setPen(QPen(request.theme.colour("select", "wash"), 9 * zoom, Qt::SolidLine, Qt::FlatCap));
    painter.drawPath(path);
}

/// A pale wash and a 2 px outline, 5 px off the plate.
void paint_selected_plate(QPainter& painter, const PaintRequest& request, const QRectF& mm) {
    const QRectF box = request.view.to_view(mm).adjusted(-6, -6, 6, 6);
    painter.setPen(QPen(request.theme.colour("select", "outline"), 2));
    painter.setBrush(request.theme.colour("select", "wash"));
    painter.drawRoundedRect(box, 5, 5);
}

/// A style whose tags stand on the ground of the room they lie in.
class OnRoom final : public ScreenStyle {
public:
    using ScreenStyle::ScreenStyle;
    Stroke stroke(deliver::Role role, std::optional<catalogue::Signal> signal) const override {
        if (role == deliver::Role::tag_ground) return {{}, theme().ground("room"), 0, {}, 0};
        return ScreenStyle::stroke(role, signal);
    }
};

bool tag_in_room(const SheetScene& scene, const deliver::Fragment& fragment) {
    for (const auto& shape : fragment.shapes)
        if (const auto* path = std::get_if<deliver::Path>(&shape); path && path->role == deliver::Role::tag_ground)
            return scene.frame_at(to_mm(path->points.front())) != nullptr;
    return false;
}

void paint_cables(QPainter& painter, const PaintRequest& request, const QRectF& seen) {
    const ScreenStyle usual(request.theme);
    const OnRoom on_room(request.theme);
    const SelectedCableStyle chosen(request.theme);
    const PaintOptions options{true, 5};
    for (const auto& cable : request.scene.cables()) {
        const Chosen subject(cable.line.cable);
        if (request.hidden.contains(subject) || !seen.intersects(to_mm(cable.fragment.bounds))) continue;
        const bool selected = request.selected.contains(subject);
        if (selected) paint_flanks(painter, request, cable);
        painter.save();
        painter.setTransform(request.view.transform(), true);
        painter.setOpacity(request.pulling ? dimmed : 1);
        const bool in_room = !selected && tag_in_room(request.scene, cable.fragment);
        paint_fragment(painter, cable.fragment, selected ? chosen : in_room ? on_room : usual, options);
        painter.restore();
    }
}

void veil_lugs(QPainter& painter, const PaintRequest& request, const PlateOnSheet& plate) {
    QColor veil = request.theme.ground(request.scene.frame_at(to_mm(plate.plate.body.at)) ? "room" : "canvas");
    veil.setAlphaF(1 - dimmed);
    for (const auto& spot : plate.plate.spots) {
        const auto port = plate.port(spot.port);
        if (port && request.bright.contains(*port)) continue;
        painter.fillRect(request.view.to_view(to_mm(spot.lug)).adjusted(-1, -1, 1, 1), veil);
    }
}

void paint_plates(QPainter& painter, const PaintRequest& request, const QRectF& seen) {
    const ScreenStyle style(request.theme);
    for (const auto& plate : request.scene.plates()) {
        const Chosen subject(plate.device);
        if (request.hidden.contains(subject) || !seen.intersects(plate.whole())) continue;
        if (request.selected.contains(subject)) paint_selected_plate(painter, request, to_mm(plate.plate.body));
        painter.save();
        painter.setTransform(request.view.transform(), true);
        paint_fragment(painter, plate.fragment, style, {true, 5});
        painter.restore();
        if (request.pulling) veil_lugs(painter, request, plate);
    }
}

void paint_frames(QPainter& painter, const PaintRequest& request, const QRectF& seen, bool text) {
    const ScreenStyle style(request.theme);
    for (const auto& frame : request.scene.frames()) {
        if (request.hidden.contains(Chosen(frame.row.id)) || !seen.intersects(frame.box())) continue;
        if (request.selected.contains(Chosen(frame.row.id))) paint_selected_plate(painter, request, frame.box());
        if (!text) {  // far off, the head is painted at screen size
            painter.setPen(QPen(request.theme.rule("room_edge"), 1));
            painter.setBrush(request.theme.ground("room"));
            painter.drawRect(request.view.to_view(frame.box()));
            continue;
        }
        painter.save();
        painter.setTransform(request.view.transform(), true);
        paint_fragment(painter, frame.fragment, style, {true, 5});
        painter.restore();
    }
}

template <class List>
void paint_small(QPainter& painter, const PaintRequest& request, const List& list, const QRectF& seen) {
    const ScreenStyle style(request.theme);
    for (const auto& each : list) {
        if (!seen.intersects(to_mm(each.fragment.bounds))) continue;
        painter.save();
        painter.setTransform(request.view.transform(), true);
        paint_fragment(painter, each.fragment, style, {true, 3});
        painter.restore();
    }
}

}  // namespace scene_painting

Detail detail_at(double zoom) {
    if (zoom >= 0.7) return Detail::all;
    if (zoom >= 0.35) return Detail::marks;
    return zoom >= 0.15 ? Detail::numbers : Detail::rooms;
}

void paint_scene(QPainter& painter, const PaintRequest& request) {
    using namespace scene_painting;
    painter.setRenderHint(QPainter::Antialiasing);
    const QRectF seen = request.view.to_sheet(QRectF(QPointF(), request.size)).adjusted(-8, -8, 8, 8);
    const auto detail = detail_at(request.view.zoom);
    paint_ground(painter, request);
    paint_frames(painter, request, seen, detail == Detail::all);
    if (detail == Detail::all) {
        paint_cables(painter, request, seen);
        paint_plates(painter, request, seen);
        paint_small(painter, request, request.scene.notes(), seen);
    } else {
        paint_far(painter, request, seen, detail);
    }
    if (detail == Detail::all) paint_small(painter, request, request.scene.badges(), seen);
}

}  // namespace streamwright::app
