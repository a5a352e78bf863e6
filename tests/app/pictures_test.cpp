// Pictures of the real program on the demo designs. They are looked at by people, so they are written only when asked:
// STREAMWRIGHT_PICTURES names the folder. Without it the test proves that every sheet paints at every level of detail.
#include "app/views/file_actions.h"
#include "tests/app/window_rig.h"

#include <QDir>

#include <gtest/gtest.h>

namespace streamwright::test::pictures {

std::filesystem::path demo(const char* name) { return std::filesystem::path(STREAMWRIGHT_SOURCE_DIR) / "demo" / name; }

/// How many different colours a picture has; a blank one has one.
int colours(const QImage& picture) {
    std::set<QRgb> seen;
    for (int y = 0; y < picture.height(); y += 3)
        for (int x = 0; x < picture.width(); x += 3) seen.insert(picture.pixel(x, y));
    return static_cast<int>(seen.size());
}

TEST(Pictures, EverySheetPaintsAtEveryLevelOfDetail) {
    for (const char* name : {"huddle-room.streamwright", "ferrow-quay.streamwright", "faulty.streamwright"}) {
        WindowRig rig;
        ASSERT_TRUE(rig.document().open(demo(name)).ok()) << name;
        ASSERT_FALSE(rig.design().sheets.empty());
        for (const auto& sheet : rig.design().sheets) {
            rig.viewport().show_sheet(sheet.id);
            for (const double zoom : {2.0, 1.0, 0.5, 0.2, 0.1}) {
                rig.viewport().zoom_to(zoom);
                EXPECT_GT(colours(rig.viewport().grab().toImage()), 3) << name << " " << sheet.title << " " << zoom;
            }
        }
    }
}

TEST(Pictures, WriteWhenAsked) {
    const auto folder = qEnvironmentVariable("STREAMWRIGHT_PICTURES");
    if (folder.isEmpty()) GTEST_SKIP() << "STREAMWRIGHT_PICTURES names no folder";
    QDir().mkpath(folder);
    for (const auto choice : {app::ThemeChoice::light, app::ThemeChoice::dark}) {
        WindowRig rig;
        rig.window().resize(1920, 1080);
        rig.window().set_theme(choice);
        const QString theme = choice == app::ThemeChoice::light ? "light" : "dark";
        for (const char* name : {"huddle-room", "ferrow-quay", "faulty"}) {
            ASSERT_TRUE(rig.document().open(demo((std::string(name) + ".streamwright").c_str())).ok());
            int number = 0;
            for (const auto& sheet : rig.design().sheets) {
                rig.viewport().show_sheet(sheet.id);
                if (!rig.viewport().scene().plates().empty())
                    rig.selection().set(app::Chosen(rig.viewport().scene().plates().front().device));
                rig.wait_for([&] { return !rig.document().analyser().deferred_pending(); });
                rig.wait_for([] { return false; }, 50);  // what was set anew is laid out in the next turn
                rig.window().grab().save(
                    folder + QString("/%1-%2-%3.png").arg(QString::fromLatin1(name)).arg(++number).arg(theme));
            }
        }
        rig.document().close();
    }
}

}  // namespace streamwright::test::pictures
