#include "app/render/role_icon.h"

#include "app/render/paint_fragment.h"
#include "app/render/screen_style.h"
#include "core/deliver/drawing/role_mark.h"

#include <QPainter>
#include <QPixmap>

namespace streamwright::app {

QIcon role_icon(const catalogue::DeviceType& type, const Theme& theme) {
    deliver::Fragment mark;
    const auto roles = type.codec ? type.codec->roles : std::vector<catalogue::Role>{};
    for (auto& path : deliver::role_mark(&type, roles, {})) mark.shapes.emplace_back(std::move(path));
    QIcon icon;
    for (const int ratio : {1, 2, 3}) {
        QPixmap picture(QSize(16, 16) * ratio);
        picture.setDevicePixelRatio(ratio);
        picture.fill(Qt::transparent);
        QPainter painter(&picture);
        painter.setRenderHint(QPainter::Antialiasing);
        painter.scale(4, 4);  // a mark is 4 mm wide
        paint_fragment(painter, mark, ScreenStyle(theme));
        painter.end();
        icon.addPixmap(picture);
        icon.addPixmap(picture, QIcon::Selected);
    }
    return icon;
}

void paint_severity(QPainter& painter, analysis::Severity severity, const Theme& theme, QPointF centre) {
    painter.setRenderHint(QPainter::Antialiasing);
    painter.setPen(QPen(theme.severity_edge(severity), 1.5));
    painter.setBrush(theme.severity(severity));
    const auto corner = [&](double x, double y) { return centre + QPointF(x, y); };
    switch (severity) {
        case analysis::Severity::error:
            painter.drawPolygon(QPolygonF{corner(0, -7), corner(7, 0), corner(0, 7), corner(-7, 0)});
            return;
        case analysis::Severity::warning:
            painter.drawPolygon(QPolygonF{corner(0, -7), corner(7, 6), corner(-7, 6)});
            return;
        case analysis::Severity::advice:
            painter.drawEllipse(centre, 6, 6);
            return;
    }
}

void paint_lug(QPainter& painter, catalogue::Signal signal, const Theme& theme, QPointF centre) {
    const QRectF box(centre.x() - 9, centre.y() - 8, 18, 16);
    painter.fillRect(box, theme.signal(signal));
    QFont font = painter.font();
    font.setPixelSize(11);
    font.setBold(true);
    painter.setFont(font);
    painter.setPen(theme.on_signal(signal));
    painter.drawText(box, Qt::AlignCenter, QString(QLatin1Char(catalogue::signal_letter(signal))));
}

}  // namespace streamwright::app
