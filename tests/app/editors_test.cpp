// The editors of the properties panel driven by keys: plans of the design, sound of a stream, control of a device.
// Each answer is one undoable edit, and wrong input is one sentence in place that changes nothing.
#include "app/panels/properties/properties_panel.h"
#include "core/analysis/report.h"
#include "tests/app/window_rig.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QTest>

#include <gtest/gtest.h>

namespace streamwright::test::editors {

class Editors : public testing::Test {
protected:
    QComboBox& choice(const QString& name) {
        auto* box = rig.window().properties().form()->findChild<QComboBox*>(name);
        if (!box) throw std::runtime_error("no choice " + name.toStdString());
        EXPECT_EQ(box->accessibleName(), name);
        return *box;
    }
    /// Turns the choice by the arrow keys until it shows the words.
    void choose(const QString& name, const QString& words) {
        const int wanted = choice(name).findText(words);
        ASSERT_GE(wanted, 0) << words.toStdString();
        for (int turns = 0; turns < 20 && choice(name).currentIndex() != wanted; ++turns) {
            auto& box = choice(name);
            box.setFocus();
            QTest::keyClick(&box, box.currentIndex() < wanted ? Qt::Key_Down : Qt::Key_Up);
        }
        EXPECT_EQ(choice(name).currentText(), words);
    }
    QString error_below(const QString& name) {
        for (const auto* label : rig.field(name).parentWidget()->findChildren<QLabel*>())
            if (label->isVisible()) return label->text();
        return {};
    }
    const model::Settings& settings() { return rig.design().settings(); }
    int edits() { return rig.document().history().count(); }

    WindowRig rig;
};

TEST_F(Editors, TheSecurityPlanIsAnsweredByKeys) {
    rig.selection().clear();
    EXPECT_EQ(choice("Streams encrypted").currentText(), "not answered");
    choose("Streams encrypted", "yes");
    EXPECT_EQ(settings().security.streams_encrypted, std::optional(true));
    choose("Port access control", "no");
    EXPECT_EQ(settings().security.port_access_control, std::optional(false));
    choose("Account directory", "yes");
    EXPECT_EQ(settings().security.account_directory, std::optional(true));
    rig.type_into("Certificates expire", "2027-03-31");
    EXPECT_EQ(settings().security.certificates_expire, "2027-03-31");
    choose("Streams encrypted", "not answered");
    EXPECT_FALSE(settings().security.streams_encrypted) << "an answer can be taken back";
    rig.document().history().undo();
    EXPECT_EQ(choice("Streams encrypted").currentText(), "yes") << "undo is seen in the form";
}

/// The questions of the plan are findings, and an answer settles its own.
TEST_F(Editors, AnsweringThePlanSettlesItsQuestion) {
    rig.drop_type("tern-encoder", {60, 60});
    rig.selection().clear();
    const int asked = rig.findings_of("plan-encryption");
    choose("Streams encrypted", "yes");
    EXPECT_EQ(rig.findings_of("plan-encryption"), 0);
    choose("Streams encrypted", "not answered");
    EXPECT_EQ(rig.findings_of("plan-encryption"), asked);
}

TEST_F(Editors, SparesTakeWholeNumbersAndSayWhyNot) {
    rig.selection().clear();
    rig.type_into("Endpoints", "5");
    EXPECT_EQ(settings().spares.endpoints_percent, 5);
    EXPECT_EQ(rig.field("Endpoints").text(), "5 %");
    rig.type_into("Of each transceiver", "2");
    rig.type_into("Of each patch lead", "3");
    EXPECT_EQ(settings().spares.of_each_module, 2);
    EXPECT_EQ(settings().spares.of_each_lead, 3);
    const int done = edits();
    for (const char* wrong : {"many", "-1", "101 %", "2.5"}) {
        rig.type_into("Endpoints", wrong);
        EXPECT_EQ(error_below("Endpoints"),
                  QString("'%1' is no number of spares; write a whole number from 0 to 100.").arg(wrong));
        EXPECT_EQ(settings().spares.endpoints_percent, 5);
    }
    EXPECT_EQ(edits(), done);
    rig.type_into("Endpoints", "10 %");
    EXPECT_EQ(settings().spares.endpoints_percent, 10);
    EXPECT_TRUE(error_below("Endpoints").isEmpty());
    rig.document().history().undo();
    EXPECT_EQ(settings().spares.endpoints_percent, 5);
}

TEST_F(Editors, ADeviceIsAskedToBeControlledByWhatItsTypeTakes) {
    rig.drop_type("tv-tuner", {60, 60});
    const auto& tuner = *rig.design().devices.begin();
    const auto* type = rig.design().type_of(tuner);
    ASSERT_FALSE(type->controlled_by.empty());
    rig.selection().set(app::Chosen(tuner.id));
    EXPECT_EQ(choice("Controlled by").count(), 1 + static_cast<int>(type->controlled_by.size()));
    EXPECT_EQ(choice("Controlled by").currentText(), "any that it takes");
    const int done = edits();
    auto& box = choice("Controlled by");
    box.setFocus();
    QTest::keyClick(&box, Qt::Key_Down);
    EXPECT_EQ(rig.design().devices.begin()->control, std::optional(type->controlled_by.front()));
    EXPECT_EQ(edits(), done + 1);
    rig.document().history().undo();
    EXPECT_FALSE(rig.design().devices.begin()->control);
    EXPECT_EQ(choice("Controlled by").currentText(), "any that it takes");
}

TEST_F(Editors, WhatNeedsNoControlIsNotAsked) {
    rig.drop_type("switch-access-8-poe", {60, 60});
    const auto& device = *rig.design().devices.begin();
    if (!rig.design().type_of(device)->controlled_by.empty()) GTEST_SKIP() << "the type needs control by now";
    rig.selection().set(app::Chosen(device.id));
    EXPECT_EQ(rig.window().properties().form()->findChild<QComboBox*>("Controlled by"), nullptr);
}

TEST_F(Editors, AnInputOffersTheStreamsOfItsKind) {
    rig.drop_type("basalt-kvm-endpoint", {60, 60});
    rig.drop_type("basalt-kvm-endpoint", {200, 60});
    const auto& one = *rig.design().devices.begin();
    const auto other = std::next(rig.design().devices.begin())->id;
    auto stream = model::Stream::blank(rig.document().ids().next<model::StreamId>());
    stream.encoder = one.id;
    stream.tag = "S-9";
    stream.payload_rate = base::BitRate::from_count(20'000'000);
    ASSERT_TRUE(rig.document().edit(model::SetStream{stream}, "Add"));
    model::Preset preset{rig.document().ids().next<model::PresetId>()};
    ASSERT_TRUE(rig.document().edit(model::AddRows{{preset}}, "Add"));
    rig.selection().set_preset(preset.id);
    rig.selection().set(app::Chosen(other));
    EXPECT_EQ(choice("Picture").count(), 2) << "nothing, or the stream";
    EXPECT_EQ(choice("USB").count(), 1) << "it carries no USB";
    rig.selection().set(app::Chosen(stream.id));
    EXPECT_EQ(choice("Carries").currentText(), "picture");
    choose("Carries", "USB");
    EXPECT_EQ(rig.design().streams.find(stream.id)->kind, catalogue::StreamKind::usb);
    rig.selection().set(app::Chosen(other));
    EXPECT_EQ(choice("Picture").count(), 1);
    EXPECT_EQ(choice("USB").count(), 2);
}

TEST_F(Editors, TheSoundOfAStreamIsChosenByKeys) {
    rig.drop_type("tern-encoder", {60, 60});
    auto stream = model::Stream::blank(rig.document().ids().next<model::StreamId>());
    stream.encoder = rig.design().devices.begin()->id;
    stream.tag = model::next_stream_tag(rig.design());
    stream.payload_rate = base::BitRate::from_count(800'000'000);
    ASSERT_TRUE(rig.document().edit(model::SetStream{stream}, "Add"));
    rig.selection().set(app::Chosen(stream.id));
    EXPECT_EQ(choice("Sound").currentText(), "not stated");
    const std::pair<const char*, catalogue::AudioFormat> sounds[] = {
        {"stereo", catalogue::AudioFormat::stereo_pcm},
        {"multichannel", catalogue::AudioFormat::multichannel_pcm},
        {"compressed surround", catalogue::AudioFormat::compressed_surround}};
    for (const auto& [words, sound] : sounds) {
        choose("Sound", words);
        EXPECT_EQ(rig.design().streams.find(stream.id)->audio, std::optional(sound)) << words;
    }
    choose("Sound", "not stated");
    EXPECT_FALSE(rig.design().streams.find(stream.id)->audio);
    rig.document().history().undo();
    EXPECT_TRUE(rig.design().streams.find(stream.id)->audio) << "each turn is one step";
    rig.type_into("Payload rate", "fast");
    EXPECT_FALSE(error_below("Payload rate").isEmpty());
    EXPECT_EQ(rig.design().streams.find(stream.id)->payload_rate, stream.payload_rate);
}

}  // namespace streamwright::test::editors
