// The canvas: one painted widget that shows a sheet, hands events to gestures and keeps the keyboard's place.
#pragma once

#include "app/canvas/gesture.h"
#include "app/canvas/overlay.h"
#include "app/canvas/text_editor.h"
#include "app/document/document.h"
#include "app/document/selection.h"
#include "app/style/theme.h"

#include <QPixmap>
#include <QWidget>

#include <functional>
#include <memory>
#include <optional>

namespace streamwright::app {

class Viewport final : public QWidget {
    Q_OBJECT

public:
    Viewport(Document& document, Selection& selection, QWidget* parent = nullptr);
    ~Viewport() override;

    Document& document() { return document_; }
    Selection& selection() { return selection_; }
    const SheetScene& scene() const { return scene_; }
    Overlay& overlay() { return overlay_; }
    const ViewTransform& view() const { return view_; }
    const Theme& theme() const { return theme_; }

    model::SheetId sheet() const { return scene_.sheet(); }
    void show_sheet(model::SheetId sheet);
    void set_theme(const Theme& theme);
    void set_chooser(ChooseGesture chooser) { chooser_ = std::move(chooser); }
    /// Moves the selection by millimetres with the arrow keys; false where nothing is selected that moves.
    using Nudge = std::function<bool(Viewport&, QPointF mm)>;
    void set_nudge(Nudge nudge) { nudge_ = std::move(nudge); }
    void set_drop_target(std::unique_ptr<DropTarget> target) { drop_target_ = std::move(target); }

    void set_view(const ViewTransform& view);
    void zoom_by(double factor);
    void zoom_to(double zoom);
    void fit_page();
    /// All that is drawn, at most at 100 %: what a sheet is first seen at.
    void fit_drawn();
    void fit_selection();
    /// Pans just as far as needed to see the subject.
    void reveal(const Chosen& subject);
    /// The same, at a zoom at which the subject can be read.
    void find(const Chosen& subject);
    QPointF centre_mm() const { return view_.to_sheet(QRectF(rect()).center()); }

    /// Where the keyboard is.
    std::optional<Chosen> focused() const { return overlay_.focus; }
    void set_focused(std::optional<Chosen> subject);
    void rename(const Chosen& subject);
    bool editing_text() const { return editor_.active(); }

    void start(std::unique_ptr<Gesture> gesture);
    void finish_gesture();
    bool in_gesture() const { return gesture_ != nullptr; }
    /// A sentence for the status line; refusals are marked.
    void tell(const QString& words, bool refusal = false) { Q_EMIT told(words, refusal); }
    Pointer pointer_at(QPointF view, Qt::KeyboardModifiers modifiers = {}, Qt::MouseButton button = Qt::NoButton) const;
    /// The last place of the pointer over the canvas, if it is there now.
    std::optional<QPointF> pointer_mm() const;
    /// After the overlay was changed.
    void refresh() { update(); }
    void refresh_scene();

Q_SIGNALS:
    void told(const QString& words, bool refusal);
    void view_changed();
    void scene_changed();
    void hovered(const std::optional<Chosen>& subject);
    void focus_moved();
    void delete_requested();
    void activated(const Chosen& subject);  // Enter on the focused subject

protected:
    bool event(QEvent* event) override;
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void mousePressEvent(QMouseEvent* event) override;
    void mouseMoveEvent(QMouseEvent* event) override;
    void mouseReleaseEvent(QMouseEvent* event) override;
    void mouseDoubleClickEvent(QMouseEvent* event) override;
    void leaveEvent(QEvent* event) override;
    void wheelEvent(QWheelEvent* event) override;
    void keyPressEvent(QKeyEvent* event) override;
    void keyReleaseEvent(QKeyEvent* event) override;
    void focusInEvent(QFocusEvent* event) override;
    void focusOutEvent(QFocusEvent* event) override;
    bool focusNextPrevChild(bool next) override;
    void dragEnterEvent(QDragEnterEvent* event) override;
    void dragMoveEvent(QDragMoveEvent* event) override;
    void dragLeaveEvent(QDragLeaveEvent* event) override;
    void dropEvent(QDropEvent* event) override;

private:
    enum class Fitted { no, page, drawn };
    void fit(Fitted what);
    void rebuild();
    void follow_document();
    void set_hover(std::optional<Chosen> subject);
    void drop_gesture();
    PaintRequest request() const;
    bool arrow_key(const QKeyEvent& event);

    Document& document_;
    Selection& selection_;
    Theme theme_;
    SheetScene scene_;
    ViewTransform view_;
    Overlay overlay_;
    TextEditor editor_;
    ChooseGesture chooser_;
    Nudge nudge_;
    std::unique_ptr<Gesture> gesture_;
    std::unique_ptr<DropTarget> drop_target_;
    QPixmap painted_;  // the scene as last painted
    bool stale_ = true;
    Fitted fitted_ = Fitted::drawn;
    bool space_held_ = false;
    QPointF last_pointer_;
    std::optional<QPointF> panning_from_;
};

}  // namespace streamwright::app
