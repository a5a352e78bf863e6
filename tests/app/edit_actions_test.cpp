// Copy, cut, paste, duplicate, select similar and align through keys and the Edit menu: what is made, that each is one
// step back, and what is said where it cannot be done.
#include "app/views/status_line.h"
#include "core/model/integrity.h"
#include "tests/app/window_rig.h"

#include <QClipboard>
#include <QGuiApplication>
#include <QLineEdit>
#include <QMenuBar>
#include <QTest>

#include <gtest/gtest.h>

namespace streamwright::test::edit_actions {

QAction* find_action(const QList<QAction*>& actions, const QString& words) {
    for (auto* action : actions) {
        if (action->menu())
            if (auto* inner = find_action(action->menu()->actions(), words)) return inner;
        if (action->text().remove('&') == words) return action;
    }
    return nullptr;
}

/// A computer cabled to an encoder, and a switch that the encoder's network goes to.
class EditActions : public testing::Test {
protected:
    void SetUp() override {
        rig.drop_type("pc", {50, 80});
        rig.drop_type("tern-encoder", {150, 80});
        rig.drop_type("switch-access-8-poe", {260, 85});
        pc = tag_of("pc"), encoder = tag_of("tern-encoder"), network_switch = tag_of("switch-access-8-poe");
        rig.look_at();
        rig.drag(rig.lug(pc, "hdmi-out-1"), rig.lug(encoder, "hdmi-in"));
        rig.drag(rig.lug(encoder, "net"), rig.lug(network_switch, "1"));
        ASSERT_EQ(rig.design().cables.size(), 2u);
        rig.selection().clear();
        QGuiApplication::clipboard()->setText({});
        rig.viewport().setFocus();
    }
    std::string tag_of(const std::string& type) {
        for (const auto& device : rig.design().devices)
            if (device.type.text == type) return device.tag;
        throw std::runtime_error("no " + type);
    }
    void choose(std::initializer_list<std::string> tags) {
        std::set<app::Chosen> chosen;
        for (const auto& tag : tags) chosen.insert(app::Chosen(rig.device(tag).id));
        rig.selection().set(std::move(chosen));
    }
    void menu(const QString& words) {
        auto* action = find_action(rig.window().menuBar()->actions(), words);
        ASSERT_NE(action, nullptr) << words.toStdString();
        action->trigger();
    }
    model::SheetPoint place(model::DeviceId id) { return rig.design().places.find({rig.viewport().sheet(), id})->at; }
    model::SheetPoint place(const std::string& tag) { return place(rig.device(tag).id); }
    int edits() { return rig.document().history().count(); }

    WindowRig rig;
    std::string pc, encoder, network_switch;
};

TEST_F(EditActions, CopiedAndPastedByKeysAtThePointer) {
    rig.drag(rig.at({2, 20}), rig.at({200, 140}));
    ASSERT_EQ(rig.selection().of<model::DeviceId>().size(), 2u);
    rig.key(Qt::Key_C, Qt::ControlModifier);
    EXPECT_EQ(edits(), 5) << "copying changes nothing";
    const auto before = rig.design();
    QTest::mouseMove(&rig.viewport(), rig.at({40, 150}));
    rig.key(Qt::Key_V, Qt::ControlModifier);
    EXPECT_EQ(edits(), 6);
    EXPECT_EQ(rig.design().devices.size(), 5u);
    EXPECT_EQ(rig.design().cables.size(), 3u) << "the cable between the two, not the one to the switch";
    EXPECT_TRUE(model::broken_bonds(rig.design()).empty());
    const auto pasted = rig.selection().of<model::DeviceId>();
    ASSERT_EQ(pasted.size(), 2u) << "the copies are selected";
    for (const auto id : pasted) {
        const auto& row = *rig.design().devices.find(id);
        EXPECT_TRUE(row.tag != pc && row.tag != encoder) << row.tag;
        const bool is_pc = row.type.text == "pc";
        EXPECT_GT(place(id).y, place(is_pc ? pc : encoder).y);
        if (is_pc) {
            EXPECT_EQ(place(id).x, app::from_mm(40.0)) << "the left plate stands at the pointer";
        }
    }
    rig.document().history().undo();
    EXPECT_TRUE(rig.design() == before) << "one step back";
}

TEST_F(EditActions, PastedTwiceAtOnePlaceHidesNothing) {
    choose({pc});
    menu("Copy");
    QTest::mouseMove(&rig.viewport(), rig.at({40, 150}));
    menu("Paste");
    const auto first = place(rig.selection().of<model::DeviceId>().front());
    menu("Paste");
    const auto second = place(rig.selection().of<model::DeviceId>().front());
    EXPECT_NE(first, second);
    EXPECT_EQ(rig.design().devices.size(), 5u);
}

TEST_F(EditActions, CutTakesAwayAndPasteBringsBackUnderTheSameTag) {
    choose({pc});
    rig.key(Qt::Key_X, Qt::ControlModifier);
    EXPECT_EQ(edits(), 6);
    EXPECT_EQ(rig.design().devices.size(), 2u);
    EXPECT_EQ(rig.design().cables.size(), 1u);
    rig.key(Qt::Key_V, Qt::ControlModifier);
    EXPECT_EQ(rig.device(pc).type.text, "pc");
    rig.document().history().undo();
    rig.document().history().undo();
    EXPECT_EQ(rig.design().devices.size(), 3u);
    EXPECT_EQ(rig.design().cables.size(), 2u);
}

TEST_F(EditActions, DuplicateStandsBesideAndLeavesTheClipboardAlone) {
    QGuiApplication::clipboard()->setText("mine");
    choose({pc, encoder});
    rig.key(Qt::Key_D, Qt::ControlModifier | Qt::ShiftModifier);
    EXPECT_EQ(edits(), 6);
    ASSERT_EQ(rig.design().devices.size(), 5u);
    EXPECT_EQ(rig.design().cables.size(), 3u);
    EXPECT_EQ(QGuiApplication::clipboard()->text(), "mine");
    for (const auto id : rig.selection().of<model::DeviceId>()) {
        const auto original = place(rig.design().devices.find(id)->type.text == "pc" ? pc : encoder);
        EXPECT_EQ(place(id).x - original.x, app::from_mm(10.0));
        EXPECT_EQ(place(id).y - original.y, app::from_mm(10.0));
    }
    rig.document().history().undo();
    EXPECT_EQ(rig.design().devices.size(), 3u);
}

TEST_F(EditActions, GarbageGivesASentenceAndChangesNothing) {
    const auto before = rig.design();
    for (const char* text : {"", "a shopping list", "{\"format\":\"streamwright\"}"}) {
        QGuiApplication::clipboard()->setText(text);
        rig.viewport().tell({});
        rig.key(Qt::Key_V, Qt::ControlModifier);
        EXPECT_EQ(rig.window().status().words(),
                  "The clipboard holds no devices to paste; copy some on a sheet first.");
    }
    EXPECT_TRUE(rig.design() == before);
    EXPECT_EQ(edits(), 5);
}

TEST_F(EditActions, WithNothingSelectedTheyAskForIt) {
    QGuiApplication::clipboard()->setText("mine");
    for (const char* words : {"Copy", "Cut", "Duplicate"}) {
        rig.viewport().tell({});
        menu(words);
        EXPECT_EQ(rig.window().status().words(), "Select the devices first.") << words;
    }
    menu("Select similar");
    EXPECT_EQ(rig.window().status().words(), "Select a device or a cable first.");
    menu("Left edges");
    EXPECT_EQ(rig.window().status().words(), "Select two devices or more to align them.");
    EXPECT_EQ(QGuiApplication::clipboard()->text(), "mine");
    EXPECT_EQ(edits(), 5);
}

TEST_F(EditActions, KeysInATextFieldStayTheFields) {
    rig.click(rig.title(pc));
    rig.key(Qt::Key_F2);
    auto* line = rig.viewport().findChild<QLineEdit*>();
    ASSERT_NE(line, nullptr);
    line->selectAll();
    QTest::keyClick(line, Qt::Key_C, Qt::ControlModifier);
    EXPECT_EQ(QGuiApplication::clipboard()->text().toStdString(), pc);
    QTest::keyClick(line, Qt::Key_Escape);
}

TEST_F(EditActions, SelectSimilarTakesAllOfTheType) {
    rig.drop_type("pc", {50, 160});
    choose({pc});
    rig.key(Qt::Key_A, Qt::ControlModifier | Qt::ShiftModifier);
    const auto similar = rig.selection().of<model::DeviceId>();
    EXPECT_EQ(similar.size(), 2u);
    for (const auto id : similar) EXPECT_EQ(rig.design().devices.find(id)->type.text, "pc");
    rig.selection().set(app::Chosen(rig.design().cables.begin()->id));
    menu("Select similar");
    EXPECT_EQ(rig.selection().of<model::CableId>().size(), 1u) << "the other cable is of another type";
}

TEST_F(EditActions, AlignIsOneStepAndTheCablesFollow) {
    rig.drag(rig.title(encoder), rig.title(encoder) + QPoint(0, 80));
    choose({pc, encoder, network_switch});
    const auto before = rig.design();
    const int done = edits();
    menu("Top edges");
    EXPECT_EQ(edits(), done + 1);
    EXPECT_EQ(place(encoder).y, place(pc).y);
    EXPECT_EQ(place(network_switch).y, place(pc).y);
    for (const auto& cable : rig.viewport().scene().cables()) {
        const auto& points = cable.line.points;
        for (std::size_t i = 1; i < points.size(); ++i)
            EXPECT_TRUE(points[i].x == points[i - 1].x || points[i].y == points[i - 1].y) << "level or upright";
    }
    rig.document().history().undo();
    EXPECT_TRUE(rig.design() == before);
}

TEST_F(EditActions, EqualGapsMoveThePlateBetween) {
    choose({pc, encoder, network_switch});
    rig.drag(rig.title(encoder), rig.title(encoder) + QPoint(40, 0));
    choose({pc, encoder, network_switch});
    menu("Equal gaps across");
    const auto body = [&](const std::string& tag) {
        return rig.viewport().scene().plate(rig.device(tag).id)->plate.body;
    };
    const auto left = body(encoder).at.x - (body(pc).at.x + body(pc).width);
    const auto right = body(network_switch).at.x - (body(encoder).at.x + body(encoder).width);
    EXPECT_NEAR(app::to_mm(left), app::to_mm(right), 1.0) << "but for the grid";
}

}  // namespace streamwright::test::edit_actions
