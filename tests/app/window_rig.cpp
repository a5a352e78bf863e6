#include "tests/app/window_rig.h"

#include "app/panels/properties/properties_panel.h"

#include <QApplication>
#include <QDragEnterEvent>
#include <QLineEdit>
#include <QMimeData>
#include <QTest>

#include <gtest/gtest.h>

namespace streamwright::test {

std::shared_ptr<const app::Library> shipped_library() {
    static const auto library = [] {
        auto read = app::bundled_library();
        if (!read) throw std::runtime_error(read.error().english());
        return std::make_shared<const app::Library>(std::move(*read));
    }();
    return library;
}

WindowRig::WindowRig() : window_(std::make_unique<app::MainWindow>(shipped_library(), folder_.path() / "state")) {
    window_->resize(1600, 1000);
    window_->show();
    (void)QTest::qWaitForWindowExposed(window_.get());
    viewport().setFocus();
    look_at();
}

WindowRig::~WindowRig() {
    document().close();
    window_.reset();
    QApplication::processEvents();
}

void WindowRig::look_at(QPointF corner_mm, double zoom) { viewport().set_view({corner_mm, zoom}); }

QPoint WindowRig::at(QPointF mm) { return viewport().view().to_view(mm).toPoint(); }

const model::Device& WindowRig::device(const std::string& tag) {
    for (const auto& each : design().devices)
        if (each.tag == tag) return each;
    throw std::runtime_error("no device " + tag);
}

model::PortRef WindowRig::port(const std::string& tag, const std::string& key) { return {device(tag).id, {key}}; }

QPoint WindowRig::lug(const std::string& tag, const std::string& key) {
    const auto* spot = viewport().scene().spot(port(tag, key));
    if (!spot) throw std::runtime_error("no lug " + tag + " " + key);
    return at(app::to_mm(spot->lug).center());
}

QPoint WindowRig::title(const std::string& tag) {
    const auto* plate = viewport().scene().plate(device(tag).id);
    if (!plate) throw std::runtime_error("no plate " + tag);
    return at(app::to_mm(plate->plate.body).topLeft() + QPointF(10, 3.5));
}

void WindowRig::drop_type(const std::string& type, QPointF mm) {
    QMimeData data;
    data.setData(app::type_mime, QByteArray::fromStdString(type));
    const auto to = at(mm);
    QDragEnterEvent enter(to, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&viewport(), &enter);
    QDragMoveEvent over(to, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&viewport(), &over);
    QDropEvent drop(to, Qt::CopyAction, &data, Qt::LeftButton, Qt::NoModifier);
    QApplication::sendEvent(&viewport(), &drop);
}

void WindowRig::press(QPoint at, Qt::KeyboardModifiers modifiers) {
    QTest::mousePress(&viewport(), Qt::LeftButton, modifiers, at);
}
void WindowRig::move(QPoint at) { QTest::mouseMove(&viewport(), at); }
void WindowRig::release(QPoint at, Qt::KeyboardModifiers modifiers) {
    QTest::mouseRelease(&viewport(), Qt::LeftButton, modifiers, at);
}

void WindowRig::drag(QPoint from, QPoint to, Qt::KeyboardModifiers modifiers) {
    press(from, modifiers);
    for (int i = 1; i <= 5; ++i) move(from + (to - from) * i / 5);
    release(to, modifiers);
}

void WindowRig::click(QPoint at, Qt::KeyboardModifiers modifiers) {
    QTest::mouseClick(&viewport(), Qt::LeftButton, modifiers, at);
    // The next click is to be a click of its own, not the second half of a double one.
    QTest::qWait(QApplication::doubleClickInterval() + 10);
}

void WindowRig::key(Qt::Key key, Qt::KeyboardModifiers modifiers) { QTest::keyClick(&viewport(), key, modifiers); }

QLineEdit& WindowRig::field(const QString& name) {
    auto* line = window_->properties().form()->findChild<QLineEdit*>(name);
    if (!line) throw std::runtime_error("no field " + name.toStdString());
    return *line;
}

void WindowRig::type_into(const QString& name, const QString& text) {
    auto& line = field(name);
    line.setFocus();
    line.selectAll();
    QTest::keyClick(&line, Qt::Key_Backspace);
    QTest::keyClicks(&line, text);
    QTest::keyClick(&line, Qt::Key_Return);
}

bool WindowRig::wait_for(const std::function<bool()>& holds, int milliseconds) {
    return QTest::qWaitFor(holds, milliseconds);
}

int WindowRig::findings_of(std::string_view rule) {
    int count = 0;
    for (const auto& finding : document().analyser().findings()) count += finding.rule == rule;
    return count;
}

}  // namespace streamwright::test
