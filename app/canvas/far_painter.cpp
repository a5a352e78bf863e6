#include "app/canvas/far_painter.h"

#include "app/render/paint_fragment.h"
#include "app/render/role_icon.h"
#include "app/style/bundled_font.h"
#include "app/words/words.h"
#include "core/deliver/drawing/role_mark.h"

#include <QPainter>

namespace streamwright::app {

namespace far_painting {

QFont label_font(int pixels, bool bold) {
    QFont font(QString::fromLatin1(bundled_family));
    font.setPixelSize(pixels);
    font.setBold(bold);
    font.setStyleStrategy(QFont::PreferNoShaping);
    return font;
}

/// Lugs are not drawn from far: the line goes on to the plate's edge.
std::vector<model::SheetPoint> points_to_plates(const deliver::DrawnLine& line) {
    auto points = line.points;
    if (points.size() < 2) return points;
    const auto reach = [](model::SheetPoint& end, const model::SheetPoint& next) {
        if (next.x != end.x) end.x += next.x > end.x ? -layout::measure::lug_width : layout::measure::lug_width;
    };
    const auto second = points[1], last_but_one = points[points.size() - 2];
    if (!line.flag_at_start) reach(points.front(), second);
    if (!line.flag_at_end) reach(points.back(), last_but_one);
    return points;
}

void paint_lines(QPainter& painter, const PaintRequest& request, const QRectF& seen) {
    painter.setRenderHint(QPainter::Antialiasing, false);
    painter.setBrush(Qt::NoBrush);
    for (const auto& cable : request.scene.cables()) {
        const Chosen subject(cable.line.cable);
        if (request.hidden.contains(subject) || !seen.intersects(to_mm(cable.fragment.bounds))) continue;
        const bool selected = request.selected.contains(subject);
        QPolygonF line;
        for (const auto& point : points_to_plates(cable.line)) line << request.view.to_view(to_mm(point));
        if (selected) {
            painter.setPen(QPen(request.theme.colour("select", "outline"), 5));
            painter.drawPolyline(line);
        }
        painter.setOpacity(request.pulling ? 0.45 : 1);
        painter.setPen(QPen(request.theme.signal(cable.line.signal), request.view.zoom >= 0.35 ? 2 : 1));
        painter.drawPolyline(line);
        painter.setOpacity(1);
    }
    painter.setRenderHint(QPainter::Antialiasing, true);
}

void paint_edges(QPainter& painter, const PaintRequest& request, const PlateOnSheet& plate, const QRectF& body) {
    const auto network = request.theme.signal(catalogue::Signal::copper);
    const double width = std::max(2.0, 4 * request.view.zoom);
    if (plate.plate.heavy_left) painter.fillRect(QRectF(body.left(), body.top(), width, body.height()), network);
    if (plate.plate.heavy_right)
        painter.fillRect(QRectF(body.right() - width, body.top(), width, body.height()), network);
}

void paint_ticks(QPainter& painter, const PaintRequest& request, const PlateOnSheet& plate) {
    for (const auto& spot : plate.plate.spots) {
        const QRectF lug = request.view.to_view(to_mm(spot.lug));
        const QRectF tick(lug.left(), lug.center().y() - 1.5, lug.width(), 3);
        const auto& port = plate.type->ports[static_cast<std::size_t>(spot.port)];
        painter.fillRect(tick, request.theme.signal(port.signal));
    }
}

void paint_mark(QPainter& painter, const PaintRequest& request, const PlateOnSheet& plate, QPointF at, double size) {
    const auto* device = request.scene.design().devices.find(plate.device);
    deliver::Fragment mark;
    for (auto& path : deliver::role_mark(plate.type, device ? device->roles : std::vector<catalogue::Role>{}, {}))
        mark.shapes.emplace_back(std::move(path));
    painter.save();
    painter.translate(at);
    painter.scale(size / 4, size / 4);  // a mark is 4 mm wide
    paint_fragment(painter, mark, ScreenStyle(request.theme));
    painter.restore();
}

/// The tag below the mark, or beside it where the plate is low. A narrow plate gives up the mark before the name, and
/// the name before its number.
void paint_mark_and_tag(QPainter& painter, const PaintRequest& request, const PlateOnSheet& plate, const QRectF& body,
                        const QString& tag) {
    const bool low = body.height() < 40;
    const double size = std::clamp(low ? body.height() - 6 : body.height() / 2, 6.0, 16.0);
    painter.setFont(label_font(11, true));
    const auto wide = painter.fontMetrics().horizontalAdvance(tag);
    QRectF room = low ? body.adjusted(10 + size, 0, -4, 0) : body.adjusted(6, 4 + size, -4, -3);
    if (low && wide > room.width() && wide <= body.width() - 8)
        room = body.adjusted(4, 0, -4, 0);
    else
        paint_mark(painter, request, plate, body.topLeft() + QPointF(6, low ? (body.height() - size) / 2 : 4), size);
    painter.setPen(request.theme.text());
    const auto words = wide <= room.width() ? tag : number_of(tag.toStdString());
    painter.drawText(room, Qt::AlignLeft | (low ? Qt::AlignVCenter : Qt::AlignBottom), words);
}

void paint_far_plate(QPainter& painter, const PaintRequest& request, const PlateOnSheet& plate, Detail detail) {
    const QRectF body = request.view.to_view(to_mm(plate.plate.body));
    const bool selected = request.selected.contains(Chosen(plate.device));
    if (selected) {
        painter.setPen(QPen(request.theme.colour("select", "outline"), 2));
        painter.setBrush(request.theme.colour("select", "wash"));
        painter.drawRoundedRect(body.adjusted(-4, -4, 4, 4), 4, 4);
    }
    painter.setPen(QPen(request.theme.rule("plate_edge"), 1));
    painter.setBrush(request.theme.ground("plate"));
    painter.drawRect(body);
    paint_edges(painter, request, plate, body);
    if (detail == Detail::rooms) return;
    const auto* device = request.scene.design().devices.find(plate.device);
    const std::string tag = device ? device->tag : std::string();
    painter.setPen(request.theme.text());
    if (detail == Detail::marks) {
        if (plate.type) paint_ticks(painter, request, plate);
        paint_mark_and_tag(painter, request, plate, body, shown(tag));
        return;
    }
    painter.setFont(label_font(11, true));
    const auto number = number_of(tag);
    if (painter.fontMetrics().horizontalAdvance(number) < body.width() && body.height() > 9)
        painter.drawText(body, Qt::AlignCenter, number);
}

/// Number in its dark tab and name, at screen size where the drawn ones could not be read.
void paint_frame_heads(QPainter& painter, const PaintRequest& request, const QRectF& seen) {
    for (const auto& frame : request.scene.frames()) {
        const auto* room = request.scene.design().rooms.find(frame.row.room);
        if (!room || !seen.intersects(frame.box()) || request.hidden.contains(Chosen(frame.row.id))) continue;
        const QRectF box = request.view.to_view(frame.box());
        painter.setFont(label_font(11, true));
        const QFontMetrics metrics = painter.fontMetrics();
        const double tab = room->number.empty() ? 0 : metrics.horizontalAdvance(shown(room->number)) + 8;
        // Above the frame, where nothing else is drawn.
        const QRectF head(box.left(), box.top() - 16, box.width(), 15);
        if (tab > 0) {
            painter.fillRect(QRectF(head.topLeft(), QSizeF(tab, head.height())),
                             request.theme.colour("room_tab", "fill"));
            painter.setPen(request.theme.colour("room_tab", "text"));
            painter.drawText(QRectF(head.topLeft(), QSizeF(tab, head.height())), Qt::AlignCenter, shown(room->number));
        }
        const auto& title = frame.row.title.empty() ? room->name : frame.row.title;
        painter.setPen(request.theme.text());
        painter.drawText(head.adjusted(tab + 5, 0, 0, 0), Qt::AlignLeft | Qt::AlignVCenter,
                         metrics.elidedText(shown(title), Qt::ElideRight, static_cast<int>(head.width() - tab - 5)));
    }
}

/// "3 E 2 D": how many encoders and decoders a frame holds.
QString counts_of(const PaintRequest& request, const FrameOnSheet& frame) {
    int encoders = 0, decoders = 0, others = 0;
    for (const auto& plate : request.scene.plates()) {
        if (!frame.box().contains(to_mm(plate.plate.body.at)) || !plate.type) continue;
        const auto* device = request.scene.design().devices.find(plate.device);
        const auto roles = device && !device->roles.empty() ? device->roles
                           : plate.type->codec              ? plate.type->codec->roles
                                                            : std::vector<catalogue::Role>{};
        const bool sends = std::ranges::find(roles, catalogue::Role::encoder) != roles.end();
        const bool shows = std::ranges::find(roles, catalogue::Role::decoder) != roles.end();
        encoders += sends;
        decoders += shows;
        others += !sends && !shows;
    }
    return QObject::tr("%1 E %2 D").arg(encoders).arg(decoders) + (others ? QStringLiteral(" +%1").arg(others) : "");
}

void paint_room_counts(QPainter& painter, const PaintRequest& request, const QRectF& seen) {
    painter.setPen(request.theme.text());
    for (const auto& frame : request.scene.frames()) {
        if (!seen.intersects(frame.box())) continue;
        const auto* room = request.scene.design().rooms.find(frame.row.room);
        const QRectF box = request.view.to_view(frame.box()).adjusted(3, 2, -3, -2);
        painter.fillRect(box, request.theme.ground("room"));
        painter.setPen(request.theme.text());
        painter.setFont(label_font(11, true));
        painter.drawText(box, Qt::AlignLeft | Qt::AlignTop, room ? shown(room->number) : QString());
        painter.setFont(label_font(11, false));
        painter.drawText(box.adjusted(0, 14, 0, 0), Qt::AlignLeft | Qt::AlignTop, counts_of(request, frame));
    }
}

}  // namespace far_painting

QString number_of(const std::string& tag) {
    const auto digits = tag.find_last_not_of("0123456789");
    const auto number = digits == std::string::npos ? tag : tag.substr(digits + 1);
    return shown(number.empty() ? tag : number);
}

void paint_far(QPainter& painter, const PaintRequest& request, const QRectF& seen, Detail detail) {
    using namespace far_painting;
    paint_lines(painter, request, seen);
    for (const auto& plate : request.scene.plates()) {
        if (request.hidden.contains(Chosen(plate.device)) || !seen.intersects(plate.whole())) continue;
        paint_far_plate(painter, request, plate, detail);
    }
    if (detail == Detail::rooms)
        paint_room_counts(painter, request, seen);
    else
        paint_frame_heads(painter, request, seen);
    // Badges keep their size: what is wrong is to be seen from any distance, its count from near.
    for (const auto& badge : request.scene.badges())
        if (detail != Detail::rooms && seen.intersects(to_mm(badge.fragment.bounds)))
            paint_severity(painter, badge.gravest, request.theme,
                           request.view.to_view(to_mm(badge.fragment.bounds).center()));
}

}  // namespace streamwright::app
