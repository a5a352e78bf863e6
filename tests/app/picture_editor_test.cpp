// What is set on picture ports, by keys in their properties.
#include "app/panels/properties/properties_panel.h"
#include "tests/app/window_rig.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QTest>

#include <gtest/gtest.h>

namespace streamwright::test::picture_editor {

class PictureEditor : public testing::Test {
protected:
    /// A media player on a large display.
    void SetUp() override {
        rig.drop_type("media-player", {80, 80});
        rig.drop_type("display-55", {220, 90});
        for (const auto& device : rig.design().devices) {
            const auto* type = rig.design().type_of(device);
            (type->kind == catalogue::DeviceKind::source ? source : display) = device.tag;
        }
        rig.drag(rig.lug(source, "hdmi-out"), rig.lug(display, "hdmi-in-1"));
    }
    void choose(const std::string& tag, const std::string& port) {
        rig.selection().set(app::Chosen(rig.port(tag, port)));
        QCoreApplication::processEvents();
    }
    const model::PortOverride* settings(const std::string& tag, const std::string& port) {
        return rig.design().port_overrides.find(rig.port(tag, port));
    }
    bool says(const QString& words) {
        for (const auto* label : rig.window().properties().form()->findChildren<QLabel*>())
            if (label->text().contains(words)) return true;
        return false;
    }
    void pick(const QString& name, const QString& value) {
        for (auto* box : rig.window().properties().form()->findChildren<QComboBox*>()) {
            if (box->accessibleName() != name) continue;
            const int index = box->findData(value);
            ASSERT_GE(index, 0) << value.toStdString();
            box->setCurrentIndex(index);
            emit box->activated(index);
            QCoreApplication::processEvents();
            return;
        }
        FAIL() << "no choice " << name.toStdString();
    }

    WindowRig rig;
    std::string source, display;
};

TEST_F(PictureEditor, AFormatIsTypedRefusedUndoneAndCleared) {
    choose(source, "hdmi-out");
    rig.type_into("Set to", "2160p60 4:2:0 10-bit PQ");
    ASSERT_TRUE(settings(source, "hdmi-out"));
    EXPECT_EQ(standards::text(*settings(source, "hdmi-out")->picture), "2160p60 4:2:0 10-bit PQ");
    EXPECT_TRUE(says("2160p60 4:2:0 10-bit PQ")) << "what is sent and what arrives stand beside it";
    rig.type_into("Set to", "large and sharp");
    EXPECT_EQ(standards::text(*settings(source, "hdmi-out")->picture), "2160p60 4:2:0 10-bit PQ");
    rig.document().history().undo();
    EXPECT_FALSE(settings(source, "hdmi-out"));
}

TEST_F(PictureEditor, AFormatThatDoesNotFitIsToldInThePanelAndInTheFindings) {
    choose(source, "hdmi-out");
    rig.type_into("Set to", "2160p60 4:4:4 10-bit PQ");
    EXPECT_EQ(rig.findings_of("format-does-not-fit"), 1);
    EXPECT_TRUE(says("no picture"));
}

TEST_F(PictureEditor, ContentAndEdidAreChosen) {
    choose(source, "hdmi-out");
    pick("Content", "type 1");
    ASSERT_TRUE(settings(source, "hdmi-out"));
    EXPECT_EQ(settings(source, "hdmi-out")->protection, standards::HdcpContent::type_1);
    choose(display, "hdmi-in-1");
    pick("EDID", "merged");
    EXPECT_EQ(settings(display, "hdmi-in-1")->edid->way, model::EdidWay::merged);
    rig.type_into("Announces at most", "1080p50");
    EXPECT_EQ(settings(display, "hdmi-in-1")->edid->way, model::EdidWay::fixed);
    EXPECT_TRUE(says("1080p50"));
    pick("Sound announced", "multichannel_pcm");
    EXPECT_EQ(settings(display, "hdmi-in-1")->edid->audio, catalogue::AudioFormat::multichannel_pcm);
    pick("EDID", "");
    EXPECT_FALSE(settings(display, "hdmi-in-1"));
}

}  // namespace streamwright::test::picture_editor
