#include "app/canvas/overlay.h"

#include "app/render/paint_fragment.h"

#include <QFontMetricsF>
#include <QPainter>
#include <QPainterPath>

#include <algorithm>

namespace streamwright::app {

namespace overlay_painting {

/// 1 px of ink, 3 px off: under the pointer, or where the keyboard is.
void paint_attention(QPainter& painter, const PaintRequest& request, const Chosen& subject, bool strong) {
    if (!strong && request.selected.contains(subject)) return;  // told already
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(request.theme.text(), strong ? 1.5 : 1));
    if (const auto* id = std::get_if<model::CableId>(&subject)) {
        const auto* cable = request.scene.cable(*id);
        if (!cable || request.selected.contains(subject)) return;
        QPolygonF line;
        for (const auto& point : cable->line.points) line << request.view.to_view(to_mm(point));
        QPainterPath path;
        path.addPolygon(line);
        QPainterPathStroker stroker;
        stroker.setWidth(13);
        stroker.setCapStyle(Qt::FlatCap);
        stroker.setJoinStyle(Qt::MiterJoin);
        painter.drawPath(stroker.createStroke(path).simplified());
        return;
    }
    if (const auto box = request.scene.bounds(subject)) {
        const bool port = std::holds_alternative<model::PortRef>(subject);
        const double off = port ? 2.5 : 3.5;
        painter.drawRoundedRect(request.view.to_view(*box).adjusted(-off, -off, off, off), 4, 4);
    }
}

/// Square handles at the ends and bends of selected cables, and where a selected frame is resized.
void paint_handles(QPainter& painter, const PaintRequest& request) {
    painter.setPen(QPen(request.theme.text(), 1.5));
    painter.setBrush(request.theme.ground("plate"));
    for (const auto& subject : request.selected) {
        const auto handle = [&](QPointF at) { painter.drawRect(QRectF(at.x() - 4, at.y() - 4, 8, 8)); };
        if (std::holds_alternative<model::FrameId>(subject))
            if (const auto box = request.scene.bounds(subject)) handle(request.view.to_view(*box).bottomRight());
        const auto* id = std::get_if<model::CableId>(&subject);
        const auto* cable = id ? request.scene.cable(*id) : nullptr;
        if (!cable || request.hidden.contains(subject)) continue;
        for (const auto& point : cable->line.points) handle(request.view.to_view(to_mm(point)));
    }
}

/// The ring round ports, and round selected ports.
void paint_ring(QPainter& painter, const PaintRequest& request, const model::PortRef& port) {
    const auto* spot = request.scene.spot(port);
    if (!spot) return;
    painter.setBrush(Qt::NoBrush);
    painter.setPen(QPen(request.theme.text(), 2));
    painter.drawRoundedRect(request.view.to_view(to_mm(spot->lug)).adjusted(-3.5, -3.5, 3.5, 3.5), 3, 3);
}

void paint_strike(QPainter& painter, const PaintRequest& request, const model::PortRef& port) {
    const auto* spot = request.scene.spot(port);
    if (!spot) return;
    const QRectF lug = request.view.to_view(to_mm(spot->lug)).adjusted(-3, -3, 3, 3);
    painter.setPen(QPen(request.theme.severity(analysis::Severity::error), 3));
    painter.drawLine(lug.bottomLeft(), lug.topRight());
}

void paint_preview(QPainter& painter, const PaintRequest& request, const PreviewLine& line) {
    if (line.points.size() < 2) return;
    if (!line.refused) {
        deliver::Path path;
        path.points = line.points;
        path.role = deliver::Role::cable;
        path.signal = line.signal;
        path.radius = base::Length::from_count(1500);
        painter.save();
        painter.setTransform(request.view.transform(), true);
        paint_fragment(painter, {{}, {}, {path}}, ScreenStyle(request.theme));
        painter.restore();
        return;
    }
    QPolygonF points;
    for (const auto& point : line.points) points << request.view.to_view(to_mm(point));
    QPen pen(request.theme.severity(analysis::Severity::error), 2, Qt::CustomDashLine, Qt::FlatCap);
    pen.setDashPattern({1, 2});
    painter.setPen(pen);
    painter.setBrush(Qt::NoBrush);
    painter.drawPolyline(points);
}

void paint_diamond(QPainter& painter, const Theme& theme, QPointF centre) {
    painter.setPen(Qt::NoPen);
    painter.setBrush(theme.severity(analysis::Severity::error));
    painter.drawPolygon(
        QPolygonF{centre + QPointF(0, -9), centre + QPointF(9, 0), centre + QPointF(0, 9), centre + QPointF(-9, 0)});
}

void paint_note(QPainter& painter, const PaintRequest& request, const PointerNote& note) {
    QFont bold = painter.font(), normal = painter.font();
    bold.setBold(true);
    bold.setPixelSize(12);
    normal.setPixelSize(12);
    const double text_width = 340, left = note.refused ? 38 : 14;
    const auto height_of = [&](const QFont& font, const QString& words) {
        return words.isEmpty()
                   ? 0.0
                   : QFontMetricsF(font).boundingRect(QRectF(0, 0, text_width, 400), Qt::TextWordWrap, words).height() +
                         4;
    };
    const double head = height_of(bold, note.head), why = height_of(normal, note.why);
    const double hint = height_of(normal, note.hint);
    QRectF box(note.at + QPointF(16, 18), QSizeF(text_width + left + 14, head + why + hint + 18));
    if (box.right() > request.size.width() - 4) box.moveRight(note.at.x() - 12);
    if (box.bottom() > request.size.height() - 4) box.moveBottom(note.at.y() - 14);
    box.moveLeft(std::max(box.left(), 4.0));
    const auto& theme = request.theme;
    painter.setPen(QPen(note.refused ? theme.severity_edge(analysis::Severity::error) : theme.rule("plate_edge"),
                        note.refused ? 1.5 : 1));
    painter.setBrush(theme.ground("plate"));
    painter.drawRoundedRect(box, 3, 3);
    if (note.refused) paint_diamond(painter, theme, box.topLeft() + QPointF(20, 18));
    QRectF at(box.left() + left, box.top() + 10, text_width, head);
    const auto line = [&](const QFont& font, const QColor& colour, const QString& words, double high) {
        painter.setFont(font);
        painter.setPen(colour);
        at.setHeight(high);
        painter.drawText(at, Qt::TextWordWrap, words);
        at.translate(0, high);
    };
    line(bold, theme.text(), note.head, head);
    line(normal, theme.text("muted"), note.why, why);
    line(normal, theme.text(), note.hint, hint);
}

void paint_ghosts(QPainter& painter, const Overlay& overlay, const PaintRequest& request) {
    const ScreenStyle style(request.theme);
    painter.save();
    painter.setTransform(request.view.transform(), true);
    painter.translate(overlay.ghost_shift);
    for (const auto& ghost : overlay.ghosts) paint_fragment(painter, ghost, style, {true, 4});
    painter.restore();
}

void paint_marquee(QPainter& painter, const PaintRequest& request, const QRectF& mm) {
    QColor wash = request.theme.colour("select", "wash");
    wash.setAlphaF(0.4);
    QPen pen(request.theme.text(), 1, Qt::CustomDashLine);
    pen.setDashPattern({4, 3});
    painter.setPen(pen);
    painter.setBrush(wash);
    painter.drawRect(request.view.to_view(mm));
}

}  // namespace overlay_painting

void Overlay::clear_gesture() {
    const auto keep_hover = hover, keep_focus = focus;
    *this = Overlay();
    hover = keep_hover;
    focus = keep_focus;
}

void paint_overlay(QPainter& painter, const Overlay& overlay, const PaintRequest& request) {
    using namespace overlay_painting;
    painter.setRenderHint(QPainter::Antialiasing);
    paint_ghosts(painter, overlay, request);
    for (const auto& line : overlay.lines) paint_preview(painter, request, line);
    if (detail_at(request.view.zoom) == Detail::all) paint_handles(painter, request);
    for (const auto& subject : request.selected)
        if (const auto* port = std::get_if<model::PortRef>(&subject)) paint_ring(painter, request, *port);
    for (const auto& port : overlay.fitting) paint_ring(painter, request, port);
    if (overlay.hover && !overlay.pulling) paint_attention(painter, request, *overlay.hover, false);
    if (overlay.focus) paint_attention(painter, request, *overlay.focus, true);
    if (overlay.refusing) paint_strike(painter, request, *overlay.refusing);
    if (overlay.marquee) paint_marquee(painter, request, *overlay.marquee);
    if (overlay.note) paint_note(painter, request, *overlay.note);
}

}  // namespace streamwright::app
