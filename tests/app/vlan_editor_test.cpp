// VLANs and queriers set up by hand: an empty design has neither, and the window must be able to make both.
#include "app/panels/properties/properties_panel.h"
#include "tests/app/window_rig.h"

#include <QCheckBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTest>

#include <gtest/gtest.h>

namespace streamwright::test::vlan_editor {

class VlanEditor : public testing::Test {
protected:
    template <class Widget>
    Widget* named(const QString& words) {
        for (auto* each : rig.window().properties().form()->findChildren<Widget*>())
            if (each->isVisibleTo(&rig.window()) && (each->text() == words || each->toolTip() == words)) return each;
        return nullptr;
    }
    template <class Widget>
    void click(const QString& words) {
        Widget* widget = nullptr;  // what a layout has just been given shows itself with the next events
        rig.wait_for([&] { return (widget = named<Widget>(words)) != nullptr; });
        ASSERT_NE(widget, nullptr) << words.toStdString();
        QTest::mouseClick(widget, Qt::LeftButton, {}, {8, widget->height() / 2});
        QCoreApplication::sendPostedEvents();
        QCoreApplication::processEvents();
    }
    QString error_below(const QString& name) {
        for (const auto* label : rig.field(name).parentWidget()->findChildren<QLabel*>())
            if (label->isVisible()) return label->text();
        return {};
    }
    const model::Vlan& only_vlan() {
        if (rig.design().vlans.size() != 1) throw std::runtime_error("not one VLAN");
        return *rig.design().vlans.begin();
    }
    int edits() { return rig.document().history().count(); }
    /// An encoder that streams into a switch.
    void draw_streaming_switch() {
        rig.drop_type("tern-encoder", {80, 80});
        rig.drop_type("switch-access-8-poe", {180, 90});
        for (const auto& device : rig.design().devices)
            (device.type.text == "tern-encoder" ? encoder : core) = device.tag;
        rig.drag(rig.lug(encoder, "net"), rig.lug(core, "1"));
        auto stream = model::Stream::blank(rig.document().ids().next<model::StreamId>());
        stream.encoder = rig.device(encoder).id;
        stream.tag = model::next_stream_tag(rig.design());
        stream.payload_rate = base::BitRate::from_count(800'000'000);
        stream.group = base::parse_ipv4("239.1.0.1");
        ASSERT_TRUE(rig.document().edit(model::SetStream{stream}, "Add a stream"));
    }

    WindowRig rig;
    std::string encoder, core;
};

TEST_F(VlanEditor, TheRemedyGivesAnEmptyDesignItsVlanAndItsQuerier) {
    draw_streaming_switch();
    ASSERT_EQ(rig.findings_of("no-querier"), 1);
    rig.selection().set(app::Chosen(rig.device(core).id));
    const int before = edits();
    click<QPushButton>(QString("Set up VLAN 1 with %1 as its querier").arg(QString::fromStdString(core)));
    EXPECT_EQ(rig.findings_of("no-querier"), 0);
    EXPECT_EQ(edits(), before + 1);
    ASSERT_EQ(rig.device(core).bridging.queriers.size(), 1u);
    const auto from = rig.device(core).bridging.queriers.front().address;
    EXPECT_TRUE(from && only_vlan().subnet->holds(*from));
    EXPECT_TRUE(named<QCheckBox>("Querier in VLAN 1 AV")->isChecked()) << "the form shows what the remedy did";
    rig.document().history().undo();
    EXPECT_EQ(rig.design().vlans.size(), 0u) << "one step back and all is as before";
    EXPECT_EQ(rig.findings_of("no-querier"), 1);
}

TEST_F(VlanEditor, ALongRemedyNeverWidensTheProperties) {
    draw_streaming_switch();
    const auto id = rig.device(core).id;
    ASSERT_TRUE(rig.document().edit(model::Rename{id, "SW-COMMS-ROOM-NORTH-RACK-2-UNIT-17", {}}, "Rename"));
    rig.selection().set(app::Chosen(id));
    const QString words = "Set up VLAN 1 with SW-COMMS-ROOM-NORTH-RACK-2-UNIT-17 as its querier";
    ASSERT_TRUE(rig.wait_for([&] { return named<QPushButton>(words) != nullptr; })) << "told in full by its tip";
    auto& panel = rig.window().properties();
    EXPECT_TRUE(rig.wait_for([&] { return panel.form()->width() <= panel.viewport()->width(); }))
        << panel.form()->width() << " in " << panel.viewport()->width();
    EXPECT_LT(named<QPushButton>(words)->width(), panel.viewport()->width());
}

TEST_F(VlanEditor, OrByHand) {
    draw_streaming_switch();
    rig.selection().set(app::Chosen(rig.device(core).id));
    click<QPushButton>("To the design's VLANs");
    click<QPushButton>("Add a VLAN");
    EXPECT_EQ(only_vlan().vid, 1);
    EXPECT_EQ(rig.design().settings().usual_vlan, only_vlan().id);
    ASSERT_TRUE(rig.selection().holds(app::Chosen(only_vlan().id))) << "the new VLAN is shown";
    rig.type_into("Number", "40");
    rig.type_into("Name", "Pictures");
    rig.type_into("Subnet", "10.40.0.0/22");
    rig.type_into("Gateway", "10.40.0.1");
    rig.type_into("Leased", "10.40.2.0 - 10.40.2.99");
    EXPECT_EQ(only_vlan().vid, 40);
    EXPECT_EQ(only_vlan().name, "Pictures");
    EXPECT_EQ(only_vlan().subnet, base::parse_ipv4_prefix("10.40.0.0/22"));
    EXPECT_EQ(only_vlan().lease_last, base::parse_ipv4("10.40.2.99"));
    EXPECT_EQ(rig.findings_of("no-querier"), 1) << "nobody asks in it yet";

    rig.selection().set(app::Chosen(rig.device(core).id));
    click<QCheckBox>("Querier in VLAN 40 Pictures");
    EXPECT_EQ(rig.findings_of("no-querier"), 0);
    EXPECT_EQ(rig.field("asks from").text(), "10.40.0.2") << "the first address that neither gateway nor lease takes";
    rig.type_into("asks from", "10.40.0.9");
    EXPECT_EQ(rig.device(core).bridging.queriers.front().address, base::parse_ipv4("10.40.0.9"));
    rig.type_into("asks from", "10.40");
    EXPECT_FALSE(error_below("asks from").isEmpty());
    EXPECT_EQ(rig.device(core).bridging.queriers.front().address, base::parse_ipv4("10.40.0.9"));
    click<QCheckBox>("Querier in VLAN 40 Pictures");
    EXPECT_EQ(rig.findings_of("no-querier"), 1);
}

TEST_F(VlanEditor, WrongInputIsOneSentenceInPlace) {
    rig.selection().clear();
    click<QPushButton>("Add a VLAN");
    const auto made = only_vlan();
    const int done = edits();
    const std::pair<const char*, const char*> wrong[] = {
        {"Number", "4095"},   {"Number", "many"},     {"Subnet", "10.1.0.0"},           {"Gateway", "10.9.0.1"},
        {"Gateway", "first"}, {"Leased", "10.1.0.9"}, {"Leased", "10.1.0.9 - 10.1.0.3"}};
    for (const auto& [name, text] : wrong) {
        rig.type_into(name, text);
        EXPECT_FALSE(error_below(name).isEmpty()) << name << ' ' << text;
        EXPECT_EQ(only_vlan(), made) << name << ' ' << text;
        rig.selection().clear();
        rig.selection().set(app::Chosen(made.id));
    }
    EXPECT_EQ(edits(), done);
}

TEST_F(VlanEditor, ASecondVlanIsListedAndCanGo) {
    rig.selection().clear();
    click<QPushButton>("Add a VLAN");
    click<QPushButton>("Back to the design");
    EXPECT_TRUE(rig.selection().empty());
    click<QPushButton>("Add a VLAN");
    ASSERT_EQ(rig.design().vlans.size(), 2u);
    EXPECT_FALSE(rig.selection().holds(app::Chosen(*rig.design().settings().usual_vlan))) << "the first stays usual";
    click<QPushButton>("Remove this VLAN");
    EXPECT_EQ(rig.design().vlans.size(), 1u);
    EXPECT_TRUE(rig.selection().empty()) << "the design is shown again";
    click<QPushButton>("1 AV · 10.1.0.0/24");
    EXPECT_TRUE(rig.selection().holds(app::Chosen(only_vlan().id)));
    rig.viewport().setFocus();
    rig.key(Qt::Key_Delete);
    EXPECT_EQ(rig.design().vlans.size(), 0u);
    rig.document().history().undo();
    EXPECT_EQ(rig.design().vlans.size(), 1u);
}

}  // namespace streamwright::test::vlan_editor
