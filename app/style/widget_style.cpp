#include "app/style/widget_style.h"

#include "app/style/bundled_font.h"

#include <QApplication>
#include <QFile>
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
    QFile file(QStringLiteral(":/widgets.qss"));
    if (!file.open(QIODevice::ReadOnly)) return {};  // plain widgets in our palette
    QString sheet = QString::fromUtf8(file.readAll());
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
