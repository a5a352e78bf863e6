#include "app/style/widget_style.h"

#include "app/style/bundled_font.h"

#include <QApplication>
#include <QFontInfo>
#include <QPalette>
#include <QStyleFactory>

namespace streamwright::app {

QPalette palette_of(const Theme& theme) {
    QPalette palette;
    const auto set = [&](QPalette::ColorRole role, const QColor& colour) { palette.setColor(role, colour); };
    set(QPalette::Window, theme.ground("panel"));
    set(QPalette::WindowText, theme.text());
    set(QPalette::Base, theme.ground("field"));
    set(QPalette::AlternateBase, theme.ground("panel"));
    set(QPalette::Text, theme.text());
    set(QPalette::Button, theme.ground("plate"));
    set(QPalette::ButtonText, theme.text());
    set(QPalette::ToolTipBase, theme.ground("plate"));
    set(QPalette::ToolTipText, theme.text());
    set(QPalette::PlaceholderText, theme.text("faint"));
    set(QPalette::Highlight, theme.ground("selected"));
    set(QPalette::HighlightedText, theme.text());
    set(QPalette::Link, theme.text("advice"));
    set(QPalette::Mid, theme.rule("hair"));
    set(QPalette::Dark, theme.rule("plate_edge"));
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
        palette.setColor(QPalette::Disabled, role, theme.rule("room_edge"));
    return palette;
}

QString style_sheet_of(const Theme& theme) {
    QString sheet = QStringLiteral(R"(
* { font-family: "B612"; font-size: 12px; }
QMainWindow, QDialog { background: @panel; }
QMenuBar { background: @bar; border: none; padding: 1px 8px; }
QMenuBar::item { padding: 4px 8px; background: transparent; }
QMenuBar::item:selected { background: @title; }
QMenu { background: @plate; border: 1px solid @edge; padding: 4px 0; }
QMenu::item { padding: 5px 28px 5px 20px; }
QMenu::item:selected { background: @selected; }
QMenu::item:disabled { color: @room_edge; }
QMenu::separator { height: 1px; background: @hair; margin: 4px 0; }
QMenu::indicator { width: 10px; height: 10px; left: 6px; }
QToolTip { background: @plate; color: @ink; border: 1px solid @edge; padding: 3px 6px; }
QLineEdit, QComboBox, QPlainTextEdit, QSpinBox { background: @field; border: 1px solid @edge; border-radius: 3px;
  padding: 3px 7px; selection-background-color: @selected; selection-color: @ink; min-height: 18px; }
QLineEdit:focus, QComboBox:focus, QPlainTextEdit:focus, QSpinBox:focus { border: 2px solid @ink; padding: 2px 6px; }
QLineEdit[wrong="true"] { border: 2px solid @error_edge; padding: 2px 6px; }
QLineEdit:disabled, QComboBox:disabled { color: @faint; background: @panel; border-color: @hair; }
QLineEdit[quiet="true"], QPlainTextEdit[quiet="true"] { border: 1px solid @hair; }
QLineEdit[quiet="true"]:hover { border: 1px solid @edge; }
QLineEdit[quiet="true"]:focus { border: 2px solid @ink; }
QComboBox::drop-down { border: none; width: 22px; }
QComboBox::down-arrow { image: url(:/icons/@arrow); width: 10px; height: 10px; }
QComboBox QAbstractItemView { background: @plate; border: 1px solid @edge; selection-background-color: @selected;
  selection-color: @ink; outline: none; }
QPushButton, QToolButton[button="true"] { background: @plate; border: 1px solid @edge; border-radius: 3px;
  padding: 4px 12px; min-height: 16px; }
QPushButton:hover { background: @hover; }
QPushButton:pressed { background: @title; }
QPushButton:focus { border: 2px solid @ink; padding: 3px 11px; }
QPushButton:default, QPushButton[main="true"] { background: @ink; color: @plate; border: 1px solid @ink; }
QPushButton:disabled { color: @room_edge; border-color: @hair; background: @panel; }
QToolButton { background: transparent; border: 1px solid transparent; border-radius: 3px; padding: 3px 8px; }
QToolButton:hover { background: @hover; }
QToolButton:focus { border: 1px solid @ink; }
QToolButton:checked { background: @ink; color: @plate; font-weight: bold; }
QToolButton:disabled { color: @room_edge; }
QToolButton::menu-indicator { image: none; }
QTreeView, QListView, QScrollArea, QTextBrowser { background: @panel; border: none; outline: none; }
QTreeView::item { min-height: 24px; padding-left: 0px; border: none; }
QTreeView::item:hover { background: @hover; }
QTreeView::item:selected { background: @selected; color: @ink; }
QTreeView::branch { background: @panel; }
QCheckBox::indicator { width: 14px; height: 14px; border: 1px solid @edge; border-radius: 2px; background: @field; }
QCheckBox::indicator:checked { background: @ink; image: url(:/icons/@tick); }
QCheckBox:focus { text-decoration: underline; }
QScrollBar:vertical { background: transparent; width: 10px; margin: 0; }
QScrollBar:horizontal { background: transparent; height: 10px; margin: 0; }
QScrollBar::handle { background: @room_edge; border-radius: 3px; margin: 2px; }
QScrollBar::handle:vertical { min-height: 24px; }
QScrollBar::handle:horizontal { min-width: 24px; }
QScrollBar::handle:hover { background: @edge; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }
QSplitter::handle { background: @edge; }
QProgressBar { background: @field; border: 1px solid @edge; border-radius: 3px; text-align: center; height: 18px; }
QProgressBar::chunk { background: @selected; }
QLabel[tone="muted"] { color: @muted; }
QLabel[tone="faint"] { color: @faint; font-size: 11px; }
QLabel[tone="error"] { color: @text_error; font-size: 11px; }
QLabel[tone="strong"] { font-weight: bold; }
QLabel[tone="number"] { font-weight: bold; font-size: 20px; }
QLabel[tone="title"] { font-weight: bold; font-size: 15px; }
#TopBar { background: @panel; border-bottom: 1px solid @strong; }
#ToolBar { background: @canvas; border-bottom: 1px solid @hair; }
#CataloguePanel { background: @panel; border-right: 1px solid @strong; }
#PropertiesPanel { background: @panel; border-left: 1px solid @strong; }
#FindingsPanel { background: @panel; border-top: 1px solid @strong; }
#StatusLine { background: @bar; border-top: 1px solid @strong; }
#FindingBox { background: @plate; border: 2px solid @error_edge; border-radius: 3px; }
#FindingBox[severity="warning"], #FindingBox[severity="advice"] { border: 1px solid @edge; }
#ViewTab { background: transparent; border: none; border-radius: 0; padding: 0 16px; min-height: 42px; }
#ViewTab:checked { background: @canvas; color: @ink; font-weight: bold; border-top: 4px solid @ink;
  border-left: 1px solid @strong; border-right: 1px solid @strong; }
)");
    const std::pair<const char*, QColor> colours[] = {{"@text_error", theme.text("error")},
                                                      {"@error_edge", theme.severity_edge(analysis::Severity::error)},
                                                      {"@room_edge", theme.rule("room_edge")},
                                                      {"@selected", theme.ground("selected")},
                                                      {"@canvas", theme.ground("canvas")},
                                                      {"@strong", theme.rule("strong")},
                                                      {"@hover", theme.ground("hover")},
                                                      {"@panel", theme.ground("panel")},
                                                      {"@plate", theme.ground("plate")},
                                                      {"@field", theme.ground("field")},
                                                      {"@title", theme.ground("title")},
                                                      {"@muted", theme.text("muted")},
                                                      {"@faint", theme.text("faint")},
                                                      {"@hair", theme.rule("hair")},
                                                      {"@edge", theme.rule("plate_edge")},
                                                      {"@bar", theme.ground("bar")},
                                                      {"@ink", theme.text()}};
    sheet.replace("@arrow", theme.dark() ? "arrow-down-dark.svg" : "arrow-down-light.svg");
    sheet.replace("@tick", theme.dark() ? "tick-dark.svg" : "tick-light.svg");
    for (const auto& [name, colour] : colours) sheet.replace(QLatin1String(name), colour.name());
    return sheet;
}

void dress(QApplication& application, const Theme& theme) {
    if (QFontInfo(application.font()).family() != QLatin1String(bundled_family)) load_bundled_font();
    application.setStyle(QStyleFactory::create("fusion"));
    application.setPalette(palette_of(theme));
    application.setStyleSheet(style_sheet_of(theme));
}

}  // namespace streamwright::app
