#include "app/render/paint_fragment.h"

#include "app/style/bundled_font.h"
#include "core/layout/text_width.h"

#include <QFont>
#include <QPainter>
#include <QPainterPath>
#include <QPolygonF>

#include <algorithm>
#include <cmath>
#include <variant>

namespace streamwright::app {

namespace paint_fragment_detail {

double mm(base::Length length) { return static_cast<double>(length.count()) / 1000.0; }
QPointF mm(deliver::SheetPoint point) { return {mm(point.x), mm(point.y)}; }

QPointF unit(QPointF from, QPointF to) {
    const QPointF way = to - from;
    const double length = std::hypot(way.x(), way.y());
    return length > 0 ? way / length : QPointF();
}

/// The polyline shifted to its left by `by`, corners mitred; exact for the right angles that cables have.
QPolygonF shifted(const QPolygonF& line, double by) {
    QPolygonF out;
    for (int i = 0; i < line.size(); ++i) {
        const QPointF before = i > 0 ? unit(line[i - 1], line[i]) : unit(line[i], line[i + 1]);
        const QPointF after = i + 1 < line.size() ? unit(line[i], line[i + 1]) : before;
        const QPointF left_before(before.y(), -before.x());
        const QPointF left_after(after.y(), -after.x());
        const double along = QPointF::dotProduct(left_before, left_after);
        const QPointF miter = (left_before + left_after) / std::max(0.2, 1 + along);
        out << line[i] + miter * by;
    }
    return out;
}

/// Straight pieces with corners rounded by `radius`, or by less where the pieces are short.
QPainterPath rounded(const QPolygonF& line, double radius, bool closed) {
    QPainterPath path;
    const auto count = line.size();
    if (count < 2) return path;
    if (radius <= 0 || count < 3) {
        path.addPolygon(line);
        if (closed) path.closeSubpath();
        return path;
    }
    const auto corner = [&](QPointF before, QPointF at, QPointF after, bool first) {
        const double room = std::min(std::hypot(before.x() - at.x(), before.y() - at.y()),
                                     std::hypot(after.x() - at.x(), after.y() - at.y())) /
                            2;
        const double cut = std::min(radius, room);
        const QPointF start = at + unit(at, before) * cut;
        const QPointF end = at + unit(at, after) * cut;
        if (first)
            path.moveTo(start);
        else
            path.lineTo(start);
        path.quadTo(at, end);
    };
    if (closed) {
        for (int i = 0; i < count; ++i) corner(line[(i + count - 1) % count], line[i], line[(i + 1) % count], i == 0);
        path.closeSubpath();
        return path;
    }
    path.moveTo(line.front());
    for (int i = 1; i + 1 < count; ++i) corner(line[i - 1], line[i], line[i + 1], false);
    path.lineTo(line.back());
    return path;
}

QPen pen_of(const Stroke& stroke) {
    if (!stroke.line.isValid()) return {Qt::NoPen};
    QPen pen(stroke.line, stroke.width_mm, Qt::SolidLine, Qt::FlatCap, Qt::MiterJoin);
    if (!stroke.dash_mm.isEmpty()) {
        QVector<qreal> dashes;
        for (const double each : stroke.dash_mm) dashes << each / stroke.width_mm;
        pen.setDashPattern(dashes);
    }
    return pen;
}

void paint_path(QPainter& painter, const deliver::Path& path, const PaintStyle& style) {
    const Stroke stroke = style.stroke(path.role, path.signal);
    QPolygonF line;
    for (const auto& point : path.points) line << mm(point);
    if (line.size() < 2) return;
    painter.setPen(pen_of(stroke));
    // Marks are drawn in ink: their filled parts take the colour of their line. All else is filled only where the style
    // says so: rooms have no ground on paper.
    const QColor solid = path.filled && path.role == deliver::Role::mark ? stroke.line : stroke.fill;
    const bool fills = path.closed && solid.isValid();
    painter.setBrush(fills ? QBrush(solid) : QBrush(Qt::NoBrush));
    if (stroke.gap_mm > 0 && !path.closed) {
        const double half = (stroke.gap_mm + stroke.width_mm) / 2;
        for (const double side : {-half, half}) painter.drawPath(rounded(shifted(line, side), mm(path.radius), false));
        return;
    }
    painter.drawPath(rounded(line, mm(path.radius), path.closed));
}

double device_scale(const QPainter& painter) { return std::sqrt(std::abs(painter.combinedTransform().determinant())); }

void paint_text(QPainter& painter, const deliver::TextLine& text, const PaintStyle& style,
                const PaintOptions& options) {
    const double scale = device_scale(painter);
    const double em = mm(text.em);
    if (em * scale < options.least_text_px || text.text.empty()) return;
    // The font is asked for in whole device pixels, then scaled by the small rest, so that widths follow the design.
    const int pixels = std::clamp(static_cast<int>(std::lround(em * scale)), 1, 400);
    QFont font(QString::fromLatin1(bundled_family));
    font.setPixelSize(pixels);
    font.setBold(text.weight == layout::Weight::bold);
    font.setStyleStrategy(QFont::PreferNoShaping);
    font.setHintingPreference(QFont::PreferNoHinting);
    const double width =
        text.anchor == deliver::Anchor::left ? 0 : mm(layout::text_width(text.text, text.em, text.weight));
    painter.save();
    painter.translate(mm(text.at));
    if (text.upright) painter.rotate(-90);
    painter.translate(text.anchor == deliver::Anchor::middle ? -width / 2 : -width, 0);
    painter.scale(em / pixels, em / pixels);
    painter.setFont(font);
    painter.setPen(style.text(text.role, text.signal));
    painter.drawText(QPointF(0, 0), QString::fromStdString(text.text));
    painter.restore();
}

}  // namespace paint_fragment_detail

void paint_fragment(QPainter& painter, const deliver::Fragment& fragment, const PaintStyle& style,
                    const PaintOptions& options) {
    using namespace paint_fragment_detail;
    for (const auto& shape : fragment.shapes) {
        if (const auto* path = std::get_if<deliver::Path>(&shape))
            paint_path(painter, *path, style);
        else if (options.text)
            paint_text(painter, std::get<deliver::TextLine>(shape), style, options);
    }
}

}  // namespace streamwright::app
