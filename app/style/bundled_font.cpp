#include "app/style/bundled_font.h"

#include <QFont>
#include <QFontDatabase>
#include <QGuiApplication>

namespace streamwright::app {

void load_bundled_font() {
    for (const char* file : {":/fonts/B612-Regular.otf", ":/fonts/B612-Bold.otf"})
        QFontDatabase::addApplicationFont(QString::fromLatin1(file));
    QFont usual(QString::fromLatin1(bundled_family));
    usual.setPixelSize(12);
    // Ligatures would spoil searching in PDF; measured widths assume none.
    usual.setStyleStrategy(QFont::PreferNoShaping);
    QGuiApplication::setFont(usual);
}

}  // namespace streamwright::app
