// The menus and the keys of the window.
#include "app/panels/catalogue_panel.h"
#include "app/panels/findings_panel.h"
#include "app/panels/properties/properties_panel.h"
#include "app/views/edit_actions.h"
#include "app/views/file_actions.h"
#include "app/views/main_window.h"
#include "app/views/schematic/schematic_view.h"
#include "app/views/shortcuts_page.h"
#include "app/views/top_bar.h"

#include <QActionGroup>
#include <QMenu>
#include <QMenuBar>
#include <QSettings>

namespace streamwright::app {

namespace menus_detail {

template <class Do>
QAction* add(QMenu& menu, const QString& words, const QKeySequence& keys, Do todo) {
    auto* action = menu.addAction(words);
    action->setShortcut(keys);
    QObject::connect(action, &QAction::triggered, menu.parentWidget(), todo);
    return action;
}

void add_file_menu(MainWindow& window) {
    auto& files = window.files();
    auto* menu = window.menuBar()->addMenu(MainWindow::tr("&File"));
    add(*menu, MainWindow::tr("&New"), QKeySequence::New, [&files] { files.start_new(); });
    add(*menu, MainWindow::tr("&Open…"), QKeySequence::Open, [&files] { files.ask_open(); });
    auto* recent = menu->addMenu(MainWindow::tr("Open &recent"));
    QObject::connect(recent, &QMenu::aboutToShow, &files, [&files, recent] { files.fill_recent(*recent); });
    files.fill_recent(*recent);
    menu->addSeparator();
    add(*menu, MainWindow::tr("&Save"), QKeySequence::Save, [&files] { files.save(); });
    add(*menu, MainWindow::tr("Save &as…"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_S),
        [&files] { files.save_as(); });
    menu->addSeparator();
    add(*menu, MainWindow::tr("&Deliver documents…"), QKeySequence(Qt::CTRL | Qt::Key_D),
        [&window] { window.deliver(); });
    menu->addSeparator();
    add(*menu, MainWindow::tr("&Quit"), QKeySequence::Quit, [&window] { window.close(); });
}

void add_edit_menu(MainWindow& window) {
    auto& schematic = window.schematic();
    auto* menu = window.menuBar()->addMenu(MainWindow::tr("&Edit"));
    auto* undo = window.document().history().createUndoAction(&window, MainWindow::tr("Undo"));
    undo->setShortcut(QKeySequence::Undo);
    auto* redo = window.document().history().createRedoAction(&window, MainWindow::tr("Redo"));
    redo->setShortcuts({QKeySequence(QKeySequence::Redo), QKeySequence(Qt::CTRL | Qt::Key_Y)});
    menu->addActions({undo, redo});
    menu->addSeparator();
    add_copy_actions(window, *menu);
    add(*menu, MainWindow::tr("&Delete"), {}, [&schematic] {
        schematic.delete_selection();
    })->setToolTip(MainWindow::tr("Delete, while the canvas has the keyboard"));
    add(*menu, MainWindow::tr("Re&name"), {}, [&window, &schematic] {
        if (const auto only = window.selection().only()) schematic.viewport().rename(*only);
    });
    add(*menu, MainWindow::tr("&Turn over"), QKeySequence(Qt::Key_T), [&schematic] { schematic.turn_selection(); });
    add(*menu, MainWindow::tr("&Fold"), QKeySequence(Qt::CTRL | Qt::Key_K),
        [&schematic] { schematic.fold_selection(); });
    add_align_menu(window, *menu);
    add_make_wall(window, *menu);
    menu->addSeparator();
    add(*menu, MainWindow::tr("Add a &room"), {}, [&schematic] { schematic.add_room(); });
    add(*menu, MainWindow::tr("Add a n&ote"), {}, [&schematic] { schematic.add_note(); });
    add_plan_addresses(window, *menu);
    menu->addSeparator();
    add(*menu, MainWindow::tr("Select &all"), QKeySequence::SelectAll, [&schematic] { schematic.select_all(); });
    add_select_similar(window, *menu);
    // The tool bar shows short words; the menu says what would be undone.
    auto* bar_undo = new QAction(MainWindow::tr("Undo"), &window);
    auto* bar_redo = new QAction(MainWindow::tr("Redo"), &window);
    for (const auto& [bar, full] : {std::pair(bar_undo, undo), std::pair(bar_redo, redo)}) {
        const auto follow = [bar = bar, full = full] {
            bar->setEnabled(full->isEnabled());
            bar->setToolTip(full->text() + " (" + full->shortcut().toString(QKeySequence::NativeText) + ")");
        };
        follow();
        QObject::connect(full, &QAction::changed, bar, follow);
        QObject::connect(bar, &QAction::triggered, full, &QAction::trigger);
    }
    schematic.add_actions({nullptr, bar_undo, bar_redo});
}

void add_view_actions(MainWindow& window, QMenu& menu) {
    auto& viewport = window.schematic().viewport();
    add(menu, MainWindow::tr("Zoom &in"), QKeySequence::ZoomIn, [&viewport] {
        viewport.zoom_by(1.25);
    })->setShortcuts({QKeySequence(Qt::CTRL | Qt::Key_Plus), QKeySequence(Qt::CTRL | Qt::Key_Equal)});
    add(menu, MainWindow::tr("Zoom &out"), QKeySequence(Qt::CTRL | Qt::Key_Minus),
        [&viewport] { viewport.zoom_by(0.8); });
    add(menu, MainWindow::tr("&100 %"), QKeySequence(Qt::CTRL | Qt::Key_0), [&viewport] { viewport.zoom_to(1); });
    auto* page = add(menu, MainWindow::tr("Fit &page"), QKeySequence(Qt::CTRL | Qt::Key_1),
                     [&viewport] { viewport.fit_page(); });
    auto* selection = add(menu, MainWindow::tr("Fit &selection"), QKeySequence(Qt::CTRL | Qt::Key_2),
                          [&viewport] { viewport.fit_selection(); });
    page->setIconText(MainWindow::tr("Fit page"));
    selection->setIconText(MainWindow::tr("Fit selection"));
    window.schematic().add_actions({nullptr, page, selection});
}

void add_theme_menu(MainWindow& window, QMenu& menu) {
    auto* themes = menu.addMenu(MainWindow::tr("&Theme"));
    auto* group = new QActionGroup(themes);
    const auto stored = QSettings().value(QStringLiteral("theme"), 0).toInt();
    const std::pair<QString, ThemeChoice> choices[] = {{MainWindow::tr("As the &system"), ThemeChoice::system},
                                                       {MainWindow::tr("&Light"), ThemeChoice::light},
                                                       {MainWindow::tr("&Dark"), ThemeChoice::dark}};
    for (const auto& [words, choice] : choices) {
        auto* action = themes->addAction(words);
        action->setCheckable(true);
        action->setChecked(static_cast<int>(choice) == stored);
        group->addAction(action);
        QObject::connect(action, &QAction::triggered, &window, [&window, choice = choice] {
            QSettings().setValue(QStringLiteral("theme"), static_cast<int>(choice));
            window.set_theme(choice);
        });
    }
}

void add_panel_switch(QMenu& menu, const QString& words, Qt::Key key, QWidget& panel) {
    auto* action = menu.addAction(words);
    action->setCheckable(true);
    action->setChecked(true);
    action->setShortcut(QKeySequence(key));
    QObject::connect(action, &QAction::toggled, &panel, &QWidget::setVisible);
}

void add_view_menu(MainWindow& window) {
    auto* menu = window.menuBar()->addMenu(MainWindow::tr("&View"));
    add_view_actions(window, *menu);
    menu->addSeparator();
    add_panel_switch(*menu, MainWindow::tr("&Catalogue"), Qt::Key_F6, window.catalogue());
    add_panel_switch(*menu, MainWindow::tr("&Findings"), Qt::Key_F7, window.findings());
    add_panel_switch(*menu, MainWindow::tr("&Properties"), Qt::Key_F8, window.properties());
    menu->addSeparator();
    add(*menu, MainWindow::tr("Fin&d…"), QKeySequence::Find, [&window] { window.top().focus_search(); });
    add(*menu, MainWindow::tr("Find &next"), QKeySequence(Qt::Key_F3), [&window] { window.top().step(1); });
    add(*menu, MainWindow::tr("Find pre&vious"), QKeySequence(Qt::SHIFT | Qt::Key_F3),
        [&window] { window.top().step(-1); });
    add(*menu, MainWindow::tr("Search the cata&logue"), QKeySequence(Qt::CTRL | Qt::Key_L),
        [&window] { window.catalogue().focus_search(); });
    add(*menu, MainWindow::tr("&Go to the findings"), QKeySequence(Qt::CTRL | Qt::Key_G),
        [&window] { window.findings().focus_list(); });
    menu->addSeparator();
    add_theme_menu(window, *menu);
}

}  // namespace menus_detail

void add_menus(MainWindow& window) {
    using namespace menus_detail;
    add_file_menu(window);
    add_edit_menu(window);
    add_view_menu(window);
    auto* help = window.menuBar()->addMenu(MainWindow::tr("&Help"));
    add(*help, MainWindow::tr("&Keys and gestures"), QKeySequence(Qt::Key_F1), [&window] { show_shortcuts(window); });
}

}  // namespace streamwright::app
