// The real window offscreen, driven by mouse, key and drop events on its viewport.
#pragma once

#include "app/views/main_window.h"
#include "app/views/schematic/schematic_view.h"
#include "tests/support/temp_folder.h"

#include <QApplication>
#include <QDialog>
#include <QPoint>
#include <QString>
#include <QTimer>

#include <string>

namespace streamwright::test {

class WindowRig {
public:
    /// On a fresh design, at 100 %; a state folder of its own.
    WindowRig();
    ~WindowRig();

    app::MainWindow& window() { return *window_; }
    app::Document& document() { return window_->document(); }
    app::Selection& selection() { return window_->selection(); }
    app::Viewport& viewport() { return window_->schematic().viewport(); }
    const model::Design& design() { return document().design(); }
    const TempFolder& folder() const { return folder_; }

    /// Puts the view at 100 % with this corner of the sheet in view.
    void look_at(QPointF corner_mm = {0, 0}, double zoom = 1);
    QPoint at(QPointF mm);
    QPoint lug(const std::string& tag, const std::string& port);
    QPoint title(const std::string& tag);
    const model::Device& device(const std::string& tag);
    model::PortRef port(const std::string& tag, const std::string& port);

    /// Drags a type in from the catalogue and drops it with its middle there.
    void drop_type(const std::string& type, QPointF mm);
    void press(QPoint at, Qt::KeyboardModifiers modifiers = {});
    void move(QPoint at);
    void release(QPoint at, Qt::KeyboardModifiers modifiers = {});
    void drag(QPoint from, QPoint to, Qt::KeyboardModifiers modifiers = {});
    void click(QPoint at, Qt::KeyboardModifiers modifiers = {});
    void key(Qt::Key key, Qt::KeyboardModifiers modifiers = {});

    /// The line edit of that name in the properties; fails the test if there is none.
    QLineEdit& field(const QString& name);
    void type_into(const QString& name, const QString& text);
    /// Runs events until the condition holds; whether it did within the time.
    bool wait_for(const std::function<bool()>& holds, int milliseconds = 5000);
    int findings_of(std::string_view rule);

private:
    TempFolder folder_;
    std::unique_ptr<app::MainWindow> window_;
};

/// Does this in the dialog that opens next; one that is still open afterwards is dropped, so that no test hangs.
template <class Dialog, class Act>
void in_next(Act act) {
    auto* timer = new QTimer(qApp);
    QObject::connect(timer, &QTimer::timeout, timer, [timer, act] {
        auto* dialog = qobject_cast<Dialog*>(QApplication::activeModalWidget());
        if (!dialog || !dialog->isActiveWindow()) return;  // until then keys still go to the window behind
        timer->stop();
        timer->deleteLater();
        act(*dialog);
        if (dialog->isVisible()) dialog->reject();
    });
    timer->start(5);
}

/// The library shipped with the program, read once.
std::shared_ptr<const app::Library> shipped_library();

}  // namespace streamwright::test
