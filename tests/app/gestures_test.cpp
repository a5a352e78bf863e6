// Each gesture through mouse and key events on the viewport: what it shows while it lasts, and the one edit it makes.
#include "app/canvas/focus_order.h"
#include "app/views/status_line.h"
#include "tests/app/window_rig.h"

#include <QLineEdit>
#include <QTest>

#include <gtest/gtest.h>

namespace streamwright::test::gestures {

/// "PC-001" left, "ENC-001" middle, "SW-001" right, by whatever prefixes their types have.
class Gestures : public testing::Test {
protected:
    void SetUp() override {
        rig.drop_type("pc", {50, 80});
        rig.drop_type("tern-encoder", {150, 80});
        rig.drop_type("switch-access-8-poe", {260, 85});
        for (const auto& device : rig.design().devices) {
            if (device.type.text == "pc") pc = device.tag;
            if (device.type.text == "tern-encoder") encoder = device.tag;
            if (device.type.text == "switch-access-8-poe") network_switch = device.tag;
        }
        rig.selection().clear();
        rig.look_at();
    }
    model::SheetPoint place(const std::string& tag) {
        return rig.design().places.find({rig.viewport().sheet(), rig.device(tag).id})->at;
    }
    const model::Cable& only_cable() { return *rig.design().cables.begin(); }

    WindowRig rig;
    std::string pc, encoder, network_switch;
};

TEST_F(Gestures, PullingShowsWhatFitsAndConnects) {
    rig.press(rig.lug(pc, "hdmi-out-1"));
    rig.move(rig.lug(pc, "hdmi-out-1") + QPoint(20, 6));
    EXPECT_TRUE(rig.viewport().overlay().pulling);
    EXPECT_TRUE(rig.viewport().overlay().fitting.contains(rig.port(encoder, "hdmi-in")));
    EXPECT_FALSE(rig.viewport().overlay().fitting.contains(rig.port(encoder, "audio-in")));
    rig.move(rig.lug(encoder, "hdmi-in"));
    ASSERT_EQ(rig.viewport().overlay().lines.size(), 1u);
    EXPECT_FALSE(rig.viewport().overlay().lines.front().refused);
    EXPECT_TRUE(rig.design().cables.empty()) << "a preview changes nothing";
    rig.release(rig.lug(encoder, "hdmi-in"));
    ASSERT_EQ(rig.design().cables.size(), 1u);
    EXPECT_FALSE(rig.viewport().overlay().pulling);
    EXPECT_EQ(only_cable().a->port, rig.port(pc, "hdmi-out-1"));
    EXPECT_EQ(only_cable().b->port, rig.port(encoder, "hdmi-in"));
}

TEST_F(Gestures, ARefusingPortSaysWhyAndStaysFree) {
    rig.press(rig.lug(pc, "hdmi-out-1"));
    rig.move(rig.lug(encoder, "audio-in") + QPoint(-30, 0));
    rig.move(rig.lug(encoder, "audio-in"));
    const auto& overlay = rig.viewport().overlay();
    EXPECT_EQ(overlay.refusing, rig.port(encoder, "audio-in"));
    ASSERT_TRUE(overlay.note);
    EXPECT_TRUE(overlay.note->refused);
    EXPECT_FALSE(overlay.note->why.isEmpty());
    EXPECT_EQ(rig.window().status().words(), overlay.note->why) << "the status line says the same sentence";
    EXPECT_TRUE(overlay.lines.front().refused);
    rig.release(rig.lug(encoder, "audio-in"));
    EXPECT_TRUE(rig.design().cables.empty());
}

TEST_F(Gestures, EscapeDropsALead) {
    rig.press(rig.lug(pc, "hdmi-out-1"));
    rig.move(rig.lug(encoder, "hdmi-in"));
    rig.key(Qt::Key_Escape);
    EXPECT_FALSE(rig.viewport().in_gesture());
    EXPECT_TRUE(rig.viewport().overlay().lines.empty());
    rig.release(rig.lug(encoder, "hdmi-in"));
    EXPECT_TRUE(rig.design().cables.empty());
}

TEST_F(Gestures, AnEndIsDraggedToAnotherPort) {
    rig.drag(rig.lug(encoder, "net"), rig.lug(network_switch, "1"));
    rig.drag(rig.lug(network_switch, "1"), rig.lug(network_switch, "3"));
    ASSERT_EQ(rig.design().cables.size(), 1u);
    EXPECT_TRUE(only_cable().a->port == rig.port(network_switch, "3") ||
                only_cable().b->port == rig.port(network_switch, "3"));
    rig.document().history().undo();
    EXPECT_TRUE(only_cable().a->port == rig.port(network_switch, "1") ||
                only_cable().b->port == rig.port(network_switch, "1"));
}

TEST_F(Gestures, DraggingMovesAPlateWithItsCablesInOneEdit) {
    rig.drag(rig.lug(encoder, "net"), rig.lug(network_switch, "1"));
    const auto before = place(encoder);
    const int edits = rig.document().history().count();
    rig.drag(rig.title(encoder), rig.title(encoder) + QPoint(0, 80));
    EXPECT_EQ(place(encoder).y - before.y, base::Length::from_count(20'000)) << "80 px at 100 % are 20 mm";
    EXPECT_EQ(place(encoder).x, before.x);
    EXPECT_EQ(rig.document().history().count(), edits + 1);
    rig.document().history().undo();
    EXPECT_EQ(place(encoder), before);
}

TEST_F(Gestures, ArrowsMoveTheSelection) {
    const auto before = place(pc);
    rig.click(rig.title(pc));
    rig.key(Qt::Key_Right);
    rig.key(Qt::Key_Down, Qt::ShiftModifier);
    EXPECT_EQ(place(pc).x - before.x, base::Length::from_count(1000));
    EXPECT_EQ(place(pc).y - before.y, base::Length::from_count(5000));
}

TEST_F(Gestures, MarqueeShiftClickAndDelete) {
    rig.drag(rig.at({2, 20}), rig.at({200, 140}));
    EXPECT_EQ(rig.selection().of<model::DeviceId>().size(), 2u);
    rig.click(rig.title(network_switch), Qt::ShiftModifier);
    EXPECT_EQ(rig.selection().of<model::DeviceId>().size(), 3u);
    rig.click(rig.title(pc), Qt::ShiftModifier);
    EXPECT_EQ(rig.selection().of<model::DeviceId>().size(), 2u);
    rig.key(Qt::Key_Delete);
    ASSERT_EQ(rig.design().devices.size(), 1u);
    EXPECT_EQ(rig.design().devices.begin()->tag, pc);
    EXPECT_TRUE(rig.selection().empty()) << "what is gone is not selected";
    rig.document().history().undo();
    EXPECT_EQ(rig.design().devices.size(), 3u);
}

TEST_F(Gestures, ClickOnTheEmptySheetClears) {
    rig.click(rig.title(pc));
    EXPECT_EQ(rig.selection().all().size(), 1u);
    rig.click(rig.at({200, 150}));
    EXPECT_TRUE(rig.selection().empty());
}

TEST_F(Gestures, RenameWithF2AndWithADoubleClick) {
    rig.click(rig.title(pc));
    rig.key(Qt::Key_F2);
    ASSERT_TRUE(rig.viewport().editing_text());
    auto* line = rig.viewport().findChild<QLineEdit*>();
    ASSERT_NE(line, nullptr);
    EXPECT_EQ(line->text().toStdString(), pc);
    QTest::keyClicks(line, "SRC-77");
    QTest::keyClick(line, Qt::Key_Return);
    EXPECT_EQ(rig.device("SRC-77").type.text, "pc");
    QTest::mouseDClick(&rig.viewport(), Qt::LeftButton, {}, rig.title(encoder));
    EXPECT_TRUE(rig.viewport().editing_text());
    QTest::keyClick(rig.viewport().findChildren<QLineEdit*>().back(), Qt::Key_Escape);
    EXPECT_FALSE(rig.viewport().editing_text());
    EXPECT_EQ(rig.device(encoder).tag, encoder);
}

TEST_F(Gestures, AStretchOfASelectedCableIsBentAndPinned) {
    rig.drag(rig.lug(encoder, "net"), rig.lug(network_switch, "1"));
    const auto cable = only_cable().id;
    ASSERT_EQ(rig.selection().only(), app::Chosen(cable));
    const auto points = rig.viewport().scene().cable(cable)->line.points;
    const auto first = app::to_mm(points[0]), second = app::to_mm(points[1]);
    rig.drag(rig.at((first + second) / 2), rig.at((first + second) / 2 + QPointF(0, 20)));
    const auto* line = rig.design().cable_lines.find({rig.viewport().sheet(), cable});
    ASSERT_NE(line, nullptr);
    EXPECT_TRUE(line->pinned);
    const auto bent = rig.viewport().scene().cable(cable)->line.points;
    EXPECT_EQ(bent.front(), points.front()) << "the ends stay on their lugs";
    EXPECT_EQ(bent.back(), points.back());
    for (std::size_t i = 1; i < bent.size(); ++i)
        EXPECT_TRUE(bent[i].x == bent[i - 1].x || bent[i].y == bent[i - 1].y) << "every stretch is level or upright";
}

TEST_F(Gestures, TabWalksPlatesAndPortsAndEnterPullsByKeyboard) {
    rig.viewport().setFocus();
    rig.viewport().set_focused(std::nullopt);
    const auto order = app::focus_order(rig.viewport().scene());
    ASSERT_EQ(order.front(), app::Chosen(rig.device(pc).id)) << "as one reads";
    rig.key(Qt::Key_Tab);
    EXPECT_EQ(rig.viewport().focused(), order[0]);
    rig.key(Qt::Key_Tab);
    EXPECT_EQ(rig.viewport().focused(), order[1]);
    rig.viewport().set_focused(app::Chosen(rig.port(pc, "hdmi-out-1")));
    rig.key(Qt::Key_Return);
    ASSERT_TRUE(rig.viewport().in_gesture());
    EXPECT_EQ(rig.viewport().focused(), app::Chosen(rig.port(encoder, "hdmi-in"))) << "the first port that fits";
    rig.key(Qt::Key_Return);
    EXPECT_FALSE(rig.viewport().in_gesture());
    ASSERT_EQ(rig.design().cables.size(), 1u);
    EXPECT_EQ(only_cable().b->port, rig.port(encoder, "hdmi-in"));
}

TEST_F(Gestures, ASelectedFrameIsResizedByItsCornerAndMovedByItsHead) {
    model::Room room{rig.document().ids().next<model::RoomId>()};
    room.number = "1.01";
    auto frame = model::RoomFrame::blank(rig.document().ids().next<model::FrameId>());
    frame.sheet = rig.viewport().sheet();
    frame.room = room.id;
    frame.at = app::from_mm(QPointF(20, 130));
    frame.width = base::Length::from_count(60'000);
    frame.height = base::Length::from_count(40'000);
    ASSERT_TRUE(rig.document().edit(model::AddRows{{room, frame}}, "Add"));
    rig.drop_type("pc", {50, 152});
    rig.click(rig.at({60, 132}));
    ASSERT_EQ(rig.selection().only(), app::Chosen(frame.id));
    rig.drag(rig.at({80, 170}), rig.at({100, 180}));
    const auto resized = *rig.design().room_frames.find(frame.id);
    EXPECT_EQ(resized.width, base::Length::from_count(80'000));
    EXPECT_EQ(resized.height, base::Length::from_count(50'000));
    EXPECT_EQ(resized.at, frame.at);
    rig.drag(rig.at({60, 132}), rig.at({70, 132}));
    EXPECT_EQ(rig.design().room_frames.find(frame.id)->at, app::from_mm(QPointF(30, 130)));
    int inside = 0;
    for (const auto& plate : rig.viewport().scene().plates())
        inside += app::to_mm(plate.plate.body).center().y() > 130 && app::to_mm(plate.plate.body).center().x() > 55;
    EXPECT_EQ(inside, 1) << "the plate in it went along";
}

TEST_F(Gestures, WheelZoomsAtThePointer) {
    const QPointF at(300, 200);
    const auto before = rig.viewport().view().to_sheet(at);
    QWheelEvent wheel(at, rig.viewport().mapToGlobal(at), {}, QPoint(0, 240), Qt::NoButton, Qt::NoModifier,
                      Qt::NoScrollPhase, false);
    QApplication::sendEvent(&rig.viewport(), &wheel);
    EXPECT_GT(rig.viewport().view().zoom, 1.2);
    const auto after = rig.viewport().view().to_sheet(at);
    EXPECT_NEAR(after.x(), before.x(), 1e-6);
    EXPECT_NEAR(after.y(), before.y(), 1e-6);
}

TEST_F(Gestures, FittingShowsAllWithAMarginOnEverySide) {
    for (const bool page : {true, false}) {
        page ? rig.viewport().fit_page() : rig.viewport().fit_drawn();
        const auto area = page ? rig.viewport().scene().paper() : rig.viewport().scene().drawn();
        const auto seen = rig.viewport().view().to_view(area);
        const QRectF view = rig.viewport().rect();
        EXPECT_GE(seen.left(), 20);
        EXPECT_GE(seen.top(), 20);
        EXPECT_NEAR(seen.left(), view.width() - seen.right(), 1) << "centred";
        EXPECT_NEAR(seen.top(), view.height() - seen.bottom(), 1);
    }
    // What was fitted stays fitted when the window changes.
    rig.viewport().fit_page();
    rig.window().resize(1300, 800);
    ASSERT_TRUE(rig.wait_for([&] { return rig.viewport().width() < 900; }));
    EXPECT_TRUE(QRectF(rig.viewport().rect()).contains(rig.viewport().view().to_view(rig.viewport().scene().paper())));
}

TEST_F(Gestures, MiddleButtonPans) {
    const auto before = rig.viewport().view().origin;
    QTest::mousePress(&rig.viewport(), Qt::MiddleButton, {}, QPoint(400, 300));
    QTest::mouseMove(&rig.viewport(), QPoint(440, 300));
    QTest::mouseRelease(&rig.viewport(), Qt::MiddleButton, {}, QPoint(440, 300));
    EXPECT_NEAR(before.x() - rig.viewport().view().origin.x(), 10, 1e-6) << "40 px at 100 % are 10 mm";
}

}  // namespace streamwright::test::gestures
