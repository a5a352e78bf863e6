// The main job by hand: types dragged in, a cable pulled, a fault seen, cured by undo, saved and opened again.
#include "app/panels/findings_panel.h"
#include "app/panels/properties/properties_panel.h"
#include "app/views/file_actions.h"
#include "tests/app/window_rig.h"

#include <QLabel>
#include <QLineEdit>

#include <gtest/gtest.h>

namespace streamwright::test::main_job {

/// An encoder and a switch, side by side.
void place_two(WindowRig& rig) {
    rig.drop_type("tern-encoder", {80, 80});
    rig.drop_type("switch-access-8-poe", {180, 90});
}

TEST(MainJob, DrawFindUndoSaveReopen) {
    WindowRig rig;
    place_two(rig);
    ASSERT_EQ(rig.design().devices.size(), 2u);
    ASSERT_EQ(rig.design().places.size(), 2u);
    const auto encoder = rig.design().devices.begin()->type.text == "tern-encoder"
                             ? rig.design().devices.begin()->tag
                             : std::next(rig.design().devices.begin())->tag;
    const auto other = rig.design().devices.begin()->tag == encoder ? std::next(rig.design().devices.begin())->tag
                                                                    : rig.design().devices.begin()->tag;
    rig.drag(rig.lug(encoder, "net"), rig.lug(other, "1"));
    ASSERT_EQ(rig.design().cables.size(), 1u);
    const auto cable = rig.design().cables.begin()->id;
    EXPECT_TRUE(rig.selection().holds(app::Chosen(cable))) << "the fresh cable is selected";
    const auto* line = rig.design().cable_lines.find({rig.viewport().sheet(), cable});
    ASSERT_NE(line, nullptr) << "bends are stored with the edit";

    // 120 m: over the 100 m channel and the 90 m permanent link of TIA-568.2-D and ISO/IEC 11801-1.
    rig.type_into("Length", "120 m");
    ASSERT_EQ(rig.design().cables.find(cable)->length, base::Length::from_count(120'000'000));
    EXPECT_GE(rig.findings_of("copper-too-long"), 1) << "seen in the edit's own call";
    const auto& model = rig.window().findings().model();
    bool listed = false;
    for (int i = 0; i < model.rowCount(); ++i) listed |= model.row(i).reported.finding.rule == "copper-too-long";
    EXPECT_TRUE(listed);

    rig.viewport().setFocus();
    rig.document().history().undo();
    EXPECT_EQ(rig.findings_of("copper-too-long"), 0);
    rig.document().history().redo();
    EXPECT_GE(rig.findings_of("copper-too-long"), 1);

    const auto file = rig.folder() / "drawn.streamwright";
    ASSERT_TRUE(rig.document().save_as(file).ok());
    EXPECT_FALSE(rig.document().modified());
    const auto opened = io::open_design(file);
    ASSERT_TRUE(opened.ok()) << opened.error().english();
    EXPECT_EQ(opened->design, rig.design());
}

TEST(MainJob, UndoToNothingAndRedoToAll) {
    WindowRig rig;
    const auto fresh = rig.design();
    place_two(rig);
    rig.drop_type("pc", {30, 80});
    const auto drawn = rig.design();
    auto& history = rig.document().history();
    while (history.canUndo()) history.undo();
    EXPECT_EQ(rig.design(), fresh);
    EXPECT_TRUE(rig.viewport().scene().plates().empty());
    while (history.canRedo()) history.redo();
    EXPECT_EQ(rig.design(), drawn);
}

TEST(MainJob, WrongInputIsToldInPlaceAndChangesNothing) {
    WindowRig rig;
    place_two(rig);
    std::string encoder, other;
    for (const auto& device : rig.design().devices) (device.type.text == "tern-encoder" ? encoder : other) = device.tag;
    rig.drag(rig.lug(encoder, "net"), rig.lug(other, "1"));
    const auto before = rig.design();
    rig.type_into("Length", "about 30");
    EXPECT_EQ(rig.design(), before);
    auto& line = rig.field("Length");
    EXPECT_TRUE(line.property("wrong").toBool());
    const auto* said = line.parentWidget()->findChild<QLabel*>();
    ASSERT_NE(said, nullptr);
    EXPECT_FALSE(said->text().isEmpty());
    EXPECT_TRUE(said->isVisibleTo(line.parentWidget()));
}

TEST(MainJob, ClickOnAFindingSelectsItsSubject) {
    WindowRig rig;
    rig.drop_type("tern-encoder", {80, 80});
    // An encoder without a source is a fault by itself.
    ASSERT_GE(rig.findings_of("encoder-without-source"), 1);
    rig.selection().clear();
    auto& panel = rig.window().findings();
    int row = -1;
    for (int i = 0; i < panel.model().rowCount(); ++i)
        if (panel.model().row(i).reported.finding.rule == "encoder-without-source") row = i;
    ASSERT_GE(row, 0);
    const auto subject = panel.model().row(row).reported.finding.subjects.front();
    Q_EMIT panel.subject_chosen(subject);
    ASSERT_TRUE(rig.selection().only());
    EXPECT_EQ(rig.selection().only(), app::chosen_for(rig.design(), subject));
}

}  // namespace streamwright::test::main_job
