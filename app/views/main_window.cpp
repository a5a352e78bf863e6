#include "app/views/main_window.h"

#include "app/canvas/subject_words.h"
#include "app/panels/catalogue_panel.h"
#include "app/panels/finding_actions.h"
#include "app/panels/findings_panel.h"
#include "app/panels/properties/properties_panel.h"
#include "app/style/widget_style.h"
#include "app/views/deliver_dialog.h"
#include "app/views/file_actions.h"
#include "app/views/schematic/schematic_view.h"
#include "app/views/status_line.h"
#include "app/views/top_bar.h"
#include "app/words/words.h"

#include <QApplication>
#include <QCloseEvent>
#include <QDir>
#include <QIcon>
#include <QScreen>
#include <QSettings>
#include <QSplitter>
#include <QVBoxLayout>

namespace streamwright::app {

MainWindow::MainWindow(std::shared_ptr<const Library> library, std::filesystem::path state_folder, QWidget* parent)
    : QMainWindow(parent),
      document_(std::move(state_folder)),
      top_(new TopBar(document_, selection_, this)),
      catalogue_(new CataloguePanel(library, this)),
      schematic_(new SchematicView(document_, selection_, library, this)),
      findings_(new FindingsPanel(document_, this)),
      properties_(new PropertiesPanel(document_, selection_, library, this)),
      status_(new StatusLine(document_, this)),
      files_(new FileActions(document_, *this)) {
    setWindowIcon(QIcon(QStringLiteral(":/icons/streamwright.svg")));
    // As drawn in the visual language, or as much as the screen has.
    resize(QSize(1920, 1040).boundedTo(screen()->availableSize()));
    lay_out();
    connect_parts();
    add_menus(*this);
    show_title();
    Q_EMIT document_.replaced();
}

MainWindow::~MainWindow() = default;

void MainWindow::lay_out() {
    auto* middle = new QSplitter(Qt::Vertical, this);
    middle->addWidget(schematic_);
    middle->addWidget(findings_);
    middle->setStretchFactor(0, 1);
    middle->setSizes({800, 168});
    middle->setHandleWidth(1);
    middle->setChildrenCollapsible(false);
    auto* across = new QSplitter(Qt::Horizontal, this);
    across->addWidget(catalogue_);
    across->addWidget(middle);
    across->addWidget(properties_);
    across->setStretchFactor(1, 1);
    across->setSizes({212, 1400, 308});
    across->setHandleWidth(1);
    across->setChildrenCollapsible(false);
    catalogue_->setMinimumWidth(180);
    properties_->setMinimumWidth(280);
    findings_->setMinimumHeight(80);
    auto* whole = new QWidget(this);
    auto* layout = new QVBoxLayout(whole);
    layout->setContentsMargins(0, 0, 0, 0);
    layout->setSpacing(0);
    layout->addWidget(top_);
    layout->addWidget(across, 1);
    layout->addWidget(status_);
    setCentralWidget(whole);
}

void MainWindow::connect_parts() {
    auto& viewport = schematic_->viewport();
    connect(catalogue_, &CataloguePanel::place_requested, schematic_, &SchematicView::place);
    connect(top_, &TopBar::found, this, [this](const Chosen& subject) {
        if (!schematic_->go_to(subject)) status_->tell(tr("It is drawn on no sheet; its properties are shown."), false);
    });
    connect(top_, &TopBar::left, this, [this] { schematic_->viewport().setFocus(); });
    connect(findings_, &FindingsPanel::subject_chosen, this, [this](const analysis::Subject& subject) {
        if (const auto chosen = chosen_for(document_.design(), subject)) schematic_->go_to(*chosen);
    });
    connect(&findings_->actions(), &FindingActions::show_requested, this, &MainWindow::show_finding);
    connect(&findings_->actions(), &FindingActions::told, this,
            [this](const QString& words) { status_->tell(words, false); });
    connect(&viewport, &Viewport::told, status_, &StatusLine::tell);
    connect(&viewport, &Viewport::hovered, this, [this](const std::optional<Chosen>& subject) {
        status_->hover(subject ? subject_words(schematic_->viewport().scene(), *subject) : QString());
    });
    connect(&viewport, &Viewport::focus_moved, this, [this] {
        const auto subject = schematic_->viewport().focused();
        status_->hover(subject ? subject_words(schematic_->viewport().scene(), *subject) : QString());
    });
    connect(&viewport, &Viewport::view_changed, this,
            [this] { status_->show_zoom(schematic_->viewport().view().zoom); });
    connect(schematic_, &SchematicView::open_requested, this, [this] { files_->ask_open(); });
    connect(schematic_, &SchematicView::example_requested, this, [this] { files_->ask_open(examples_folder()); });
    connect(&document_, &Document::file_changed, this, &MainWindow::show_title);
    connect(&document_, &Document::journal_failed, this, [this](const QString& why) { status_->tell(why, true); });
    connect(&document_, &Document::replaced, this, [this] { selection_.clear(); });
}

void MainWindow::show_finding(const analysis::Finding& finding) {
    std::set<Chosen> all;
    bool shown_one = false;
    for (const auto& subject : finding.subjects) {
        const auto chosen = chosen_for(document_.design(), subject);
        if (!chosen) continue;
        all.insert(*chosen);
        if (!shown_one) shown_one = schematic_->go_to(*chosen);
    }
    // A VLAN has no place on a sheet: beside what is drawn it would only hide the device's properties.
    if (shown_one) std::erase_if(all, [](const Chosen& each) { return std::holds_alternative<model::VlanId>(each); });
    if (!shown_one) return status_->tell(tr("What this finding is about is drawn on no sheet."), true);
    selection_.set(std::move(all));
    schematic_->viewport().setFocus();
}

void MainWindow::show_title() {
    const auto name = document_.path() ? shown(document_.path()->filename().string()) : tr("not saved yet");
    setWindowTitle(tr("%1[*] · %2 · Streamwright").arg(document_.title(), name));
    setWindowModified(document_.modified());
}

void MainWindow::set_theme(ThemeChoice choice) {
    const auto theme = bundled_theme(choice);
    dress(*qApp, theme);
    catalogue_->set_theme(theme);
    schematic_->set_theme(theme);
    findings_->set_theme(theme);
    properties_->set_theme(theme);
    status_->set_theme(theme);
}

void MainWindow::deliver() {
    QSettings settings;
    const auto beside = document_.path() ? shown((document_.path()->parent_path() / "documents").string())
                                         : QDir::home().filePath(QStringLiteral("documents"));
    DeliverDialog dialog(document_.design(), beside, this);
    dialog.exec();
}

void MainWindow::closeEvent(QCloseEvent* event) {
    if (!files_->may_leave()) {
        event->ignore();
        return;
    }
    document_.close();
    event->accept();
}

}  // namespace streamwright::app
