#include "app/canvas/viewport.h"

#include "app/canvas/accessible_canvas.h"

#include <QPainter>
#include <QResizeEvent>

#include <algorithm>

namespace streamwright::app {

namespace viewport_detail {

constexpr double margin_px = 24;

}  // namespace viewport_detail

Viewport::Viewport(Document& document, Selection& selection, QWidget* parent)
    : QWidget(parent),
      document_(document),
      selection_(selection),
      theme_(bundled_theme(ThemeChoice::light)),
      editor_(*this) {
    install_accessible_canvas();
    setFocusPolicy(Qt::StrongFocus);
    setMouseTracking(true);
    setAcceptDrops(true);
    setAttribute(Qt::WA_OpaquePaintEvent);
    setAccessibleName(tr("Schematic"));
    setMinimumSize(200, 120);
    connect(&document_, &Document::changed, this,
            [this](const model::Delta& delta, const analysis::FindingsChange& findings) {
                const bool quiet =
                    delta.empty() && findings.added.empty() && findings.changed.empty() && findings.removed.empty();
                if (!quiet) follow_document();
            });
    connect(&document_, &Document::replaced, this, [this] {
        drop_gesture();
        overlay_ = Overlay();
        const auto& sheets = document_.design().sheets;
        const model::Sheet* first = nullptr;
        for (const auto& sheet : sheets)
            if (!first || sheet.number < first->number) first = &sheet;
        show_sheet(first ? first->id : model::SheetId(0));
    });
    connect(&selection_, &Selection::changed, this, &Viewport::refresh_scene);
}

Viewport::~Viewport() = default;

void Viewport::show_sheet(model::SheetId sheet) {
    drop_gesture();
    editor_.close();
    scene_ = SheetScene(document_, sheet);
    overlay_ = Overlay();
    fit_drawn();
    refresh_scene();
    Q_EMIT scene_changed();
}

void Viewport::rebuild() {
    scene_ = SheetScene(document_, scene_.sheet());
    const auto gone = [&](const std::optional<Chosen>& subject) { return subject && !scene_.bounds(*subject); };
    if (gone(overlay_.hover)) set_hover(std::nullopt);
    if (gone(overlay_.focus)) set_focused(std::nullopt);
    refresh_scene();
    Q_EMIT scene_changed();
}

void Viewport::follow_document() {
    if (!document_.design().sheets.contains(scene_.sheet())) {
        const auto& sheets = document_.design().sheets;
        show_sheet(sheets.empty() ? model::SheetId(0) : sheets.begin()->id);
        return;
    }
    rebuild();
}

void Viewport::set_theme(const Theme& theme) {
    theme_ = theme;
    refresh_scene();
}

void Viewport::refresh_scene() {
    stale_ = true;
    update();
}

void Viewport::set_view(const ViewTransform& view) {
    fitted_ = Fitted::no;
    if (view == view_) return;
    view_ = view;
    editor_.close();
    refresh_scene();
    Q_EMIT view_changed();
}

void Viewport::zoom_by(double factor) { zoom_to(view_.zoom * factor); }

void Viewport::zoom_to(double zoom) { set_view(view_.zoomed(zoom, QRectF(rect()).center())); }

void Viewport::fit(Fitted what) {
    const QRectF drawn = scene_.drawn();
    const bool whole_page = what == Fitted::page || drawn.isEmpty();
    const QRectF area = whole_page ? scene_.paper() | drawn : drawn;
    set_view(ViewTransform::fitting(area, size(), viewport_detail::margin_px, whole_page ? 4 : 1));
    fitted_ = what;
}

void Viewport::fit_page() { fit(Fitted::page); }

void Viewport::fit_drawn() { fit(Fitted::drawn); }

void Viewport::fit_selection() {
    QRectF all;
    for (const auto& subject : selection_.all())
        if (const auto box = scene_.bounds(subject)) all |= *box;
    if (all.isEmpty()) return fit_page();
    set_view(ViewTransform::fitting(all, size(), 3 * viewport_detail::margin_px, 2));
}

void Viewport::reveal(const Chosen& subject) {
    const auto box = scene_.bounds(subject);
    if (!box) return;
    const double margin = viewport_detail::margin_px;
    const QRectF inner = QRectF(rect()).adjusted(margin, margin, -margin, -margin);
    const QRectF at = view_.to_view(*box);
    if (inner.contains(at)) return;
    QPointF by;  // pixels that the view goes; what is too large shows its upper left
    if (at.right() > inner.right()) by.setX(at.right() - inner.right());
    if (at.bottom() > inner.bottom()) by.setY(at.bottom() - inner.bottom());
    if (at.left() - by.x() < inner.left()) by.setX(at.left() - inner.left());
    if (at.top() - by.y() < inner.top()) by.setY(at.top() - inner.top());
    ViewTransform next = view_;
    next.origin += by / next.scale();
    set_view(next);
}

void Viewport::find(const Chosen& subject) {
    const auto box = scene_.bounds(subject);
    if (!box) return;
    if (view_.zoom < 0.7) {
        ViewTransform next = view_;
        next.zoom = 1;
        next.origin = box->center() - QPointF(width(), height()) / (2 * next.scale());
        set_view(next);
    }
    reveal(subject);
}

void Viewport::set_focused(std::optional<Chosen> subject) {
    if (overlay_.focus == subject) return;
    overlay_.focus = std::move(subject);
    if (overlay_.focus) reveal(*overlay_.focus);
    update();
    announce_focus(*this);
    Q_EMIT focus_moved();
}

void Viewport::set_hover(std::optional<Chosen> subject) {
    if (overlay_.hover == subject) return;
    overlay_.hover = std::move(subject);
    update();
    Q_EMIT hovered(overlay_.hover);
}

void Viewport::rename(const Chosen& subject) {
    if (const auto* port = std::get_if<model::PortRef>(&subject)) return rename(Chosen(port->device));
    const auto box = scene_.bounds(subject);
    if (!box) return;
    QRectF place = view_.to_view(*box);
    if (std::holds_alternative<model::CableId>(subject))
        place = QRectF(place.center() - QPointF(50, 13), QSizeF(100, 26));
    else
        place.setHeight(28 * view_.zoom);
    editor_.open(document_, subject, place);
}

void Viewport::start(std::unique_ptr<Gesture> gesture) { gesture_ = std::move(gesture); }

void Viewport::finish_gesture() {
    gesture_.reset();
    const bool repaint = overlay_.pulling || !overlay_.hidden.empty();
    overlay_.clear_gesture();
    if (repaint) refresh_scene();
    update();
}

void Viewport::drop_gesture() {
    if (!gesture_) return;
    gesture_->cancelled();
    finish_gesture();
    tell({});
}

Pointer Viewport::pointer_at(QPointF view, Qt::KeyboardModifiers modifiers, Qt::MouseButton button) const {
    const QPointF mm = view_.to_sheet(view);
    return {view, mm, hit_test(scene_, mm, view_.zoom), modifiers, button};
}

std::optional<QPointF> Viewport::pointer_mm() const {
    if (!underMouse()) return std::nullopt;
    return view_.to_sheet(last_pointer_);
}

PaintRequest Viewport::request() const {
    auto bright = overlay_.fitting;
    if (overlay_.pulled_from) bright.insert(*overlay_.pulled_from);
    return {scene_,           view_,           QSizeF(size()),   theme_,
            selection_.all(), overlay_.hidden, overlay_.pulling, std::move(bright)};
}

void Viewport::paintEvent(QPaintEvent*) {
    const QSize device = size() * devicePixelRatioF();
    if (stale_ || painted_.size() != device) {
        if (painted_.size() != device) painted_ = QPixmap(device);
        painted_.setDevicePixelRatio(devicePixelRatioF());
        QPainter painter(&painted_);
        paint_scene(painter, request());
        stale_ = false;
    }
    QPainter painter(this);
    painter.drawPixmap(0, 0, painted_);
    painter.setFont(font());
    Overlay shown_overlay = overlay_;
    if (!hasFocus()) shown_overlay.focus.reset();
    paint_overlay(painter, shown_overlay, request());
}

void Viewport::resizeEvent(QResizeEvent* event) {
    QWidget::resizeEvent(event);
    stale_ = true;
    // What was fitted stays so until the user looks elsewhere.
    if (fitted_ != Fitted::no) fit(fitted_);
}

}  // namespace streamwright::app
