// What is offered after a crash, and that neither answer loses anything. The program is really killed: these tests run
// themselves again as a process that edits and then gets the signal that no program can catch.
#include "app/document/recovery.h"

#include "app/views/file_actions.h"
#include "core/model/edits/place_device.h"
#include "tests/app/window_rig.h"
#include "tests/support/design_builder.h"

#include <QApplication>
#include <QDialog>
#include <QMessageBox>
#include <QPushButton>
#include <QTest>
#include <QTimer>

#include <gtest/gtest.h>

#include <csignal>
#include <fstream>
#include <optional>
#include <unistd.h>

namespace streamwright::test::recovery {

namespace fs = std::filesystem;

/// The folder that the killed process and its test share.
constexpr char shared_folder[] = "STREAMWRIGHT_CRASH_FOLDER";

void place(app::Document& document, const std::string& tag) {
    const auto sheet = document.design().sheets.begin()->id;
    (void)document.edit(
        model::PlaceDevice{document.ids().next<model::DeviceId>(), types::encoder(), tag, {}, sheet, {}}, "Place");
}

std::set<std::string> tags(const model::Design& design) {
    std::set<std::string> all;
    for (const auto& device : design.devices) all.insert(device.tag);
    return all;
}

/// A message as the user saw it before it was answered.
struct Seen {
    QString text, more;
    QStringList buttons;
};

class Recovery : public testing::Test {
protected:
    void SetUp() override {
        GTEST_FLAG_SET(death_test_style, "threadsafe");
        // The process that dies runs SetUp too, and must meet its test's folder.
        if (qEnvironmentVariableIsEmpty(shared_folder)) qputenv(shared_folder, own_.emplace().path().string().c_str());
        folder = qEnvironmentVariable(shared_folder).toStdString();
        file = folder / "hall.streamwright";
    }
    void TearDown() override { qunsetenv(shared_folder); }

    /// Edits a file beyond its last save, until each edit is on the disk, and dies.
    void edit_and_die() const {
        app::Document document;
        (void)document.save_as(file);
        place(document, "ENC-1");
        place(document, "ENC-2");
        (void)QTest::qWaitFor([&] { return document.journal().confirmed(); }, 5000);
        ::kill(::getpid(), SIGKILL);
    }
    void draw_and_die() const {
        app::Document document(folder / "state");
        place(document, "ENC-1");
        (void)QTest::qWaitFor([&] { return document.journal().confirmed(); }, 5000);
        ::kill(::getpid(), SIGKILL);
    }
    /// Answers the next message by its button; by Escape where none is named.
    void answer(const QString& button) {
        auto* timer = new QTimer(qApp);
        QObject::connect(timer, &QTimer::timeout, timer, [this, timer, button] {
            auto* box = qobject_cast<QMessageBox*>(QApplication::activeModalWidget());
            if (!box || !box->isActiveWindow()) return;
            timer->stop();
            timer->deleteLater();
            seen = {box->text(), box->informativeText(), {}};
            for (const auto* each : box->buttons()) seen.buttons << each->text();
            for (auto* each : box->buttons())
                if (each->text() == button) QTest::mouseClick(each, Qt::LeftButton);
            if (box->isVisible()) QTest::keyClick(box, Qt::Key_Escape);
        });
        timer->start(5);
    }
    bool open(WindowRig& rig) const { return rig.window().files().open(QString::fromStdString(file.string())); }

    std::optional<TempFolder> own_;
    fs::path folder, file;
    Seen seen;
};

TEST_F(Recovery, UnsavedEditsOfAKilledProgramAreOfferedAndRestored) {
    EXPECT_EXIT(edit_and_die(), testing::KilledBySignal(SIGKILL), "");
    const auto saved = io::open_design(file)->design;
    WindowRig rig;
    answer("Restore");
    ASSERT_TRUE(open(rig));
    EXPECT_EQ(seen.text, "The program ended before 2 edits were saved.");
    EXPECT_TRUE(seen.more.contains("2 devices")) << seen.more.toStdString();
    EXPECT_TRUE(seen.more.contains("Undo takes it back"));
    EXPECT_TRUE(seen.more.contains("hall.streamwright.journal.kept")) << "where they are if they are left out";
    EXPECT_EQ(seen.buttons.size(), 2);
    EXPECT_EQ(tags(rig.design()), (std::set<std::string>{"ENC-1", "ENC-2"}));
    EXPECT_TRUE(rig.document().modified()) << "and still to be saved";
    EXPECT_EQ(io::open_design(file)->design, saved) << "the file is as it was";
    rig.document().history().undo();
    EXPECT_EQ(rig.design(), saved);
    rig.document().history().setClean();
}

TEST_F(Recovery, LeftOutTheyAreKeptBesideTheFile) {
    EXPECT_EXIT(edit_and_die(), testing::KilledBySignal(SIGKILL), "");
    const auto journal = io::journal_path(file);
    for (const char* button : {"Leave them out", ""}) {  // and by Escape
        if (!fs::exists(journal)) fs::rename(journal.string() + ".kept", journal);
        WindowRig rig;
        answer(button);
        ASSERT_TRUE(open(rig));
        EXPECT_TRUE(rig.design().devices.empty());
        EXPECT_FALSE(rig.document().modified());
        EXPECT_FALSE(fs::exists(journal));
        std::ifstream in(file, std::ios::binary);
        const std::string text{std::istreambuf_iterator<char>(in), {}};
        const auto kept = io::recover(journal.string() + ".kept", text, "kept");
        ASSERT_TRUE(kept.ok() && *kept);
        EXPECT_EQ(tags((*kept)->design), (std::set<std::string>{"ENC-1", "ENC-2"})) << "nothing is lost";
        ASSERT_TRUE(open(rig)) << "and it is not asked again";
    }
}

TEST_F(Recovery, WhatWasSetAsideBeforeIsNotOverwritten) {
    const auto journal = io::journal_path(file);
    const auto kept = [&](const char* name) {
        std::ifstream in(journal.string() + name);
        return std::string{std::istreambuf_iterator<char>(in), {}};
    };
    for (const char* text : {"first", "second"}) {
        std::ofstream(journal) << text;
        app::set_aside(journal);
    }
    EXPECT_EQ(kept(".kept"), "first");
    EXPECT_EQ(kept(".kept2"), "second");
    // The program died just after it had begun a fresh journal: what it displaced is the one that counts.
    std::ofstream(journal) << "";
    std::ofstream(journal.string() + ".old") << "third";
    app::set_aside(journal);
    EXPECT_EQ(kept(".kept3") + kept(".kept4"), "third");
}

TEST_F(Recovery, ADesignNeverSavedIsOfferedUntilItIsAnswered) {
    EXPECT_EXIT(draw_and_die(), testing::KilledBySignal(SIGKILL), "");
    WindowRig rig;
    answer("Ask again later");
    rig.window().files().offer_orphans(folder / "state");
    EXPECT_TRUE(seen.text.contains("1 device")) << seen.text.toStdString();
    EXPECT_EQ(seen.buttons.size(), 3);
    EXPECT_TRUE(rig.design().devices.empty());
    answer("Restore");
    rig.window().files().offer_orphans(folder / "state");
    EXPECT_EQ(tags(rig.design()), (std::set<std::string>{"ENC-1"}));
    EXPECT_TRUE(rig.document().modified());
    EXPECT_TRUE(app::orphans_in(folder / "state").empty()) << "it goes on in the journal of this window";
    rig.document().history().setClean();
}

TEST_F(Recovery, ADesignLeftOutIsKept) {
    EXPECT_EXIT(draw_and_die(), testing::KilledBySignal(SIGKILL), "");
    WindowRig rig;
    answer("Leave it out");
    rig.window().files().offer_orphans(folder / "state");
    EXPECT_TRUE(rig.design().devices.empty());
    EXPECT_TRUE(app::orphans_in(folder / "state").empty()) << "not asked again";
    int kept = 0;
    for (const auto& entry : fs::directory_iterator(app::unsaved_folder(folder / "state"))) {
        if (entry.path().extension() != ".kept") continue;
        ++kept;
        EXPECT_TRUE(seen.more.contains(QString::fromStdString(entry.path().string()))) << "it was said where";
        const auto found = io::recover(entry.path(), {}, "kept");
        ASSERT_TRUE(found.ok() && *found);
        EXPECT_EQ(tags((*found)->design), (std::set<std::string>{"ENC-1"}));
    }
    EXPECT_EQ(kept, 1);
}

}  // namespace streamwright::test::recovery
