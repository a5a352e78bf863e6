// Edit, Plan addresses: the preview, one edit, and one step back; through the menu and the keys of the dialog.
#include "app/panels/address_dialog.h"

#include "app/views/status_line.h"
#include "tests/app/window_rig.h"

#include <QDialogButtonBox>
#include <QMenu>
#include <QMenuBar>
#include <QPushButton>
#include <QTest>
#include <QTreeWidget>

#include <gtest/gtest.h>

namespace streamwright::test::address_dialog {

class PlanAddressesDialog : public testing::Test {
protected:
    void SetUp() override {
        rig.drop_type("tern-encoder", {150, 80});
        rig.drop_type("switch-access-8-poe", {260, 85});
        auto vlan = model::Vlan::blank(rig.document().ids().next<model::VlanId>());
        vlan.vid = 20;
        vlan.name = "AV";
        ASSERT_TRUE(rig.document().edit(model::SetUpVlan{vlan, true, {}, {}}, "VLAN"));
    }
    /// Clicks the entry of the open Edit menu.
    void choose_in_menu() {
        for (auto* top : rig.window().menuBar()->actions()) {
            if (top->text().remove('&') != "Edit") continue;
            auto* menu = top->menu();
            menu->popup(rig.window().mapToGlobal(QPoint(10, 10)));
            for (auto* action : menu->actions())
                if (action->text().remove('&') == QStringLiteral("Plan addresses…")) {
                    QTest::mouseClick(menu, Qt::LeftButton, {}, menu->actionGeometry(action).center());
                    return;
                }
        }
        FAIL() << "not in the menu";
    }
    std::string address_of_encoder() {
        for (const auto& device : rig.design().devices)
            if (device.type.text == "tern-encoder")
                return device.addresses.empty() ? "none" : base::print(*device.addresses.front().address);
        return "no encoder";
    }
    int edits() { return rig.document().history().count(); }

    WindowRig rig;
};

TEST_F(PlanAddressesDialog, ShowsThenGivesInOneEdit) {
    const auto before = rig.design();
    const auto done = edits();
    QStringList given, room;
    in_next<app::AddressDialog>([&](app::AddressDialog& dialog) {
        for (int i = 0; i < dialog.list().topLevelItemCount(); ++i) {
            given << dialog.list().topLevelItem(i)->text(1);
            room << dialog.list().topLevelItem(i)->text(2);
        }
        EXPECT_EQ(rig.design(), before) << "a preview changes nothing";
        QTest::keyClick(&dialog, Qt::Key_Return);
    });
    choose_in_menu();
    ASSERT_EQ(given.size(), 3);
    EXPECT_EQ(given[0], "the subnet 10.20.0.0/24 is new; addresses: switches 1, queriers 0, others 1");
    EXPECT_EQ(room[0], "251 of 254 addresses stay free");  // two given, one kept for a gateway
    EXPECT_EQ(edits(), done + 1);
    EXPECT_EQ(address_of_encoder(), "10.20.0.3") << "the switch has 10.20.0.2";
    EXPECT_EQ(rig.window().status().words(), "Addresses are planned.");
    rig.window().activateWindow();
    ASSERT_TRUE(rig.wait_for([&] { return QApplication::activeWindow() == &rig.window(); }));
    rig.viewport().setFocus();
    rig.key(Qt::Key_Z, Qt::ControlModifier);
    EXPECT_EQ(rig.design(), before);
}

TEST_F(PlanAddressesDialog, EscapeGivesNothingAndASecondTimeNothingIsLeft) {
    const auto before = rig.design();
    in_next<app::AddressDialog>([&](app::AddressDialog& dialog) { QTest::keyClick(&dialog, Qt::Key_Escape); });
    choose_in_menu();
    EXPECT_EQ(rig.design(), before);
    in_next<app::AddressDialog>([&](app::AddressDialog& dialog) { QTest::keyClick(&dialog, Qt::Key_Return); });
    choose_in_menu();
    const auto after = rig.design();
    bool enabled = true;
    in_next<app::AddressDialog>([&](app::AddressDialog& dialog) {
        for (const auto* button : dialog.findChildren<QPushButton*>())
            if (button->text() == "Give addresses") enabled = button->isEnabled();
        QTest::keyClick(&dialog, Qt::Key_Return);
    });
    choose_in_menu();
    EXPECT_FALSE(enabled);
    EXPECT_EQ(rig.design(), after);
}

}  // namespace streamwright::test::address_dialog
