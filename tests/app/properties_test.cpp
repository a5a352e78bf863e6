// Racks, chassis and transceivers from the properties, by real events on their fields.
#include "app/panels/properties/properties_panel.h"
#include "tests/app/window_rig.h"

#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QTest>

#include <gtest/gtest.h>

namespace streamwright::test {

namespace properties_test {

QComboBox& choice(WindowRig& rig, const QString& name) {
    auto* box = rig.window().properties().form()->findChild<QComboBox*>(name);
    if (!box) throw std::runtime_error("no choice " + name.toStdString());
    return *box;
}

void choose(WindowRig& rig, const QString& name, const QString& label) {
    auto& box = choice(rig, name);
    const int index = box.findText(label);
    ASSERT_GE(index, 0) << label.toStdString();
    box.setFocus();
    box.setCurrentIndex(index);
    Q_EMIT box.activated(index);
}

TEST(MountEditor, ASwitchGoesIntoANewRackAndMovesInIt) {
    WindowRig rig;
    rig.drop_type("switch-access-24-poe", {100, 80});
    rig.click(rig.title("SW-001"));
    choose(rig, "Rack", "a new rack");
    ASSERT_TRUE(rig.device("SW-001").rack);
    EXPECT_EQ(rig.device("SW-001").rack->unit, 1);
    EXPECT_EQ(rig.design().racks.begin()->name, "Rack 1");
    rig.type_into("Lowest unit", "12");
    EXPECT_EQ(rig.device("SW-001").rack->unit, 12);
    rig.type_into("Lowest unit", "99");
    EXPECT_EQ(rig.device("SW-001").rack->unit, 12) << "out of the rack";
    rig.type_into("Rack name", "North A");
    EXPECT_EQ(rig.design().racks.begin()->name, "North A");
    rig.document().history().undo();
    rig.document().history().undo();
    rig.document().history().undo();
    EXPECT_EQ(rig.design().racks.size(), 0u) << "rack and place came as one step";
}

TEST(MountEditor, ACardTakesTheLowestFreeSlot) {
    WindowRig rig;
    rig.drop_type("loom-chassis", {80, 80});
    rig.drop_type("loom-encoder-card", {200, 80});
    rig.click(rig.title("ENC-001"));
    choose(rig, "Chassis", "CH-001");
    ASSERT_TRUE(rig.device("ENC-001").chassis);
    EXPECT_EQ(rig.device("ENC-001").chassis->slot, 1);
    rig.type_into("Slot", "5");
    EXPECT_EQ(rig.device("ENC-001").chassis->slot, 5);
}

TEST(Latency, ADecoderTellsHowLateItsPictureIsInTheChosenPreset) {
    WindowRig rig;
    rig.drop_type("tern-encoder", {60, 80});
    rig.drop_type("switch-access-8-poe", {160, 85});
    rig.drop_type("tern-decoder", {280, 80});
    rig.look_at();
    rig.drag(rig.lug("ENC-001", "net"), rig.lug("SW-001", "1"));
    rig.drag(rig.lug("DEC-001", "net"), rig.lug("SW-001", "2"));
    ASSERT_EQ(rig.design().cables.size(), 2u);
    auto vlan = model::Vlan::blank(rig.document().ids().next<model::VlanId>());
    vlan.name = "AV";
    rig.document().edit(model::SetUpVlan{vlan, true, rig.device("SW-001").id, base::parse_ipv4("10.1.0.2")}, "VLAN");
    auto stream = model::Stream::blank(rig.document().ids().next<model::StreamId>());
    stream.tag = "S-001";
    stream.encoder = rig.device("ENC-001").id;
    stream.payload_rate = base::BitRate::from_count(500'000'000);
    rig.document().edit(model::SetStream{stream}, "Stream");
    model::AddRows add;
    auto preset = model::Preset::blank(rig.document().ids().next<model::PresetId>());
    preset.name = "Lecture";
    add.rows = {preset};
    rig.document().edit(add, "Preset");
    const auto& decoder = rig.device("DEC-001");
    rig.document().edit(model::Subscribe{rig.document().ids().next<model::SubscriptionId>(), preset.id, decoder.id,
                                         rig.design().type_of(decoder)->codec->inputs.front().key, stream.id},
                        "Show");
    rig.selection().set_preset(preset.id);
    rig.click(rig.title("DEC-001"));
    QStringList words;
    for (const auto* label : rig.window().properties().form()->findChildren<QLabel*>()) words << label->text();
    ASSERT_TRUE(words.contains("Latency of S-001")) << words.join('|').toStdString();
    const auto value = [&](const QString& name) { return words.value(words.indexOf(name) + 1).toStdString(); };
    EXPECT_EQ(value("Encoding"), "8 ms");  // as the types state
    EXPECT_EQ(value("Decoding"), "9 ms");
    EXPECT_EQ(value("Cables"), "not known") << "no length is typed";
    EXPECT_EQ(value("At most"), "not known");
}

// Between two cages fibre is meant; what it needs at its ends is chosen where the cable is.
TEST(CableEditor, SetsTheTransceiversOfItsEnds) {
    WindowRig rig;
    rig.drop_type("switch-access-24", {80, 120});
    rig.drop_type("switch-access-24", {300, 120});
    rig.drag(rig.lug("SW-001", "25"), rig.lug("SW-002", "25"));
    ASSERT_EQ(rig.design().cables.size(), 1u);
    EXPECT_EQ(rig.design().type_of(*rig.design().cables.begin())->signal, catalogue::Signal::fibre);
    EXPECT_EQ(rig.findings_of("fibre-does-not-fit"), 1);
    for (const char* end : {"At SW-001", "At SW-002"}) {
        const auto& options = choice(rig, end);
        EXPECT_EQ(options.findText("10GBASE-LR transceiver, LC"), -1) << "another medium";
        EXPECT_EQ(options.findText("25GBASE-SR transceiver, LC"), -1) << "another form";
        choose(rig, end, "10GBASE-SR transceiver, LC");
    }
    EXPECT_EQ(rig.findings_of("fibre-does-not-fit"), 0);
}

/// Clicks the check box of that label in the properties.
void tick(WindowRig& rig, const QString& label) {
    for (auto* box : rig.window().properties().form()->findChildren<QCheckBox*>())
        if (box->text() == label) {
            QTest::mouseClick(box, Qt::LeftButton, {}, {8, box->height() / 2});
            QCoreApplication::sendPostedEvents();
            QCoreApplication::processEvents();
            return;
        }
    FAIL() << "no check box " << label.toStdString();
}

// Loop guard and BPDU guard exclude each other on one port: the second tick says so at once.
TEST(PortEditor, SetsTheGuardsOfAPort) {
    WindowRig rig;
    rig.drop_type("switch-access-24", {80, 120});
    const auto port = rig.port("SW-001", "3");
    rig.selection().set(app::Chosen(port));
    tick(rig, "Loop guard");
    const auto* row = rig.design().port_overrides.find(port);
    ASSERT_NE(row, nullptr);
    EXPECT_TRUE(row->loop_guard);
    EXPECT_EQ(rig.findings_of("guards-clash"), 0);
    tick(rig, "BPDU guard");
    EXPECT_EQ(rig.findings_of("guards-clash"), 1);
    tick(rig, "Loop guard");
    EXPECT_EQ(rig.findings_of("guards-clash"), 0);
}

}  // namespace properties_test

}  // namespace streamwright::test
