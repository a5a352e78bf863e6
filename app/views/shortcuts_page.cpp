#include "app/views/shortcuts_page.h"

#include <QCoreApplication>
#include <QDialog>
#include <QTextBrowser>
#include <QVBoxLayout>

namespace streamwright::app {

namespace shortcuts_page_detail {

struct Line {
    const char *keys, *what;
};

constexpr Line lines[] = {
    {QT_TRANSLATE_NOOP("shortcuts", "Drag from the catalogue, or Enter on its row"),
     QT_TRANSLATE_NOOP("shortcuts", "place a device")},
    {QT_TRANSLATE_NOOP("shortcuts", "Press on a port and pull"), QT_TRANSLATE_NOOP("shortcuts", "connect by a cable")},
    {QT_TRANSLATE_NOOP("shortcuts", "Pull at a cabled port, or at the handle of a selected cable"),
     QT_TRANSLATE_NOOP("shortcuts", "reconnect that end; drop it on the empty sheet to unplug")},
    {QT_TRANSLATE_NOOP("shortcuts", "Drag a stretch of a selected cable"),
     QT_TRANSLATE_NOOP("shortcuts", "bend and pin it")},
    {QT_TRANSLATE_NOOP("shortcuts", "Tab, Shift+Tab"),
     QT_TRANSLATE_NOOP("shortcuts", "walk devices and ports; while pulling, the ports that fit")},
    {QT_TRANSLATE_NOOP("shortcuts", "Enter"),
     QT_TRANSLATE_NOOP("shortcuts", "select the device, pull from the port, connect")},
    {QT_TRANSLATE_NOOP("shortcuts", "Arrows, Shift+arrows"),
     QT_TRANSLATE_NOOP("shortcuts", "move the selection by 1 or 5 mm; else the view")},
    {QT_TRANSLATE_NOOP("shortcuts", "Shift+click, drag on the empty sheet"),
     QT_TRANSLATE_NOOP("shortcuts", "add to the selection, select by a frame")},
    {QT_TRANSLATE_NOOP("shortcuts", "F2 or double click"), QT_TRANSLATE_NOOP("shortcuts", "rename")},
    {QT_TRANSLATE_NOOP("shortcuts", "Delete"), QT_TRANSLATE_NOOP("shortcuts", "delete the selection")},
    {QT_TRANSLATE_NOOP("shortcuts", "Ctrl+C, Ctrl+X, Ctrl+V"),
     QT_TRANSLATE_NOOP("shortcuts", "copy, cut, paste devices with what lies between them; pasted at the pointer")},
    {QT_TRANSLATE_NOOP("shortcuts", "Ctrl+Shift+D"), QT_TRANSLATE_NOOP("shortcuts", "duplicate the selected devices")},
    {QT_TRANSLATE_NOOP("shortcuts", "Ctrl+Shift+A"),
     QT_TRANSLATE_NOOP("shortcuts", "select all of the types that are selected")},
    {QT_TRANSLATE_NOOP("shortcuts", "Edit, Align"),
     QT_TRANSLATE_NOOP("shortcuts", "set the selected devices in line or at equal gaps")},
    {QT_TRANSLATE_NOOP("shortcuts", "T, Ctrl+K"), QT_TRANSLATE_NOOP("shortcuts", "turn over, fold")},
    {QT_TRANSLATE_NOOP("shortcuts", "V, C"), QT_TRANSLATE_NOOP("shortcuts", "select tool, cable tool")},
    {QT_TRANSLATE_NOOP("shortcuts", "Escape"), QT_TRANSLATE_NOOP("shortcuts", "drop the gesture, clear the selection")},
    {QT_TRANSLATE_NOOP("shortcuts", "Wheel; Ctrl +, Ctrl -, Ctrl 0"), QT_TRANSLATE_NOOP("shortcuts", "zoom")},
    {QT_TRANSLATE_NOOP("shortcuts", "Space and drag, middle button, Shift+wheel"),
     QT_TRANSLATE_NOOP("shortcuts", "pan")},
    {QT_TRANSLATE_NOOP("shortcuts", "Ctrl+1, Ctrl+2"), QT_TRANSLATE_NOOP("shortcuts", "fit page, fit selection")},
    {QT_TRANSLATE_NOOP("shortcuts", "F6, F7, F8"),
     QT_TRANSLATE_NOOP("shortcuts", "close or open catalogue, findings, properties")},
    {QT_TRANSLATE_NOOP("shortcuts", "Ctrl+F, Ctrl+L, Ctrl+G"),
     QT_TRANSLATE_NOOP("shortcuts", "find in the design, search the catalogue, go to the findings")},
    {QT_TRANSLATE_NOOP("shortcuts", "Enter, Shift+Enter in the search; F3, Shift+F3"),
     QT_TRANSLATE_NOOP("shortcuts", "go to the next or previous that is found; Escape goes back to the sheet")},
    {QT_TRANSLATE_NOOP("shortcuts", "Enter, Ctrl+Enter in the findings"),
     QT_TRANSLATE_NOOP("shortcuts", "apply the best remedy; apply to all of this kind, after a preview")},
    {QT_TRANSLATE_NOOP("shortcuts", "Ctrl+E, Delete, Space in the findings"),
     QT_TRANSLATE_NOOP("shortcuts", "accept with a reason, withdraw the acceptance, show on the canvas")},
    {QT_TRANSLATE_NOOP("shortcuts", "Shift+F10, Menu key, right click in the findings"),
     QT_TRANSLATE_NOOP("shortcuts", "all that can be done about the finding")},
};

}  // namespace shortcuts_page_detail

void show_shortcuts(QWidget& parent) {
    using namespace shortcuts_page_detail;
    QDialog dialog(&parent);
    dialog.setWindowTitle(QCoreApplication::translate("shortcuts", "Keys and gestures"));
    dialog.resize(720, 560);
    QString page = QStringLiteral("<table cellspacing='0' cellpadding='5' width='100%'>");
    for (const auto& line : lines)
        page += QStringLiteral("<tr><td width='52%'><b>%1</b></td><td>%2</td></tr>")
                    .arg(QCoreApplication::translate("shortcuts", line.keys).toHtmlEscaped(),
                         QCoreApplication::translate("shortcuts", line.what).toHtmlEscaped());
    auto* text = new QTextBrowser(&dialog);
    text->setHtml(page + QStringLiteral("</table>"));
    auto* layout = new QVBoxLayout(&dialog);
    layout->addWidget(text);
    dialog.exec();
}

}  // namespace streamwright::app
