#include "app/panels/finding_delegate.h"

#include "app/render/role_icon.h"

#include <QApplication>
#include <QMouseEvent>
#include <QPainter>

#include <algorithm>

namespace streamwright::app {

namespace finding_delegate_detail {

constexpr int most_buttons = 3, least_button = 80, button_height = 24, chip_height = 16;

QFont sized(bool bold, int pixels) {
    QFont font = QApplication::font();
    font.setPixelSize(pixels);
    font.setBold(bold);
    return font;
}

void paint_button(QPainter& painter, const Theme& theme, const QRect& box, const QString& words) {
    painter.setPen(QPen(theme.rule("plate_edge"), 1));
    painter.setBrush(theme.ground("plate"));
    painter.drawRoundedRect(QRectF(box).adjusted(0.5, 0.5, -0.5, -0.5), 3, 3);
    painter.setPen(theme.text());
    painter.setFont(sized(false, 12));
    painter.drawText(box, Qt::AlignCenter, painter.fontMetrics().elidedText(words, Qt::ElideRight, box.width() - 12));
}

/// Chips after the sentence; returns where they end.
void paint_chips(QPainter& painter, const Theme& theme, QRect at, const QStringList& chips) {
    painter.setFont(sized(false, 11));
    for (const auto& chip : chips) {
        const int width = painter.fontMetrics().horizontalAdvance(chip) + 16;
        if (width > at.width()) return;
        const QRectF box(at.left() + 0.5, at.top() + 0.5, width, chip_height);
        painter.setPen(QPen(theme.rule("plate_edge"), 1));
        painter.setBrush(theme.ground("plate"));
        painter.drawRoundedRect(box, 8, 8);
        painter.setPen(theme.text());
        painter.drawText(box, Qt::AlignCenter, chip);
        at.setLeft(at.left() + width + 6);
    }
}

}  // namespace finding_delegate_detail

FindingDelegate::FindingDelegate(FindingsModel& model, QObject* parent)
    : QStyledItemDelegate(parent), model_(model), theme_(bundled_theme(ThemeChoice::light)) {}

QSize FindingDelegate::sizeHint(const QStyleOptionViewItem&, const QModelIndex&) const { return {200, row_height}; }

std::vector<QRect> FindingDelegate::buttons(const QRect& row, const FindingRow& finding) const {
    using namespace finding_delegate_detail;
    const QFontMetrics metrics(sized(false, 12));
    std::vector<QRect> boxes;
    int right = row.right() - 12;
    const int count = std::min(static_cast<int>(finding.remedies.size()), most_buttons);
    for (int i = 0; i < count; ++i) {
        const int whole = metrics.horizontalAdvance(finding.remedies[i]) + 22;
        const int left = right - row.center().x();  // the sentence keeps its half
        const int width = boxes.empty() ? std::min(whole, left) : whole;
        if (width > left || width < least_button) break;
        boxes.emplace_back(right - width, row.center().y() - button_height / 2, width, button_height);
        right -= width + 8;
    }
    return boxes;
}

void FindingDelegate::paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const {
    using namespace finding_delegate_detail;
    const auto& row = model_.row(index.row());
    painter->save();
    painter->setRenderHint(QPainter::Antialiasing);
    const bool selected = option.state.testFlag(QStyle::State_Selected);
    const bool hover = option.state.testFlag(QStyle::State_MouseOver);
    const QRect box = option.rect;
    painter->fillRect(box, theme_.ground(selected ? "selected" : hover ? "hover" : "panel"));
    if (selected) painter->fillRect(QRect(box.left(), box.top(), 4, box.height()), theme_.text());
    painter->setPen(QPen(theme_.rule("hair"), 1));
    painter->drawLine(box.bottomLeft(), box.bottomRight());
    if (row.waived() || row.being_checked) painter->setOpacity(0.6);
    paint_severity(*painter, row.reported.finding.severity, theme_, QPointF(box.left() + 26, box.top() + 15));
    const auto boxes = buttons(box, row);
    const int right = boxes.empty() ? box.right() - 12 : boxes.back().left() - 12;
    const int left = box.left() + 46;
    painter->setFont(sized(true, 12));
    painter->setPen(theme_.text());
    QString words = row.sentence;
    if (row.being_checked) words += tr(" · being checked");
    if (row.waived()) words += tr(" · accepted");
    const auto head = painter->fontMetrics().elidedText(words, Qt::ElideRight, right - left);
    const int width = painter->fontMetrics().horizontalAdvance(head);
    painter->drawText(QRect(left, box.top() + 5, right - left, 18), Qt::AlignLeft | Qt::AlignVCenter, head);
    paint_chips(*painter, theme_, QRect(left + width + 10, box.top() + 6, right - left - width - 10, chip_height),
                row.chips);
    painter->setFont(sized(false, 11));
    painter->setPen(theme_.text("muted"));
    QString below = row.acceptance;
    if (!row.terms.isEmpty()) below += (below.isEmpty() ? QString() : QStringLiteral(" · ")) + row.terms;
    const auto terms = painter->fontMetrics().elidedText(below, Qt::ElideRight, right - left);
    painter->drawText(QRect(left, box.top() + 23, right - left, 16), Qt::AlignLeft | Qt::AlignVCenter, terms);
    painter->setOpacity(1);
    for (std::size_t i = 0; i < boxes.size(); ++i)
        paint_button(*painter, theme_, boxes[i], row.remedies[static_cast<int>(i)]);
    if (option.state.testFlag(QStyle::State_HasFocus)) {
        painter->setPen(QPen(theme_.text(), 1));
        painter->setBrush(Qt::NoBrush);
        painter->drawRect(QRectF(box).adjusted(0.5, 0.5, -0.5, -1.5));
    }
    painter->restore();
}

bool FindingDelegate::editorEvent(QEvent* event, QAbstractItemModel*, const QStyleOptionViewItem& option,
                                  const QModelIndex& index) {
    if (event->type() != QEvent::MouseButtonRelease && event->type() != QEvent::MouseButtonPress) return false;
    const auto* mouse = static_cast<QMouseEvent*>(event);
    if (mouse->button() != Qt::LeftButton) return false;
    const auto boxes = buttons(option.rect, model_.row(index.row()));
    for (std::size_t i = 0; i < boxes.size(); ++i) {
        if (!boxes[i].contains(mouse->position().toPoint())) continue;
        if (event->type() == QEvent::MouseButtonRelease) Q_EMIT remedy_clicked(index.row(), static_cast<int>(i));
        return true;
    }
    return false;
}

}  // namespace streamwright::app
