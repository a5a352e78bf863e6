#include "app/style/bundled_font.h"

#include <QFont>
#include <QFontDatabase>
#include <QGuiApplication>
#include <QTemporaryFile>

#include <memory>

namespace streamwright::app {

namespace bundled_font_detail {

constexpr char configuration_variable[] = "FONTCONFIG_FILE";

/// Ours, until the fonts are loaded; and what stood there before.
std::unique_ptr<QTemporaryFile> configuration;
QByteArray users_configuration;

/// The system's configuration, or the one the user named, less our family.
QByteArray less_our_family() {
    const auto usual = qEnvironmentVariable(configuration_variable, QStringLiteral("/etc/fonts/fonts.conf"));
    return "<?xml version=\"1.0\"?><!DOCTYPE fontconfig SYSTEM \"fonts.dtd\"><fontconfig>"
           "<include ignore_missing=\"yes\">" +
           usual.toHtmlEscaped().toUtf8() +
           "</include><selectfont><rejectfont><pattern><patelt name=\"family\"><string>" + bundled_family +
           "</string></patelt></pattern></rejectfont></selectfont></fontconfig>";
}

}  // namespace bundled_font_detail

void prefer_bundled_font() {
    using namespace bundled_font_detail;
    auto file = std::make_unique<QTemporaryFile>();
    // Without it the system's font of that name may be taken; everything else works.
    if (!file->open() || file->write(less_our_family()) < 0 || !file->flush()) return;
    users_configuration = qgetenv(configuration_variable);
    qputenv(configuration_variable, file->fileName().toUtf8());
    configuration = std::move(file);
}

void load_bundled_font() {
    for (const char* file : {":/fonts/B612-Regular.otf", ":/fonts/B612-Bold.otf"})
        QFontDatabase::addApplicationFont(QString::fromLatin1(file));
    QFont usual(QString::fromLatin1(bundled_family));
    usual.setPixelSize(12);
    // Ligatures would spoil searching in PDF; measured widths assume none.
    usual.setStyleStrategy(QFont::PreferNoShaping);
    QGuiApplication::setFont(usual);
    if (!bundled_font_detail::configuration) return;
    // Read by now; programs that this one starts are to see the user's fonts.
    QFontDatabase::families();
    const auto& users = bundled_font_detail::users_configuration;
    if (users.isEmpty())
        qunsetenv(bundled_font_detail::configuration_variable);
    else
        qputenv(bundled_font_detail::configuration_variable, users);
    bundled_font_detail::configuration.reset();
}

}  // namespace streamwright::app
