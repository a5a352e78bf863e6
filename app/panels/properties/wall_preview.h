// A small drawing of a video wall: its tiles as the audience sees them, their tags, and which part of a picture each
// shows in the chosen preset. A click, or arrow keys and Enter, selects a tile's display.
#pragma once

#include "app/document/document.h"
#include "app/document/selection.h"
#include "app/style/theme.h"

#include <QString>
#include <QWidget>

#include <optional>
#include <vector>

namespace streamwright::app {

class WallPreview final : public QWidget {
    Q_OBJECT

public:
    WallPreview(const Document& document, Selection& selection, model::WallId wall, const Theme& theme,
                QWidget* parent = nullptr);
    /// Reads the design again.
    void refresh();
    /// Where the tile of that column and row is drawn.
    QRectF tile_box(int column, int row) const;
    /// "1923, 1083, 1920 x 1080": the words in the tile's box beside its tag; for tests and screen readers.
    QString tile_words(int column, int row) const;

    QSize sizeHint() const override;
    bool hasHeightForWidth() const override { return true; }
    int heightForWidth(int width) const override;

protected:
    void paintEvent(QPaintEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;

private:
    struct Box {
        std::optional<model::DeviceId> display;
        QString tag;
        QString cut;  // two lines: where it begins, and how large it is
    };
    const Box* box(int column, int row) const;
    void paint_box(QPainter& painter, int place) const;
    void choose(int place);

    const Document& document_;
    Selection& selection_;
    model::WallId wall_;
    Theme theme_;
    int columns_ = 1, rows_ = 1;
    double shape_ = 16.0 / 9.0;             // of the whole wall, width to height
    double gap_across_ = 0, gap_down_ = 0;  // shares of a tile
    std::vector<Box> boxes_;
    int current_ = 0;  // where the arrow keys stand
};

}  // namespace streamwright::app
