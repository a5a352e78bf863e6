// What holds sound and picture together, and what pictures outlive: in the properties, by keys and choices.
#include "app/panels/properties/properties_panel.h"
#include "tests/app/window_rig.h"

#include <QComboBox>
#include <QLabel>

#include <gtest/gtest.h>

namespace streamwright::test::sound_properties {

using namespace base::literals;

bool says(WindowRig& rig, const QString& words) {
    for (const auto* label : rig.window().properties().form()->findChildren<QLabel*>())
        if (label->text().contains(words)) return true;
    return false;
}

void choose(WindowRig& rig, const QString& words) {
    for (auto* box : rig.window().properties().form()->findChildren<QComboBox*>())
        if (const int at = box->findText(words); at >= 0) {
            box->setCurrentIndex(at);
            Q_EMIT box->activated(at);
        }
}

TEST(SoundProperties, ADelayIsTypedRefusedTakenAwayAndUndone) {
    WindowRig rig;
    rig.drop_type("speaker-active", {80, 80});
    const auto id = rig.design().devices.begin()->id;
    const auto delay = [&] { return rig.design().devices.find(id)->sound_delay; };
    rig.selection().set(app::Chosen(id));
    QCoreApplication::processEvents();
    rig.type_into("Sound delay", "40 ms");
    EXPECT_EQ(delay(), 40_ms);
    rig.type_into("Sound delay", "late");
    EXPECT_EQ(delay(), 40_ms) << "what cannot be read changes nothing";
    EXPECT_TRUE(says(rig, "late"));
    rig.type_into("Sound delay", "");
    EXPECT_FALSE(delay());
    rig.document().history().undo();
    EXPECT_EQ(delay(), 40_ms);
}

TEST(SoundProperties, TheWindowOfLipSyncIsChosenForTheDesign) {
    WindowRig rig;
    QCoreApplication::processEvents();
    choose(rig, "EBU R37");
    EXPECT_EQ(rig.design().settings().lip_sync, model::LipSync::ebu_r37);
    choose(rig, "ATSC IS-191");
    EXPECT_EQ(rig.design().settings().lip_sync, model::LipSync::atsc_is191);
    rig.document().history().undo();
    EXPECT_EQ(rig.design().settings().lip_sync, model::LipSync::ebu_r37);
}

TEST(SoundProperties, WhatPicturesOutliveIsChosenForTheDesign) {
    WindowRig rig;
    QCoreApplication::processEvents();
    choose(rig, "any one link or switch");
    EXPECT_EQ(rig.design().settings().survive, model::Survival::link_or_switch);
    rig.document().history().undo();
    EXPECT_EQ(rig.design().settings().survive, model::Survival::nothing);
}

}  // namespace streamwright::test::sound_properties
