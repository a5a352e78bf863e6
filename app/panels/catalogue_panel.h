// What may be placed: the types of the library by kind, found by name, port or kind; dragged onto the canvas, or placed
// with Enter.
#pragma once

#include "app/document/library.h"
#include "app/style/theme.h"

#include <QWidget>

class QLabel;
class QLineEdit;
class QStandardItemModel;
class QTreeView;

namespace streamwright::app {

class CataloguePanel final : public QWidget {
    Q_OBJECT

public:
    CataloguePanel(std::shared_ptr<const Library> library, QWidget* parent = nullptr);
    void set_theme(const Theme& theme);
    QTreeView& list() { return *list_; }
    void focus_search();

Q_SIGNALS:
    /// Enter or a double click on a row.
    void place_requested(const std::shared_ptr<const catalogue::DeviceType>& type);

private:
    void fill();
    void place(const QModelIndex& row);

    std::shared_ptr<const Library> library_;
    Theme theme_;
    QLabel* count_;
    QLineEdit* search_;
    QTreeView* list_;
    QStandardItemModel* model_;
};

}  // namespace streamwright::app
