// The panels: the catalogue finds and places by keyboard, the findings list keeps its place, the search jumps.
#include "app/document/search.h"
#include "app/panels/catalogue_panel.h"
#include "app/panels/finding_delegate.h"
#include "app/panels/findings_panel.h"
#include "app/views/top_bar.h"
#include "tests/app/window_rig.h"

#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QTest>
#include <QTreeView>

#include <gtest/gtest.h>

namespace streamwright::test::panels {

int rows_shown(QTreeView& list) {
    int count = 0;
    for (int group = 0; group < list.model()->rowCount(); ++group)
        count += list.model()->rowCount(list.model()->index(group, 0));
    return count;
}

TEST(CataloguePanel, FindsByNamePortAndKindAndPlacesWithEnter) {
    WindowRig rig;
    auto& catalogue = rig.window().catalogue();
    auto* search = catalogue.findChild<QLineEdit*>();
    const int all = rows_shown(catalogue.list());
    EXPECT_GE(all, 24) << "issue: 24 types or more";
    QTest::keyClicks(search, "projector");
    EXPECT_LT(rows_shown(catalogue.list()), all);
    EXPECT_GE(rows_shown(catalogue.list()), 1);
    QTest::keyClick(search, Qt::Key_Return);
    EXPECT_TRUE(catalogue.list().hasFocus());
    QTest::keyClick(&catalogue.list(), Qt::Key_Return);
    ASSERT_EQ(rig.design().devices.size(), 1u);
    const auto* type = rig.design().type_of(*rig.design().devices.begin());
    EXPECT_EQ(type->kind, catalogue::DeviceKind::projector);
    QTest::keyClick(&catalogue.list(), Qt::Key_Return);
    ASSERT_EQ(rig.viewport().scene().plates().size(), 2u);
    const auto& plates = rig.viewport().scene().plates();
    EXPECT_FALSE(plates[0].whole().intersects(plates[1].whole())) << "the second makes way";
}

TEST(FindingsPanel, KeepsTheSelectionWhenRowsComeAndGo) {
    WindowRig rig;
    rig.drop_type("tern-encoder", {60, 60});
    auto& panel = rig.window().findings();
    ASSERT_GE(panel.model().rowCount(), 1);
    panel.list().setCurrentIndex(panel.model().index(panel.model().rowCount() - 1));
    const auto key = panel.model().row(panel.list().currentIndex().row()).key;
    rig.drop_type("tern-encoder", {60, 150});
    ASSERT_TRUE(panel.list().currentIndex().isValid());
    EXPECT_EQ(panel.model().row(panel.list().currentIndex().row()).key, key);
    rig.document().history().undo();
    ASSERT_TRUE(panel.list().currentIndex().isValid());
    EXPECT_EQ(panel.model().row(panel.list().currentIndex().row()).key, key);
}

TEST(FindingsPanel, ARemedyIsOneUndoableEdit) {
    WindowRig rig;
    // Two streams on one group: the remedy gives one of them a free group.
    rig.drop_type("tern-encoder", {60, 60});
    rig.drop_type("tern-encoder", {60, 150});
    for (const auto& device : rig.design().devices) {
        auto stream = model::Stream::blank(rig.document().ids().next<model::StreamId>());
        stream.encoder = device.id;
        stream.tag = model::next_stream_tag(rig.design());
        stream.group = base::parse_ipv4("239.10.0.1");
        stream.payload_rate = base::BitRate::from_count(800'000'000);
        ASSERT_TRUE(rig.document().edit(model::SetStream{stream}, "Add"));
    }
    ASSERT_GE(rig.findings_of("group-used-twice"), 1);
    auto& panel = rig.window().findings();
    int row = -1;
    for (int i = 0; i < panel.model().rowCount(); ++i)
        if (panel.model().row(i).reported.finding.rule == "group-used-twice") row = i;
    ASSERT_GE(row, 0);
    if (panel.model().row(row).remedies.isEmpty()) GTEST_SKIP() << "the rule offers no remedy";
    const int edits = rig.document().history().count();
    const auto index = panel.model().index(row);
    panel.list().scrollTo(index);
    const auto box = panel.list().visualRect(index);
    const auto button = panel.delegate().buttons(box, panel.model().row(row)).front();
    QTest::mouseClick(panel.list().viewport(), Qt::LeftButton, {}, button.center());
    ASSERT_TRUE(rig.wait_for([&] { return rig.document().history().count() > edits; }));
    EXPECT_EQ(rig.document().history().count(), edits + 1);
    EXPECT_EQ(rig.findings_of("group-used-twice"), 0);
    rig.document().history().undo();
    EXPECT_GE(rig.findings_of("group-used-twice"), 1);
}

TEST(TopBar, SearchJumpsToATag) {
    WindowRig rig;
    rig.drop_type("tern-encoder", {60, 60});
    rig.drop_type("pc", {300, 200});
    std::string pc;
    for (const auto& device : rig.design().devices)
        if (device.type.text == "pc") pc = device.tag;
    rig.selection().clear();
    rig.look_at({-500, -500});
    auto& search = rig.window().top().search();
    search.setFocus();
    QTest::keyClicks(&search, QString::fromStdString(pc).toLower());
    QTest::keyClick(&search, Qt::Key_Return);
    EXPECT_EQ(rig.selection().only(), app::Chosen(rig.device(pc).id));
    EXPECT_TRUE(rig.viewport().rect().contains(rig.title(pc))) << "and it is in view";
}

TEST(TopBar, EnterWalksAllThatIsFoundByTypeAndRoomToo) {
    WindowRig rig;
    rig.drop_type("tern-encoder", {60, 60});
    rig.drop_type("pc", {300, 200});
    rig.drop_type("pc", {300, 300});
    model::Room room{rig.document().ids().next<model::RoomId>()};
    room.number = "2.01";
    room.name = "Lecture hall";
    ASSERT_TRUE(rig.document().edit(model::AddRows{{room}}, "Add"));
    std::set<app::Chosen> computers;
    model::DeviceId encoder(0);
    for (const auto& device : rig.design().devices)
        if (device.type.text == "pc")
            computers.insert(app::Chosen(device.id));
        else
            encoder = device.id;
    ASSERT_TRUE(rig.document().edit(model::StandInRoom{{encoder}, room.id, {}, {}, {}}, "Move"));
    auto& top = rig.window().top();
    rig.key(Qt::Key_F, Qt::ControlModifier);
    ASSERT_TRUE(top.search().hasFocus());
    const auto type = rig.design().type_of(*rig.design().devices.find(std::get<model::DeviceId>(*computers.begin())));
    QTest::keyClicks(&top.search(), QString::fromStdString(type->name));
    EXPECT_TRUE(top.count().isVisible());
    EXPECT_EQ(top.count().text(), "2 found");
    std::set<app::Chosen> walked;
    QTest::keyClick(&top.search(), Qt::Key_Return);
    EXPECT_EQ(top.count().text(), "1 of 2");
    const auto first = rig.selection().only();
    walked.insert(*first);
    QTest::keyClick(&top.search(), Qt::Key_Return);
    EXPECT_EQ(top.count().text(), "2 of 2");
    walked.insert(*rig.selection().only());
    EXPECT_EQ(walked, computers);
    QTest::keyClick(&top.search(), Qt::Key_Return);
    EXPECT_EQ(rig.selection().only(), first) << "round to the first";
    QTest::keyClick(&top.search(), Qt::Key_Return, Qt::ShiftModifier);
    EXPECT_EQ(top.count().text(), "2 of 2") << "and back";
    QTest::keyClick(&top.search(), Qt::Key_Escape);
    EXPECT_TRUE(rig.viewport().hasFocus());
    rig.key(Qt::Key_F3);
    EXPECT_EQ(rig.selection().only(), first);
    top.search().clear();
    QTest::keyClicks(&top.search(), "hall encoder");
    QTest::keyClick(&top.search(), Qt::Key_Return);
    EXPECT_EQ(rig.selection().only(), app::Chosen(encoder)) << "every word counts: the room's and the type's";
    QTest::keyClicks(&top.search(), " of nowhere");
    EXPECT_EQ(top.count().text(), "nothing found");
    QTest::keyClick(&top.search(), Qt::Key_Return);
    EXPECT_EQ(rig.selection().only(), app::Chosen(encoder)) << "nothing found moves nothing";
    EXPECT_FALSE(top.search().accessibleName().isEmpty());
}

TEST(TopBar, FoundInTheOrderPeopleCount) {
    WindowRig rig;
    const std::vector<std::string> wanted{"enc", "ENC-9", "ENC-10"};
    for (int i = 0; i < 3; ++i) rig.drop_type("tern-encoder", {60.0 + 90 * i, 60});
    auto next = wanted.rbegin();
    for (const auto& device : model::Design(rig.design()).devices)
        ASSERT_TRUE(rig.document().edit(model::Rename{device.id, *next++, {}}, "Rename"));
    std::vector<std::string> tags;
    for (const auto& hit : app::found_in(rig.design(), "ENC"))
        if (const auto* id = std::get_if<model::DeviceId>(&hit)) tags.push_back(rig.design().devices.find(*id)->tag);
    EXPECT_EQ(tags, wanted);
}

}  // namespace streamwright::test::panels
