#include "app/canvas/accessible_canvas.h"

#include "app/canvas/subject_words.h"
#include "app/canvas/viewport.h"

#include <QAccessible>
#include <QAccessibleWidget>
#include <QPointer>

#include <algorithm>
#include <map>

namespace streamwright::app {

namespace accessible_detail {

/// A badge stands for its subject's findings, beside the subject itself.
struct ChildKey {
    Chosen subject;
    bool badge = false;
    friend auto operator<=>(const ChildKey&, const ChildKey&) = default;
};

class CanvasInterface;

class ChildInterface final : public QAccessibleInterface, public QAccessibleActionInterface {
public:
    ChildInterface(QPointer<Viewport> viewport, ChildKey key) : viewport_(std::move(viewport)), key_(std::move(key)) {}

    const ChildKey& key() const { return key_; }
    bool isValid() const override { return viewport_ && viewport_->scene().bounds(key_.subject).has_value(); }
    QObject* object() const override { return nullptr; }
    QWindow* window() const override { return viewport_ ? viewport_->window()->windowHandle() : nullptr; }
    QAccessibleInterface* childAt(int, int) const override { return nullptr; }
    QAccessibleInterface* parent() const override {
        return viewport_ ? QAccessible::queryAccessibleInterface(viewport_) : nullptr;
    }
    QAccessibleInterface* child(int) const override { return nullptr; }
    int childCount() const override { return 0; }
    int indexOfChild(const QAccessibleInterface*) const override { return -1; }
    QString text(QAccessible::Text which) const override;
    void setText(QAccessible::Text, const QString&) override {}
    QRect rect() const override;
    QAccessible::Role role() const override;
    QAccessible::State state() const override;
    void* interface_cast(QAccessible::InterfaceType type) override {
        return type == QAccessible::ActionInterface ? static_cast<QAccessibleActionInterface*>(this) : nullptr;
    }
    QStringList actionNames() const override { return {pressAction(), setFocusAction()}; }
    void doAction(const QString& action) override;
    QStringList keyBindingsForAction(const QString&) const override { return {}; }

private:
    QPointer<Viewport> viewport_;
    ChildKey key_;
};

QString ChildInterface::text(QAccessible::Text which) const {
    if (!viewport_) return {};
    if (which == QAccessible::Name) {
        if (!key_.badge) return subject_words(viewport_->scene(), key_.subject);
        for (const auto& badge : viewport_->scene().badges())
            if (badge.subject == key_.subject) return badge_words(viewport_->scene(), badge);
    }
    return {};
}

QRect ChildInterface::rect() const {
    if (!viewport_) return {};
    auto box = viewport_->scene().bounds(key_.subject);
    if (key_.badge)
        for (const auto& badge : viewport_->scene().badges())
            if (badge.subject == key_.subject) box = to_mm(badge.fragment.bounds);
    if (!box) return {};
    const QRect at = viewport_->view().to_view(*box).toAlignedRect();
    return {viewport_->mapToGlobal(at.topLeft()), at.size()};
}

QAccessible::Role ChildInterface::role() const {
    if (key_.badge) return QAccessible::AlertMessage;
    if (std::holds_alternative<model::PortRef>(key_.subject)) return QAccessible::PushButton;
    return std::holds_alternative<model::CableId>(key_.subject) ? QAccessible::Graphic : QAccessible::ListItem;
}

QAccessible::State ChildInterface::state() const {
    QAccessible::State state;
    if (!isValid()) {
        state.invalid = true;
        return state;
    }
    state.selectable = state.focusable = true;
    state.selected = viewport_->selection().holds(key_.subject);
    state.focused = viewport_->hasFocus() && viewport_->focused() == key_.subject;
    state.offscreen = !viewport_->rect().intersects(QRect(viewport_->mapFromGlobal(rect().topLeft()), rect().size()));
    return state;
}

void ChildInterface::doAction(const QString& action) {
    if (!viewport_) return;
    if (action == setFocusAction()) {
        viewport_->setFocus();
        viewport_->set_focused(key_.subject);
    } else if (action == pressAction()) {
        viewport_->selection().set(key_.subject);
    }
}

std::vector<ChildKey> keys_of(const SheetScene& scene) {
    std::vector<ChildKey> keys;
    for (const auto& plate : scene.plates()) {
        keys.push_back({Chosen(plate.device), false});
        for (const auto& spot : plate.plate.spots)
            if (const auto port = plate.port(spot.port)) keys.push_back({Chosen(*port), false});
    }
    for (const auto& cable : scene.cables()) keys.push_back({Chosen(cable.line.cable), false});
    for (const auto& badge : scene.badges()) keys.push_back({badge.subject, true});
    return keys;
}

class CanvasInterface final : public QAccessibleWidget {
public:
    explicit CanvasInterface(Viewport* viewport)
        : QAccessibleWidget(viewport, QAccessible::List, viewport->accessibleName()), viewport_(viewport) {
        QObject::connect(viewport, &Viewport::scene_changed, viewport, [this] { keys_.reset(); });
    }
    ~CanvasInterface() override {
        for (const auto& [key, id] : ids_) QAccessible::deleteAccessibleInterface(id);
    }
    int childCount() const override { return static_cast<int>(keys().size()); }
    QAccessibleInterface* child(int index) const override {
        if (index < 0 || index >= childCount()) return nullptr;
        return interface_of(keys()[static_cast<std::size_t>(index)]);
    }
    int indexOfChild(const QAccessibleInterface* child) const override {
        for (int i = 0; i < childCount(); ++i)
            if (this->child(i) == child) return i;
        return -1;
    }
    QAccessibleInterface* childAt(int x, int y) const override {
        const auto at = viewport_->mapFromGlobal(QPoint(x, y));
        const auto hit = viewport_->pointer_at(at).hit;
        return hit.subject ? find({*hit.subject, hit.part == Hit::Part::badge}) : nullptr;
    }
    QAccessibleInterface* focusChild() const override {
        return viewport_->focused() ? find({*viewport_->focused(), false}) : nullptr;
    }

private:
    const std::vector<ChildKey>& keys() const {
        if (!keys_) keys_ = keys_of(viewport_->scene());
        return *keys_;
    }
    QAccessibleInterface* find(const ChildKey& key) const {
        return std::ranges::find(keys(), key) == keys().end() ? nullptr : interface_of(key);
    }
    QAccessibleInterface* interface_of(const ChildKey& key) const {
        auto& id = ids_[key];
        if (id == 0) id = QAccessible::registerAccessibleInterface(new ChildInterface(viewport_, key));
        return QAccessible::accessibleInterface(id);
    }
    Viewport* viewport_;
    mutable std::optional<std::vector<ChildKey>> keys_;
    mutable std::map<ChildKey, QAccessible::Id> ids_;
};

QAccessibleInterface* canvas_factory(const QString& name, QObject* object) {
    auto* viewport = qobject_cast<Viewport*>(object);
    if (!viewport || !name.endsWith(QLatin1String("Viewport"))) return nullptr;
    return new CanvasInterface(viewport);
}

}  // namespace accessible_detail

void install_accessible_canvas() {
    static const bool installed = [] {
        QAccessible::installFactory(accessible_detail::canvas_factory);
        return true;
    }();
    (void)installed;
}

void announce_focus(Viewport& viewport) {
    if (!QAccessible::isActive()) return;
    auto* canvas = QAccessible::queryAccessibleInterface(&viewport);
    auto* child = canvas ? canvas->focusChild() : nullptr;
    if (!child) return;
    QAccessibleEvent event(child, QAccessible::Focus);
    QAccessible::updateAccessibility(&event);
}

}  // namespace streamwright::app
