// What a fibre, a switch that gives power and the design's cabling are told in their properties, by mouse and keys.
#include "app/panels/properties/properties_panel.h"
#include "core/analysis/facts/power_budget.h"
#include "tests/app/window_rig.h"

#include <QComboBox>
#include <QLabel>
#include <QTest>

#include <gtest/gtest.h>

namespace streamwright::test::cable_properties {

bool says(WindowRig& rig, const QString& words) {
    for (const auto* label : rig.window().properties().form()->findChildren<QLabel*>())
        if (label->text().contains(words)) return true;
    return false;
}

void select(WindowRig& rig, const app::Chosen& what) {
    rig.selection().set(what);
    QCoreApplication::processEvents();
}

TEST(FibreEditor, WorkIsTypedRefusedAndUndone) {
    WindowRig rig;
    rig.drop_type("switch-access-24", {80, 120});
    rig.drop_type("switch-access-24", {300, 120});
    rig.drag(rig.lug("SW-001", "25"), rig.lug("SW-002", "25"));
    const auto cable = rig.design().cables.begin()->id;
    const auto work = [&] { return rig.design().cables.find(cable)->fibre; };
    select(rig, app::Chosen(cable));
    rig.type_into("Splices", "2");
    EXPECT_EQ(work().splices, 2);
    rig.type_into("Pair swaps", "1");
    EXPECT_EQ(work().pair_swaps, 1);
    EXPECT_TRUE(says(rig, "Pair swaps, odd is needed"));
    rig.type_into("Connector pairs not drawn", "many");
    EXPECT_EQ(work().joints, 0);
    EXPECT_TRUE(says(rig, "is no number"));
    rig.document().history().undo();
    EXPECT_FALSE(work().pair_swaps);
}

TEST(CableEditor, TellsTheChainOfTheLimit) {
    WindowRig rig;
    rig.drop_type("switch-access-8-poe", {80, 80});
    rig.drop_type("switch-access-8-poe", {220, 90});
    std::vector<std::string> tags;
    for (const auto& device : rig.design().devices) tags.push_back(device.tag);
    rig.drag(rig.lug(tags.at(0), "2"), rig.lug(tags.at(1), "1"));
    select(rig, app::Chosen(rig.design().cables.begin()->id));
    rig.type_into("Length", "93 m");
    EXPECT_TRUE(says(rig, "Installed part at most"));
    EXPECT_TRUE(says(rig, "Over by"));
    EXPECT_TRUE(says(rig, "3 m"));
}

TEST(PoeEditor, SuppliesAndPortsAreSet) {
    WindowRig rig;
    rig.drop_type("switch-access-24-poe", {80, 120});
    const auto id = rig.device("SW-001").id;
    select(rig, app::Chosen(id));
    for (auto* box : rig.window().properties().form()->findChildren<QComboBox*>())
        if (const int at = box->findText("two, added"); at >= 0) {
            box->setCurrentIndex(at);
            Q_EMIT box->activated(at);
        }
    EXPECT_EQ(rig.design().devices.find(id)->bridging.supplies, catalogue::SupplySet::two_added);
    const auto port = rig.port("SW-001", "3");
    select(rig, app::Chosen(port));
    rig.type_into("Gives at most", "15.4 W");
    const auto* row = rig.design().port_overrides.find(port);
    ASSERT_NE(row, nullptr);
    EXPECT_EQ(row->poe.limit, base::Power::from_count(15'400));
    rig.document().history().undo();
    EXPECT_EQ(rig.design().port_overrides.find(port), nullptr);
}

TEST(CablingEditor, SettingsOfTheDesign) {
    WindowRig rig;
    rig.selection().clear();
    QCoreApplication::processEvents();
    rig.type_into("Loss of a connector pair", "0.5 dB");
    EXPECT_EQ(rig.design().settings().cabling.joint_loss, base::Loss::from_count(500));
    rig.type_into("Powered bundle adds", "15");
    EXPECT_EQ(rig.design().settings().cabling.bundle_rise, base::Temperature::from_count(15'000));
    rig.document().history().undo();
    EXPECT_EQ(rig.design().settings().cabling.bundle_rise, base::Temperature{});
    rig.type_into("Limits of lines", "RS-232 = 20 m; 3G-SDI = 25 dB");
    const std::vector<model::LineLimit> lines{{"RS-232", base::Length::from_count(20'000'000), {}},
                                              {"3G-SDI", {}, base::Loss::from_count(25'000)}};
    EXPECT_EQ(rig.design().settings().cabling.lines, lines);
    rig.type_into("Limits of lines", "RS-232 twenty");
    EXPECT_EQ(rig.design().settings().cabling.lines, lines);
    EXPECT_TRUE(says(rig, "is no limit"));
}

}  // namespace streamwright::test::cable_properties
