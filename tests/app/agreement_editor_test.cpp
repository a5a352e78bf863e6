// How many sources may cross a trunk, agreed in its properties by mouse and keys.
#include "app/panels/properties/properties_panel.h"
#include "tests/app/window_rig.h"

#include <QLabel>
#include <QLineEdit>
#include <QTest>

#include <gtest/gtest.h>

namespace streamwright::test::agreement_editor {

class AgreementEditor : public testing::Test {
protected:
    /// Two switches and a cable between them, chosen.
    void SetUp() override {
        rig.drop_type("switch-access-8-poe", {80, 80});
        rig.drop_type("switch-access-8-poe", {220, 90});
        std::vector<std::string> tags;
        for (const auto& device : rig.design().devices) tags.push_back(device.tag);
        rig.drag(rig.lug(tags.at(0), "2"), rig.lug(tags.at(1), "1"));
        cable = rig.design().cables.begin()->id;
        rig.selection().set(app::Chosen(cable));
        QCoreApplication::processEvents();
    }
    void type(const QString& field, const QString& text) {
        auto& line = rig.field(field);
        QTest::mouseClick(&line, Qt::LeftButton);
        line.selectAll();
        QTest::keyClicks(&line, text.isEmpty() ? QStringLiteral(" ") : text);
        if (text.isEmpty()) QTest::keyClick(&line, Qt::Key_Backspace);
        QTest::keyClick(&line, Qt::Key_Return);
        QCoreApplication::processEvents();
    }
    std::optional<model::AgreedContention> agreed() { return rig.design().cables.find(cable)->agreed; }
    bool says(const QString& words) {
        for (const auto* label : rig.window().properties().form()->findChildren<QLabel*>())
            if (label->text().contains(words)) return true;
        return false;
    }

    WindowRig rig;
    model::CableId cable{0};
};

TEST_F(AgreementEditor, IsTypedChangedUndoneAndCleared) {
    type("At most sources", "4");
    ASSERT_TRUE(agreed());
    EXPECT_EQ(agreed()->sources, 4);
    EXPECT_FALSE(agreed()->by.empty());
    EXPECT_EQ(agreed()->on.size(), 10u) << "today";
    EXPECT_TRUE(says("0 of 4 sources")) << "what crosses now stands beside it";
    type("Agreed by", "IT department");
    EXPECT_EQ(agreed()->by, "IT department");
    type("Agreed on", "2026-11-20");
    EXPECT_EQ(agreed()->on, "2026-11-20");
    rig.document().history().undo();
    EXPECT_NE(agreed()->on, "2026-11-20");
    type("At most sources", "");
    EXPECT_FALSE(agreed());
}

TEST_F(AgreementEditor, RefusesWhatIsNoNumberAndNoDay) {
    type("At most sources", "some");
    EXPECT_FALSE(agreed());
    EXPECT_TRUE(says("no number of sources"));
    type("At most sources", "2");
    type("Agreed on", "tomorrow");
    EXPECT_NE(agreed()->on, "tomorrow");
    EXPECT_TRUE(says("a date such as"));
}

}  // namespace streamwright::test::agreement_editor
