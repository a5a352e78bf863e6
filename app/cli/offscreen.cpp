#include "app/cli/offscreen.h"

#include "app/style/bundled_font.h"

#include <QGuiApplication>

namespace streamwright::app {

namespace {
int offscreen_argc = 1;
char offscreen_name[] = "streamwright";
char* offscreen_argv[] = {offscreen_name, nullptr};
}  // namespace

OffscreenApplication::OffscreenApplication() {
    if (QCoreApplication::instance()) return;
    qputenv("QT_QPA_PLATFORM", "offscreen");
    application_ = std::make_unique<QGuiApplication>(offscreen_argc, offscreen_argv);
    load_bundled_font();
}

OffscreenApplication::~OffscreenApplication() = default;

}  // namespace streamwright::app
