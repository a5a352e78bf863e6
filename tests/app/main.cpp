// One application for all tests of the canvas: offscreen, with the bundled face, and no settings of the user.
#include "app/style/bundled_font.h"
#include "app/style/widget_style.h"

#include <QApplication>
#include <QStandardPaths>
#include <QTemporaryDir>

#include <gtest/gtest.h>

int main(int argc, char** argv) {
    if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
    QTemporaryDir settings;
    qputenv("XDG_CONFIG_HOME", settings.path().toUtf8());
    testing::InitGoogleTest(&argc, argv);
    streamwright::app::prefer_bundled_font();
    QApplication application(argc, argv);
    QApplication::setOrganizationName("streamwright-tests");
    QApplication::setApplicationName("streamwright-tests");
    // Two clicks of a test are seldom a double click; where they are, QTest says so itself.
    QApplication::setDoubleClickInterval(20);
    streamwright::app::dress(application, streamwright::app::bundled_theme(streamwright::app::ThemeChoice::light));
    return RUN_ALL_TESTS();
}
