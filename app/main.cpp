// The program: with a verb the command line, else the canvas, on a file where one is named.
#include "app/cli/command_line.h"
#include "app/style/bundled_font.h"
#include "app/style/widget_style.h"
#include "app/views/file_actions.h"
#include "app/views/main_window.h"
#include "app/words/words.h"
#include "core/base/keep_memory.h"

#include <QApplication>
#include <QMessageBox>
#include <QSettings>
#include <QStandardPaths>
#include <QTimer>

#include <cstdio>

namespace {

std::filesystem::path state_folder() {
    // The user's state folder; Qt 6.4 knows no name for it, so the standard's own.
    const auto state = qEnvironmentVariable("XDG_STATE_HOME");
    const auto base = state.isEmpty() ? QStandardPaths::writableLocation(QStandardPaths::HomeLocation) +
                                            QStringLiteral("/.local/state")
                                      : state;
    return std::filesystem::path(base.toStdString()) / "streamwright";
}

int open_canvas(int argc, char** argv) {
    using namespace streamwright::app;
    QApplication application(argc, argv);
    QApplication::setOrganizationName(QStringLiteral("streamwright"));
    QApplication::setApplicationName(QStringLiteral("streamwright"));
    QApplication::setApplicationVersion(QStringLiteral("0.1.0"));
    const auto choice = static_cast<ThemeChoice>(QSettings().value(QStringLiteral("theme"), 0).toInt());
    dress(application, bundled_theme(choice));
    auto library = bundled_library();
    if (!library) {
        std::fprintf(stderr, "%s\n", library.error().english().c_str());
        return 2;
    }
    MainWindow window(std::make_shared<const Library>(std::move(*library)), state_folder());
    window.set_theme(choice);
    window.show();
    const auto arguments = QApplication::arguments();
    QTimer::singleShot(0, &window, [&window, arguments] {
        if (arguments.size() > 1)
            window.files().open(arguments.at(1));
        else
            window.files().offer_orphans(state_folder());
    });
    return QApplication::exec();
}

}  // namespace

int main(int argc, char** argv) {
    streamwright::base::keep_freed_memory();
    streamwright::app::prefer_bundled_font();  // for the canvas and for documents alike
    if (argc > 1 && streamwright::app::is_command(argv[1])) return streamwright::app::run_command(argc, argv);
    return open_canvas(argc, argv);
}
