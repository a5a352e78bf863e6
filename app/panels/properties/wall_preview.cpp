#include "app/panels/properties/wall_preview.h"

#include "app/words/words.h"
#include "core/analysis/wall_picture.h"

#include <QCoreApplication>
#include <QKeyEvent>
#include <QMouseEvent>
#include <QPainter>

#include <algorithm>
#include <cmath>

namespace streamwright::app {

namespace wall_preview_detail {

constexpr int usual_width = 260, least_height = 60, most_height = 320, margin = 2;
constexpr double least_gap = 2;  // pixels: tiles stay apart to the eye

QString tr(const char* words) { return QCoreApplication::translate("properties", words); }

QString cut_words(const standards::PixelRectangle& cut) {
    return QStringLiteral("%1, %2\n%3 x %4").arg(cut.left).arg(cut.top).arg(cut.width).arg(cut.height);
}

/// Both bezels as a share of the lit tile; none where the size is not known.
double share(base::Length gap, const std::optional<base::Length>& image) {
    return image && image->count() > 0 ? static_cast<double>(gap.count()) / static_cast<double>(image->count()) : 0;
}

}  // namespace wall_preview_detail

WallPreview::WallPreview(const Document& document, Selection& selection, model::WallId wall, const Theme& theme,
                         QWidget* parent)
    : QWidget(parent), document_(document), selection_(selection), wall_(wall), theme_(theme) {
    setObjectName(QStringLiteral("WallPreview"));
    setFocusPolicy(Qt::StrongFocus);
    QSizePolicy policy(QSizePolicy::Expanding, QSizePolicy::Preferred);
    policy.setHeightForWidth(true);
    setSizePolicy(policy);
    refresh();
}

void WallPreview::refresh() {
    using namespace wall_preview_detail;
    boxes_.clear();
    const auto& facts = document_.analyser().facts();
    const auto& wiring = facts.get<graph::Wiring>();
    const auto& chains = facts.get<analysis::VideoChains>();
    for (const auto& wall : analysis::find_wall_pictures(wiring, facts.get<graph::SignalGraph>())) {
        if (wall.row->id != wall_) continue;
        columns_ = wall.row->columns;
        rows_ = wall.row->rows;
        const auto* type = analysis::tile_type(wiring, wall.tiles.front());
        const auto* image = type && type->image ? &*type->image : nullptr;
        gap_across_ = image ? share(wall.row->gap_across, image->width) : 0;
        gap_down_ = image ? share(wall.row->gap_down, image->height) : 0;
        const double tile = image ? static_cast<double>(image->pixels_across) / image->pixels_down : 16.0 / 9.0;
        shape_ = tile * columns_ / rows_;
        for (const auto& each : wall.tiles) {
            Box made;
            if (each.device) {
                const auto* row =
                    document_.design().devices.find(wiring.devices[static_cast<std::size_t>(*each.device)].row->id);
                made.display = row ? std::optional(row->id) : std::nullopt;
                made.tag = row ? shown(row->tag) : QString();
                std::optional<standards::PixelRectangle> cut;
                if (selection_.preset())
                    cut = analysis::tile_picture(wiring, chains, wall, each, *selection_.preset()).cut;
                if (!cut && wall.raster) cut = standards::tile_on_canvas(*wall.raster, each.column, each.row);
                if (cut) made.cut = cut_words(*cut);
            }
            boxes_.push_back(std::move(made));
        }
    }
    current_ = std::clamp(current_, 0, std::max(0, static_cast<int>(boxes_.size()) - 1));
    const auto* row = document_.design().walls.find(wall_);
    setAccessibleName(row ? tr("Drawing of %1").arg(shown(row->name)) : QString());
    updateGeometry();
    update();
}

const WallPreview::Box* WallPreview::box(int column, int row) const {
    const auto place =
        static_cast<std::size_t>(row) * static_cast<std::size_t>(columns_) + static_cast<std::size_t>(column);
    return column < columns_ && place < boxes_.size() ? &boxes_[place] : nullptr;
}

QString WallPreview::tile_words(int column, int row) const {
    const auto* found = box(column, row);
    return found ? found->cut : QString();
}

QSize WallPreview::sizeHint() const {
    return {wall_preview_detail::usual_width, heightForWidth(wall_preview_detail::usual_width)};
}

int WallPreview::heightForWidth(int width) const {
    using namespace wall_preview_detail;
    const int height = static_cast<int>(std::lround((width - 2 * margin) / shape_)) + 2 * margin;
    return std::clamp(height, least_height, most_height);
}

QRectF WallPreview::tile_box(int column, int row) const {
    using namespace wall_preview_detail;
    QSizeF room(width() - 2 * margin, height() - 2 * margin);
    const QSizeF whole = QSizeF(shape_, 1).scaled(room, Qt::KeepAspectRatio);
    const double left = margin + (room.width() - whole.width()) / 2,
                 top = margin + (room.height() - whole.height()) / 2;
    const double across = whole.width() / columns_, down = whole.height() / rows_;
    const double gap_x = std::min(across / 2, std::max(least_gap, across * gap_across_));
    const double gap_y = std::min(down / 2, std::max(least_gap, down * gap_down_));
    return {left + column * across + gap_x / 2, top + row * down + gap_y / 2, across - gap_x, down - gap_y};
}

void WallPreview::paint_box(QPainter& painter, int place) const {
    const auto& each = boxes_[static_cast<std::size_t>(place)];
    const auto area = tile_box(place % columns_, place / columns_);
    const bool chosen = each.display && selection_.holds(Chosen(*each.display));
    QPen edge(theme_.rule(chosen ? "strong" : "plate_edge"), chosen ? 2 : 1);
    if (!each.display) edge.setStyle(Qt::DashLine);  // told by pattern too
    painter.setPen(edge);
    painter.setBrush(each.display ? theme_.ground(chosen ? "selected" : "plate") : theme_.ground("panel"));
    painter.drawRect(area);
    if (hasFocus() && place == current_) {
        painter.setPen(QPen(theme_.rule("strong"), 1, Qt::DotLine));
        painter.setBrush(Qt::NoBrush);
        painter.drawRect(area.adjusted(3, 3, -3, -3));
    }
    QFont bold = font();
    bold.setBold(true);
    const QFontMetricsF strong(bold), plain(font());
    const auto inner = area.adjusted(4, 2, -4, -2);
    if (inner.height() < strong.height() || inner.width() < strong.averageCharWidth() * 3) return;
    painter.setFont(bold);
    painter.setPen(theme_.text(each.display ? "ink" : "faint"));
    const auto tag = each.display ? each.tag : wall_preview_detail::tr("empty");
    const auto lines = each.cut.split(QLatin1Char('\n'));
    const bool fits =
        !each.cut.isEmpty() && inner.height() >= strong.height() + 2 * plain.height() &&
        std::ranges::all_of(lines, [&](const auto& line) { return plain.horizontalAdvance(line) <= inner.width(); });
    const double text_height = strong.height() + (fits ? 2 * plain.height() : 0);
    QRectF line(inner.left(), inner.center().y() - text_height / 2, inner.width(), strong.height());
    painter.drawText(line, Qt::AlignCenter, strong.elidedText(tag, Qt::ElideMiddle, inner.width()));
    if (!fits) return;
    painter.setFont(font());
    painter.setPen(theme_.text("muted"));
    for (const auto& words : lines) {
        line.moveTop(line.bottom());
        painter.drawText(line, Qt::AlignCenter, words);
    }
}

void WallPreview::paintEvent(QPaintEvent*) {
    QPainter painter(this);
    painter.setRenderHint(QPainter::Antialiasing);
    for (int place = 0; place < static_cast<int>(boxes_.size()); ++place) paint_box(painter, place);
}

void WallPreview::choose(int place) {
    if (place >= static_cast<int>(boxes_.size())) return;
    const auto& each = boxes_[static_cast<std::size_t>(place)];
    if (each.display) selection_.set(Chosen(*each.display));
}

void WallPreview::mousePressEvent(QMouseEvent* event) {
    for (int place = 0; place < static_cast<int>(boxes_.size()); ++place)
        if (tile_box(place % columns_, place / columns_).contains(event->position())) {
            current_ = place;
            // Queued: choosing throws this drawing away.
            return void(QMetaObject::invokeMethod(
                this, [this, place] { choose(place); }, Qt::QueuedConnection));
        }
}

void WallPreview::keyPressEvent(QKeyEvent* event) {
    const int column = current_ % columns_, row = current_ / columns_;
    switch (event->key()) {
        case Qt::Key_Left:
            current_ -= column > 0 ? 1 : 0;
            break;
        case Qt::Key_Right:
            current_ += column + 1 < columns_ ? 1 : 0;
            break;
        case Qt::Key_Up:
            current_ -= row > 0 ? columns_ : 0;
            break;
        case Qt::Key_Down:
            current_ += row + 1 < rows_ ? columns_ : 0;
            break;
        case Qt::Key_Return:
        case Qt::Key_Enter:
        case Qt::Key_Space:
            QMetaObject::invokeMethod(
                this, [this] { choose(current_); }, Qt::QueuedConnection);
            break;
        default:
            return QWidget::keyPressEvent(event);
    }
    update();
}

void WallPreview::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    update();
}

void WallPreview::focusOutEvent(QFocusEvent* event) {
    QWidget::focusOutEvent(event);
    update();
}

}  // namespace streamwright::app
