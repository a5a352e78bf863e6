// The viewport's events: presses become gestures, keys move the focus and the selection, wheels zoom.
#include "app/canvas/focus_order.h"
#include "app/canvas/viewport.h"
#include "app/document/library.h"

#include <QDragEnterEvent>
#include <QKeyEvent>
#include <QMimeData>
#include <QMouseEvent>
#include <QWheelEvent>

#include <cmath>

namespace streamwright::app {

bool Viewport::event(QEvent* event) {
    // Escape and Delete belong to the canvas while it has the focus, before any shortcut of the window.
    if (event->type() == QEvent::ShortcutOverride && hasFocus()) {
        const auto* key = static_cast<QKeyEvent*>(event);
        if (key->key() == Qt::Key_Escape || (gesture_ && (key->key() == Qt::Key_Tab || key->key() == Qt::Key_Return))) {
            event->accept();
            return true;
        }
    }
    return QWidget::event(event);
}

void Viewport::mousePressEvent(QMouseEvent* event) {
    setFocus(Qt::MouseFocusReason);
    last_pointer_ = event->position();
    if (event->button() == Qt::MiddleButton || (event->button() == Qt::LeftButton && space_held_)) {
        panning_from_ = event->position();
        setCursor(Qt::ClosedHandCursor);
        return;
    }
    if (event->button() == Qt::RightButton && gesture_) return drop_gesture();
    const auto pointer = pointer_at(event->position(), event->modifiers(), event->button());
    if (event->button() != Qt::LeftButton) return;
    if (gesture_) return;  // a lasting gesture goes on at release
    overlay_.focus.reset();
    if (chooser_) gesture_ = chooser_(*this, pointer);
}

void Viewport::mouseMoveEvent(QMouseEvent* event) {
    last_pointer_ = event->position();
    if (panning_from_) {
        ViewTransform next = view_;
        next.origin -= (event->position() - *panning_from_) / view_.scale();
        panning_from_ = event->position();
        set_view(next);
        return;
    }
    const auto pointer = pointer_at(event->position(), event->modifiers());
    set_hover(pointer.hit.subject);
    if (gesture_) gesture_->moved(pointer);
}

void Viewport::mouseReleaseEvent(QMouseEvent* event) {
    if (panning_from_ && event->button() != Qt::RightButton) {
        panning_from_.reset();
        unsetCursor();
        return;
    }
    if (!gesture_ || event->button() != Qt::LeftButton) return;
    const auto pointer = pointer_at(event->position(), event->modifiers(), event->button());
    gesture_->released(pointer);
    if (gesture_ && !gesture_->lasting()) finish_gesture();
}

void Viewport::mouseDoubleClickEvent(QMouseEvent* event) {
    if (event->button() != Qt::LeftButton || space_held_) return;
    const auto pointer = pointer_at(event->position(), event->modifiers(), event->button());
    if (pointer.hit.subject)
        rename(*pointer.hit.subject);
    else
        mousePressEvent(event);
}

void Viewport::leaveEvent(QEvent*) { set_hover(std::nullopt); }

void Viewport::wheelEvent(QWheelEvent* event) {
    const QPointF turned = event->angleDelta();
    const bool sideways = event->modifiers().testFlag(Qt::ShiftModifier);
    const bool fine = !event->pixelDelta().isNull() && !event->modifiers().testFlag(Qt::ControlModifier);
    if (sideways || fine || event->modifiers().testFlag(Qt::AltModifier)) {
        const QPointF by = fine ? QPointF(event->pixelDelta()) : turned / 2;
        ViewTransform next = view_;
        next.origin -= (sideways && by.x() == 0 ? QPointF(by.y(), 0) : by) / view_.scale();
        set_view(next);
    } else {
        set_view(view_.zoomed(view_.zoom * std::pow(1.0015, turned.y()), event->position()));
    }
    event->accept();
}

bool Viewport::arrow_key(const QKeyEvent& event) {
    QPointF way;
    switch (event.key()) {
        case Qt::Key_Left:
            way = {-1, 0};
            break;
        case Qt::Key_Right:
            way = {1, 0};
            break;
        case Qt::Key_Up:
            way = {0, -1};
            break;
        case Qt::Key_Down:
            way = {0, 1};
            break;
        default:
            return false;
    }
    const bool far = event.modifiers().testFlag(Qt::ShiftModifier);
    if (nudge_ && nudge_(*this, way * (far ? 5 : 1))) return true;
    ViewTransform next = view_;
    next.origin += way * (far ? 200 : 40) / view_.scale();
    set_view(next);
    return true;
}

void Viewport::keyPressEvent(QKeyEvent* event) {
    if (gesture_ && event->key() == Qt::Key_Escape) return drop_gesture();
    if (gesture_ && gesture_->key(*event)) return;
    if (arrow_key(*event)) return;
    switch (event->key()) {
        case Qt::Key_Space:
            if (!event->isAutoRepeat() && !space_held_) {
                space_held_ = true;
                setCursor(Qt::OpenHandCursor);
            }
            return;
        case Qt::Key_Escape:
            set_focused(std::nullopt);
            selection_.clear();
            return;
        case Qt::Key_Return:
        case Qt::Key_Enter:
            if (!overlay_.focus) break;
            if (event->modifiers().testFlag(Qt::ShiftModifier))
                selection_.toggle(*overlay_.focus);
            else
                Q_EMIT activated(*overlay_.focus);
            return;
        case Qt::Key_Delete:
        case Qt::Key_Backspace:
            Q_EMIT delete_requested();
            return;
        case Qt::Key_F2:
            if (const auto only = selection_.only())
                rename(*only);
            else if (overlay_.focus)
                rename(*overlay_.focus);
            return;
        default:
            break;
    }
    QWidget::keyPressEvent(event);
}

void Viewport::keyReleaseEvent(QKeyEvent* event) {
    if (event->key() == Qt::Key_Space && !event->isAutoRepeat() && space_held_) {
        space_held_ = false;
        if (!panning_from_) unsetCursor();
        return;
    }
    QWidget::keyReleaseEvent(event);
}

void Viewport::focusInEvent(QFocusEvent* event) {
    QWidget::focusInEvent(event);
    update();
}

void Viewport::focusOutEvent(QFocusEvent* event) {
    space_held_ = false;
    QWidget::focusOutEvent(event);
    update();
}

bool Viewport::focusNextPrevChild(bool next) {
    if (editor_.active()) return QWidget::focusNextPrevChild(next);
    const auto order = focus_order(scene_);
    const auto following = next_in(order, overlay_.focus, next);
    if (!following) {
        set_focused(std::nullopt);
        return QWidget::focusNextPrevChild(next);
    }
    set_focused(following);
    return true;
}

void Viewport::dragEnterEvent(QDragEnterEvent* event) {
    const auto* dragged = event->mimeData();
    if (!drop_target_ || !dragged->hasFormat(QLatin1String(type_mime))) return;
    if (drop_target_->entered(QString::fromUtf8(dragged->data(QLatin1String(type_mime)))))
        event->acceptProposedAction();
}

void Viewport::dragMoveEvent(QDragMoveEvent* event) {
    if (!drop_target_) return;
    drop_target_->moved(view_.to_sheet(event->position()));
    event->acceptProposedAction();
}

void Viewport::dragLeaveEvent(QDragLeaveEvent*) {
    if (drop_target_) drop_target_->left();
}

void Viewport::dropEvent(QDropEvent* event) {
    if (!drop_target_) return;
    drop_target_->dropped(view_.to_sheet(event->position()));
    event->acceptProposedAction();
    setFocus(Qt::OtherFocusReason);
}

}  // namespace streamwright::app
