// The actions of the Edit menu that work on several devices: copy, cut, paste, duplicate, align, make a wall, select
// similar, plan addresses.
#pragma once

class QMenu;

namespace streamwright::app {

class MainWindow;

void add_copy_actions(MainWindow& window, QMenu& menu);
void add_align_menu(MainWindow& window, QMenu& menu);
void add_make_wall(MainWindow& window, QMenu& menu);
void add_select_similar(MainWindow& window, QMenu& menu);
void add_plan_addresses(MainWindow& window, QMenu& menu);

}  // namespace streamwright::app
