// Paints one finding: shape, sentence, subjects as chips, arithmetic, remedies as buttons; and says what was clicked.
#pragma once

#include "app/panels/findings_model.h"
#include "app/style/theme.h"

#include <QStyledItemDelegate>

namespace streamwright::app {

class FindingDelegate final : public QStyledItemDelegate {
    Q_OBJECT

public:
    static constexpr int row_height = 45;
    explicit FindingDelegate(FindingsModel& model, QObject* parent = nullptr);
    void set_theme(const Theme& theme) { theme_ = theme; }

    QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override;
    bool editorEvent(QEvent* event, QAbstractItemModel* model, const QStyleOptionViewItem& option,
                     const QModelIndex& index) override;

    /// Where the buttons of a row are, best remedy last (at the edge).
    std::vector<QRect> buttons(const QRect& row, const FindingRow& finding) const;

Q_SIGNALS:
    void remedy_clicked(int row, int remedy);

private:
    FindingsModel& model_;
    Theme theme_;
};

}  // namespace streamwright::app
