// The Schematic: tool bar, canvas with its tools, sheet chooser, and the words of an empty sheet.
#pragma once

#include "app/canvas/viewport.h"
#include "app/tools/choose_gesture.h"

#include <QWidget>

class QActionGroup;
class QComboBox;
class QFrame;
class QHBoxLayout;
class QToolBar;

namespace streamwright::app {

class SchematicView final : public QWidget {
    Q_OBJECT

public:
    SchematicView(Document& document, Selection& selection, std::shared_ptr<const Library> library,
                  QWidget* parent = nullptr);

    Viewport& viewport() { return *viewport_; }
    void set_theme(const Theme& theme);
    void set_tool(Tool tool);
    /// Buttons of the tool bar's middle, given by the window (undo, redo, fit).
    void add_actions(const QList<QAction*>& actions);
    /// At the pointer if it is over the canvas, else in the middle, where there is room.
    void place(const std::shared_ptr<const catalogue::DeviceType>& type);
    /// Changes the sheet where needed, selects and shows the subject. Whether it is drawn anywhere.
    bool go_to(const Chosen& subject);
    void delete_selection();
    void select_all();
    void turn_selection();
    void fold_selection();
    /// Round the selected devices, which then stand in it; or an empty one in the middle of the view.
    void add_room();
    void add_note();

Q_SIGNALS:
    void open_requested();
    void example_requested();

protected:
    void resizeEvent(QResizeEvent* event) override;

private:
    void fill_sheets();
    void show_empty_state();
    void make_tool_bar();
    void make_empty_state();
    void change_places(const QString& words, const std::function<void(model::Place&)>& change);
    void add_sheet();

    Document& document_;
    Selection& selection_;
    ToolBox box_;
    Viewport* viewport_;
    QHBoxLayout* bar_ = nullptr;
    std::vector<QWidget*>
        extras_;  // of the tool bar; hidden where it is narrow, since their actions are in the menus too
    QActionGroup* tools_ = nullptr;
    QComboBox* sheets_ = nullptr;
    QFrame* empty_ = nullptr;
};

}  // namespace streamwright::app
