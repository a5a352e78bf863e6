// A wall made of the selected displays by the menu, changed, drawn and dissolved in the properties by mouse and keys;
// and the viewing of a room.
#include "app/panels/properties/properties_panel.h"
#include "app/panels/properties/wall_preview.h"
#include "app/style/theme.h"
#include "app/views/status_line.h"
#include "core/model/edits/set_wall.h"
#include "core/model/integrity.h"
#include "tests/app/window_rig.h"

#include <QComboBox>
#include <QImage>
#include <QLabel>
#include <QLineEdit>
#include <QMenuBar>
#include <QPushButton>
#include <QTest>

#include <gtest/gtest.h>

namespace streamwright::test::wall_editor {

class WallEditor : public testing::Test {
protected:
    /// Four tiles drawn two by two, and a switch, which shows no pictures.
    void SetUp() override {
        for (const auto& at : {QPointF{60, 60}, QPointF{120, 60}, QPointF{60, 110}, QPointF{120, 110}})
            rig.drop_type("wall-tile-55", at);
        rig.drop_type("switch-access-8-poe", {240, 85});
        rig.selection().clear();
    }
    void choose_all() {
        std::set<app::Chosen> chosen;
        for (const auto& device : rig.design().devices) chosen.insert(app::Chosen(device.id));
        rig.selection().set(std::move(chosen));
    }
    void menu(const QString& words) {
        for (auto* top : rig.window().menuBar()->actions())
            for (auto* action : top->menu()->actions())
                if (action->text().remove('&') == words) return action->trigger();
        FAIL() << words.toStdString();
    }
    void make_wall() {
        choose_all();
        menu("Make a wall of the selected displays");
        QCoreApplication::processEvents();
    }
    const model::Wall& wall() { return *rig.design().walls.begin(); }
    app::WallPreview& preview() {
        auto* found = rig.window().properties().form()->findChild<app::WallPreview*>();
        if (!found) throw std::runtime_error("no drawing of a wall");
        return *found;
    }
    void type(const QString& field, const QString& text) {
        auto& line = rig.field(field);
        line.setFocus();
        line.selectAll();
        QTest::keyClicks(&line, text.isEmpty() ? QStringLiteral(" ") : text);
        if (text.isEmpty()) QTest::keyClick(&line, Qt::Key_Backspace);
        QTest::keyClick(&line, Qt::Key_Return);
        QCoreApplication::processEvents();
    }
    /// Picks an entry of a list by its words, with the keys that open it.
    void pick(const QString& box, const QString& entry) {
        auto* list = rig.window().properties().form()->findChild<QComboBox*>(box);
        ASSERT_NE(list, nullptr) << box.toStdString();
        const int at = list->findText(entry);
        ASSERT_GE(at, 0) << entry.toStdString();
        list->setFocus();
        while (list->currentIndex() != at) {
            const int before = list->currentIndex();
            QTest::keyClick(list, before < at ? Qt::Key_Down : Qt::Key_Up);
            QCoreApplication::processEvents();
            list = rig.window().properties().form()->findChild<QComboBox*>(box);
            if (!list || list->currentIndex() == before) break;
        }
        QCoreApplication::processEvents();
    }
    void press(const QString& words) {
        for (auto* button : rig.window().properties().form()->findChildren<QPushButton*>())
            if (button->text() == words) {
                QTest::mouseClick(button, Qt::LeftButton);
                QCoreApplication::processEvents();
                return;
            }
        FAIL() << words.toStdString();
    }
    bool says(const QString& words) {
        for (const auto* label : rig.window().properties().form()->findChildren<QLabel*>())
            if (label->text().contains(words)) return true;
        return false;
    }
    std::string tag(std::size_t place) {
        return wall().tiles.at(place) ? rig.design().devices.find(*wall().tiles[place])->tag : std::string();
    }

    WindowRig rig;
};

TEST_F(WallEditor, MadeOfTheSelectedDisplaysAndShownAtOnce) {
    const auto before = rig.design();
    make_wall();
    ASSERT_EQ(rig.design().walls.size(), 1u);
    EXPECT_EQ(wall().columns, 2);
    EXPECT_EQ(wall().rows, 2);
    EXPECT_TRUE(model::broken_bonds(rig.design()).empty());
    EXPECT_EQ(rig.window().status().words(), "Wall 1 is made of 4 displays, 2 across and 2 down.");
    EXPECT_EQ(rig.selection().all(), (std::set<app::Chosen>{app::Chosen(*wall().tiles[0])}));
    const auto place = [&](std::size_t i) {
        return rig.design().places.find({rig.viewport().sheet(), *wall().tiles[i]})->at;
    };
    EXPECT_LT(place(0).x, place(1).x);
    EXPECT_EQ(place(0).y, place(1).y);
    EXPECT_LT(place(1).y, place(2).y) << "row by row, as drawn";
    EXPECT_TRUE(says("3840 x 2160")) << "the canvas of 2 x 2 tiles without gaps";
    rig.document().history().undo();
    EXPECT_TRUE(rig.design() == before) << "one step back";
}

TEST_F(WallEditor, SaysWhyWhereNoWallCanBeMade) {
    menu("Make a wall of the selected displays");
    EXPECT_EQ(rig.window().status().words(), "Select two displays or more that stand in no wall yet.");
    make_wall();
    make_wall();
    EXPECT_EQ(rig.design().walls.size(), 1u);
    EXPECT_EQ(rig.window().status().words(), "Select two displays or more that stand in no wall yet.");
}

TEST_F(WallEditor, ShapeGapsAndNameAreTyped) {
    make_wall();
    type("Wall", "Stage wall");
    EXPECT_EQ(wall().name, "Stage wall");
    type("Gap across", "1.8 mm");
    EXPECT_EQ(wall().gap_across, base::Length::from_count(1800));
    EXPECT_TRUE(says("3843 x 2160")) << "1.8 mm / 0.63 mm = 2.86, three pixels";
    type("Columns", "3");
    EXPECT_EQ(wall().columns, 3);
    EXPECT_EQ(wall().tiles.size(), 6u);
    type("Rows", "none");
    EXPECT_EQ(wall().rows, 2);
    EXPECT_TRUE(says("is no number of tiles"));
    type("Columns", "65");
    EXPECT_EQ(wall().columns, 3);
    EXPECT_TRUE(says("number of columns of the wall must be from 1 to 64"));
}

TEST_F(WallEditor, ATileIsMovedTakenOutAndFilledAgain) {
    make_wall();
    const auto first = tag(0), second = tag(1);
    pick("Place in wall", "column 2, row 1");
    EXPECT_EQ(tag(0), second);
    EXPECT_EQ(tag(1), first) << "they change places";
    press("Take out of the wall");
    EXPECT_EQ(tag(1), "");
    EXPECT_TRUE(rig.window().properties().form()->findChildren<app::WallPreview*>().isEmpty());
    rig.selection().set(app::Chosen(*wall().tiles[0]));
    QCoreApplication::processEvents();
    pick("Fill a place", QString::fromStdString(first));
    EXPECT_EQ(tag(1), first);
}

TEST_F(WallEditor, DissolvedItsDisplaysStay) {
    make_wall();
    press("Dissolve the wall");
    EXPECT_EQ(rig.design().walls.size(), 0u);
    EXPECT_EQ(rig.design().devices.size(), 5u);
    rig.document().history().undo();
    EXPECT_EQ(rig.design().walls.size(), 1u);
}

TEST_F(WallEditor, TheDrawingShowsWhoStandsWhereAndSelectsByClickAndKeys) {
    make_wall();
    EXPECT_EQ(preview().tile_words(1, 1), "1920, 1080\n1920 x 1080");
    EXPECT_LT(preview().tile_box(0, 0).right(), preview().tile_box(1, 0).left());
    EXPECT_LT(preview().tile_box(0, 0).bottom(), preview().tile_box(0, 1).top());
    QTest::mouseClick(&preview(), Qt::LeftButton, {}, preview().tile_box(1, 1).center().toPoint());
    QCoreApplication::processEvents();
    EXPECT_EQ(rig.selection().only(), app::Chosen(*wall().tiles[3]));
    preview().setFocus();
    QTest::keyClick(&preview(), Qt::Key_Right);
    QTest::keyClick(&preview(), Qt::Key_Return);
    QCoreApplication::processEvents();
    EXPECT_EQ(rig.selection().only(), app::Chosen(*wall().tiles[1]));
    EXPECT_EQ(preview().accessibleName(), "Drawing of Wall 1");
}

TEST_F(WallEditor, DrawnInBothThemesAtTwiceTheSize) {
    make_wall();
    std::vector<QImage> grabs;
    for (const auto choice : {app::ThemeChoice::light, app::ThemeChoice::dark}) {
        const auto theme = app::bundled_theme(choice);
        app::WallPreview drawn(rig.document(), rig.selection(), wall().id, theme);
        drawn.resize(600, drawn.heightForWidth(600));
        QImage image(drawn.size() * 2, QImage::Format_ARGB32);
        image.setDevicePixelRatio(2);
        image.fill(theme.ground("panel"));
        drawn.render(&image);
        // Inside a tile that is not selected, away from its words, the ground of a plate.
        const auto corner = (drawn.tile_box(1, 1).topLeft() + QPointF(8, 8)) * 2;
        EXPECT_EQ(image.pixelColor(corner.toPoint()), theme.ground("plate"));
        const auto selected = (drawn.tile_box(0, 0).topLeft() + QPointF(8, 8)) * 2;
        EXPECT_EQ(image.pixelColor(selected.toPoint()), theme.ground("selected"));
        grabs.push_back(image);
    }
    EXPECT_NE(grabs[0], grabs[1]);
}

TEST_F(WallEditor, TheDesignShowsItsWalls) {
    make_wall();
    rig.selection().clear();
    QCoreApplication::processEvents();
    type("Wall", "Lobby");
    EXPECT_EQ(wall().name, "Lobby");
    QTest::mouseClick(&preview(), Qt::LeftButton, {}, preview().tile_box(0, 1).center().toPoint());
    QCoreApplication::processEvents();
    EXPECT_EQ(rig.selection().only(), app::Chosen(*wall().tiles[2]));
}

TEST_F(WallEditor, TheViewingOfARoomIsTypedAndJudged) {
    menu("Add a room");
    QCoreApplication::processEvents();
    const auto frame = rig.design().room_frames.begin()->id;
    const auto room = rig.design().rooms.begin()->id;
    const auto display = *model::tiles_among(rig.design(),
                                             [&] {
                                                 std::vector<model::DeviceId> all;
                                                 for (const auto& device : rig.design().devices)
                                                     all.push_back(device.id);
                                                 return all;
                                             }())
                              .begin();
    ASSERT_TRUE(rig.document().edit(model::StandInRoom{{display}, room, {}, {}, {}}, "stand"));
    rig.selection().set(app::Chosen(frame));
    QCoreApplication::processEvents();
    type("Farthest viewer", "8 m");
    pick("Viewing task", "basic decision making");
    type("Smallest element", "2,5 %");
    const auto* row = rig.design().rooms.find(room);
    EXPECT_EQ(row->farthest_viewer, base::Length::from_count(8'000'000));
    EXPECT_EQ(row->viewing, standards::ViewingCategory::basic);
    EXPECT_EQ(row->element_height, standards::ElementHeight::from_count(2500));
    // 8 m / (200 x 2.5 %) = 1.6 m, and the tile is 0.68 m high.
    EXPECT_TRUE(rig.wait_for([&] { return rig.findings_of("image-too-small") == 1; }));
    type("Smallest element", "small");
    EXPECT_TRUE(says("is no share of the image height"));
    type("Farthest viewer", "");
    EXPECT_FALSE(rig.design().rooms.find(room)->farthest_viewer);
    EXPECT_TRUE(rig.wait_for([&] { return rig.findings_of("image-too-small") == 0; }));
}

}  // namespace streamwright::test::wall_editor
