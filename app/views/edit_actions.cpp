#include "app/views/edit_actions.h"

#include "app/panels/address_dialog.h"
#include "app/tools/copying.h"
#include "app/tools/wall_making.h"
#include "app/views/main_window.h"
#include "app/views/schematic/schematic_view.h"
#include "app/views/status_line.h"

#include <QMenu>

#include <utility>

namespace streamwright::app {

namespace edit_actions_detail {

template <class Do>
void add_action(MainWindow& window, QMenu& menu, const QString& words, const QKeySequence& keys, Do todo) {
    auto* action = menu.addAction(words);
    action->setShortcut(keys);
    QObject::connect(action, &QAction::triggered, &window, [&window, todo] { todo(window.schematic().viewport()); });
}

}  // namespace edit_actions_detail

void add_copy_actions(MainWindow& window, QMenu& menu) {
    using edit_actions_detail::add_action;
    add_action(window, menu, MainWindow::tr("Cu&t"), QKeySequence::Cut, cut_selection);
    add_action(window, menu, MainWindow::tr("&Copy"), QKeySequence::Copy, [](Viewport& v) { copy_selection(v); });
    add_action(window, menu, MainWindow::tr("&Paste"), QKeySequence::Paste, paste_clipboard);
    add_action(window, menu, MainWindow::tr("D&uplicate"), QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_D),
               duplicate_selection);
}

void add_align_menu(MainWindow& window, QMenu& menu) {
    using layout::Alignment;
    auto* submenu = menu.addMenu(MainWindow::tr("Al&ign"));
    const std::pair<QString, Alignment> choices[] = {
        {MainWindow::tr("&Left edges"), Alignment::left},
        {MainWindow::tr("&Centres, one above the other"), Alignment::centre},
        {MainWindow::tr("&Right edges"), Alignment::right},
        {MainWindow::tr("&Top edges"), Alignment::top},
        {MainWindow::tr("&Middles, side by side"), Alignment::middle},
        {MainWindow::tr("&Bottom edges"), Alignment::bottom},
        {MainWindow::tr("Equal gaps &across"), Alignment::spread_across},
        {MainWindow::tr("Equal gaps &down"), Alignment::spread_down}};
    for (const auto& [words, alignment] : choices) {
        if (alignment == Alignment::top || alignment == Alignment::spread_across) submenu->addSeparator();
        edit_actions_detail::add_action(window, *submenu, words, {}, [alignment = alignment](Viewport& viewport) {
            align_selection(viewport, alignment, MainWindow::tr("Align"));
        });
    }
}

void add_make_wall(MainWindow& window, QMenu& menu) {
    edit_actions_detail::add_action(window, menu, MainWindow::tr("Make a &wall of the selected displays"), {},
                                    make_wall_of_selection);
}

void add_select_similar(MainWindow& window, QMenu& menu) {
    edit_actions_detail::add_action(window, menu, MainWindow::tr("Select si&milar"),
                                    QKeySequence(Qt::CTRL | Qt::SHIFT | Qt::Key_A), select_similar);
}

void add_plan_addresses(MainWindow& window, QMenu& menu) {
    auto* action = menu.addAction(MainWindow::tr("Plan addre&sses…"));
    QObject::connect(action, &QAction::triggered, &window, [&window] {
        AddressDialog dialog(window.document().design(), &window);
        if (dialog.exec() != QDialog::Accepted) return;
        if (window.document().commit(dialog.plan().delta, MainWindow::tr("Plan addresses")))
            window.status().tell(MainWindow::tr("Addresses are planned."), false);
    });
}

}  // namespace streamwright::app
