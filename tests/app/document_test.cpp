// The document: one road for every change, files that are never half written, and work that survives a crash.
#include "app/document/document.h"

#include "core/model/edits/place_device.h"
#include "tests/app/window_rig.h"
#include "tests/support/design_builder.h"
#include "tests/support/temp_folder.h"

#include <QSignalSpy>
#include <QTest>

#include <gtest/gtest.h>

#include <fstream>

namespace streamwright::test::documents {

bool place(app::Document& document, const std::string& tag) {
    const auto sheet = document.design().sheets.begin()->id;
    return document.edit(
        model::PlaceDevice{document.ids().next<model::DeviceId>(), types::encoder(), tag, {}, sheet, {}}, "Place");
}

TEST(Document, OneSignalPerEditAndPerUndo) {
    app::Document document;
    int changes = 0;
    QObject::connect(&document, &app::Document::changed,
                     [&](const model::Delta& delta, const analysis::FindingsChange&) { changes += !delta.empty(); });
    ASSERT_TRUE(place(document, "ENC-1"));
    EXPECT_EQ(changes, 1);
    document.history().undo();
    EXPECT_EQ(changes, 2);
    EXPECT_TRUE(document.design().devices.empty());
}

TEST(Document, ARefusedEditChangesNothingAndSaysWhy) {
    app::Document document;
    QString why;
    QObject::connect(&document, &app::Document::refused, [&](const QString& words) { why = words; });
    const auto before = document.design();
    EXPECT_FALSE(document.edit(model::Rename{model::DeviceId(5), "X", {}}, "Rename"));
    EXPECT_FALSE(why.isEmpty());
    EXPECT_EQ(document.design(), before);
    EXPECT_FALSE(document.history().canUndo());
}

TEST(Document, FindingsAreThoseOfTheWholeAnalysisOnceTheWorkerAnswered) {
    app::Document document;
    place(document, "ENC-1");
    place(document, "ENC-1");
    ASSERT_TRUE(QTest::qWaitFor([&] { return !document.analyser().deferred_pending(); }));
    EXPECT_EQ(document.analyser().findings(), analysis::analyse(document.design()).findings);
}

TEST(Document, EditsSinceTheSaveSurviveACrash) {
    const TempFolder folder;
    const auto file = folder / "hall.streamwright";
    model::Design edited;
    {
        // The journal is written in the edit's own call, so a program that dies now has it on disk.
        app::Document died;
        ASSERT_TRUE(died.save_as(file).ok());
        place(died, "ENC-1");
        place(died, "ENC-2");
        died.history().undo();
        edited = died.design();
        ASSERT_TRUE(QTest::qWaitFor([&] { return died.journal().confirmed(); }, 2000));
    }
    app::Document document;
    const auto opened = document.open(file);
    ASSERT_TRUE(opened.ok()) << opened.error().english();
    ASSERT_TRUE(opened->recovery);
    EXPECT_TRUE(document.design().devices.empty()) << "offered, not applied";
    document.restore(*opened->recovery);
    EXPECT_EQ(document.design(), edited);
    EXPECT_TRUE(document.modified());
    document.history().undo();
    EXPECT_TRUE(document.design().devices.empty()) << "restoring is one edit";
    document.history().redo();
    ASSERT_TRUE(document.save_as(file).ok());
    EXPECT_FALSE(std::filesystem::exists(io::journal_path(file))) << "saved: nothing left to recover";
    EXPECT_EQ(io::open_design(file)->design, edited);
}

TEST(Document, ConfirmedWithinAQuarterOfASecond) {
    const TempFolder folder;
    app::Document document;
    ASSERT_TRUE(document.save_as(folder / "a.streamwright").ok());
    place(document, "ENC-1");
    EXPECT_FALSE(document.journal().confirmed());
    // The promise is 250 ms; a loaded machine gets four times that before the test calls it broken.
    EXPECT_TRUE(QTest::qWaitFor([&] { return document.journal().confirmed(); }, 1000));
}

TEST(Document, ADesignNeverSavedIsOfferedAgain) {
    const TempFolder state;
    model::Design edited;
    {
        app::Document died(state.path());
        place(died, "ENC-1");
        edited = died.design();
        ASSERT_TRUE(app::orphans_in(state.path()).empty()) << "it lives: its lock is held";
    }
    auto orphans = app::orphans_in(state.path());
    ASSERT_EQ(orphans.size(), 1u);
    EXPECT_EQ(orphans.front().recovery.design, edited);
    const auto journal = orphans.front().journal;
    app::Document document(state.path());
    document.restore(std::move(orphans.front()));
    EXPECT_EQ(document.design(), edited);
    EXPECT_TRUE(document.modified());
    EXPECT_FALSE(std::filesystem::exists(journal)) << "it goes on in a journal of its own";
    EXPECT_TRUE(document.journal().writing());
    document.close();
    EXPECT_TRUE(app::orphans_in(state.path()).empty()) << "given up: nothing left";
}

TEST(Document, AFileThatMovedOnIsNotOverwrittenByItsJournal) {
    const TempFolder folder;
    const auto file = folder / "hall.streamwright";
    model::Design edited;
    {
        app::Document died;
        ASSERT_TRUE(died.save_as(file).ok());
        place(died, "ENC-1");
        edited = died.design();
    }
    auto newer = io::open_design(file)->design;
    auto settings = newer.settings();
    settings.title = "Changed elsewhere";
    newer.settings_table.put(settings);
    ASSERT_TRUE(io::save_design(file, newer).ok());
    app::Document document;
    const auto opened = document.open(file);
    ASSERT_TRUE(opened.ok());
    ASSERT_TRUE(opened->recovery);
    EXPECT_TRUE(opened->recovery->other_file);
    document.restore(*opened->recovery);
    EXPECT_FALSE(document.path()) << "a design of its own";
    EXPECT_EQ(document.design().devices.size(), 1u);
    EXPECT_EQ(io::open_design(file)->design, newer) << "the file is as it was";
}

TEST(Document, TwoProgramsOnOneFileNoticeEachOther) {
    const TempFolder folder;
    const auto file = folder / "hall.streamwright";
    app::Document first;
    ASSERT_TRUE(first.save_as(file).ok());
    app::Document second;
    const auto opened = second.open(file);
    ASSERT_TRUE(opened.ok());
    EXPECT_TRUE(opened->copy);
    EXPECT_FALSE(second.path());
    EXPECT_FALSE(second.save_as(file).ok()) << "the first holds it";
}

TEST(Document, AFileThatCannotBeReadLeavesTheOpenDesign) {
    const TempFolder folder;
    const auto file = folder / "broken.streamwright";
    std::ofstream(file) << "{\"format\": \"streamwright\", \"devices\": [";
    app::Document document;
    place(document, "ENC-1");
    const auto before = document.design();
    const auto opened = document.open(file);
    ASSERT_FALSE(opened.ok());
    EXPECT_NE(opened.error().english().find("broken.streamwright"), std::string::npos);
    EXPECT_EQ(document.design(), before);
    EXPECT_TRUE(document.history().canUndo());
}

TEST(Document, NoticesThatTheFileWasChangedOnDisk) {
    const TempFolder folder;
    const auto file = folder / "hall.streamwright";
    app::Document document;
    ASSERT_TRUE(document.save_as(file).ok());
    EXPECT_FALSE(document.changed_on_disk());
    std::ofstream(file, std::ios::app) << "\n";
    EXPECT_TRUE(document.changed_on_disk());
}

}  // namespace streamwright::test::documents
