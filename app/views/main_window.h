// The window: top bar, catalogue, view, findings, properties, status line. It lays out and connects; what each part
// does is its own matter.
#pragma once

#include "app/document/document.h"
#include "app/document/library.h"
#include "app/document/selection.h"
#include "app/style/theme.h"

#include <QMainWindow>

#include <filesystem>
#include <memory>

class QSplitter;

namespace streamwright::app {

class CataloguePanel;
class FileActions;
class FindingsPanel;
class PropertiesPanel;
class SchematicView;
class StatusLine;
class TopBar;

class MainWindow final : public QMainWindow {
    Q_OBJECT

public:
    /// `state_folder` keeps the journals of designs never saved; empty: none.
    MainWindow(std::shared_ptr<const Library> library, std::filesystem::path state_folder, QWidget* parent = nullptr);
    ~MainWindow() override;

    Document& document() { return document_; }
    Selection& selection() { return selection_; }
    SchematicView& schematic() { return *schematic_; }
    CataloguePanel& catalogue() { return *catalogue_; }
    FindingsPanel& findings() { return *findings_; }
    PropertiesPanel& properties() { return *properties_; }
    StatusLine& status() { return *status_; }
    TopBar& top() { return *top_; }
    FileActions& files() { return *files_; }

    void set_theme(ThemeChoice choice);
    void deliver();

protected:
    void closeEvent(QCloseEvent* event) override;

private:
    void lay_out();
    void connect_parts();
    void show_finding(const analysis::Finding& finding);
    void show_title();

    Document document_;
    Selection selection_;
    TopBar* top_;
    CataloguePanel* catalogue_;
    SchematicView* schematic_;
    FindingsPanel* findings_;
    PropertiesPanel* properties_;
    StatusLine* status_;
    FileActions* files_;
};

/// Fills the menu bar; actions live in the window.
void add_menus(MainWindow& window);

}  // namespace streamwright::app
