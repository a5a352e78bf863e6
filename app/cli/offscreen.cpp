#include "app/cli/offscreen.h"

#include "app/style/bundled_font.h"

#include <QGuiApplication>

#include <cstdio>

namespace streamwright::app {

namespace {
int offscreen_argc = 1;
char offscreen_name[] = "streamwright";
char* offscreen_argv[] = {offscreen_name, nullptr};

/// The platform's own remarks (a missing runtime folder, say) are not for the reader of a command's messages.
void keep_quiet(QtMsgType type, const QMessageLogContext&, const QString& text) {
    if (type == QtCriticalMsg || type == QtFatalMsg) std::fprintf(stderr, "%s\n", qPrintable(text));
}
}  // namespace

OffscreenApplication::OffscreenApplication() {
    if (QCoreApplication::instance()) return;
    qInstallMessageHandler(keep_quiet);
    qputenv("QT_QPA_PLATFORM", "offscreen");
    application_ = std::make_unique<QGuiApplication>(offscreen_argc, offscreen_argv);
    load_bundled_font();
}

OffscreenApplication::~OffscreenApplication() = default;

}  // namespace streamwright::app
