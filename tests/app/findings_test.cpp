// What can be done about findings: accepted with a reason, taken back, shown, cured all of a kind; by keys, buttons and
// menus, with the dialogs that they ask in.
#include "app/panels/accept_dialog.h"
#include "app/panels/finding_actions.h"
#include "app/panels/findings_panel.h"
#include "app/panels/settle_dialog.h"
#include "app/views/status_line.h"
#include "core/io/design_file.h"
#include "tests/app/window_rig.h"

#include <QAction>
#include <QApplication>
#include <QContextMenuEvent>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QMenu>
#include <QPlainTextEdit>
#include <QPushButton>
#include <QTest>
#include <QTimer>
#include <QToolButton>
#include <QTreeWidget>

#include <gtest/gtest.h>

namespace streamwright::test::findings_list {

/// Does this in the dialog that opens next; one that is still open afterwards is dropped, so that no test hangs.
template <class Dialog, class Act>
void in_next(Act act) {
    auto* timer = new QTimer(qApp);
    QObject::connect(timer, &QTimer::timeout, timer, [timer, act] {
        auto* dialog = qobject_cast<Dialog*>(QApplication::activeModalWidget());
        if (!dialog || !dialog->isActiveWindow()) return;  // until then keys still go to the window behind
        timer->stop();
        timer->deleteLater();
        act(*dialog);
        if (dialog->isVisible()) dialog->reject();
    });
    timer->start(5);
}

class Findings : public testing::Test {
protected:
    app::FindingsPanel& panel() { return rig.window().findings(); }
    QListView& list() { return panel().list(); }
    const app::FindingRow& row(int index) { return panel().model().row(index); }

    /// Encoders that send to one group: a chain of `count` - 1 pairs that share it.
    void crowd_group(int count) {
        for (int i = 0; i < count; ++i) rig.drop_type("tern-encoder", {60.0 + 80 * i, 60});
        for (const auto& device : rig.design().devices) {
            auto stream = model::Stream::blank(rig.document().ids().next<model::StreamId>());
            stream.encoder = device.id;
            stream.tag = model::next_stream_tag(rig.design());
            stream.group = base::parse_ipv4("239.192.1.1");
            stream.payload_rate = base::BitRate::from_count(800'000'000);
            ASSERT_TRUE(rig.document().edit(model::SetStream{stream}, "Add"));
        }
        ASSERT_EQ(rig.findings_of("group-used-twice"), count - 1);
    }
    /// Puts the list's cursor on the first finding of the rule that is not (or is) accepted, with the keyboard there.
    void stand_on(std::string_view rule, bool accepted = false) {
        panel().focus_list();
        for (int i = 0; i < panel().model().rowCount(); ++i)
            if (row(i).reported.finding.rule == rule && row(i).waived() == accepted) {
                list().setCurrentIndex(panel().model().index(i));
                return;
            }
        FAIL() << "no finding of " << rule;
    }
    void accept_current(const QString& reason, const QString& by) {
        bool seen = false;
        in_next<app::AcceptDialog>([&](app::AcceptDialog& dialog) {
            auto* text = dialog.findChild<QPlainTextEdit*>();
            auto* role = dialog.findChild<QLineEdit*>();
            text->selectAll();
            QTest::keyClick(text, Qt::Key_Backspace);
            QTest::keyClicks(text, reason);
            role->selectAll();
            QTest::keyClicks(role, by);
            QTest::keyClick(role, Qt::Key_Return);
            seen = true;
        });
        come_back();
        QTest::keyClick(&list(), Qt::Key_E, Qt::ControlModifier);
        ASSERT_TRUE(rig.wait_for([&] { return seen; }));
        come_back();
    }
    /// The platform of the tests leaves no window active after a dialog.
    void come_back() {
        ASSERT_TRUE(rig.wait_for([] { return !QApplication::activeModalWidget(); }));
        rig.window().activateWindow();
        list().setFocus();
        ASSERT_TRUE(rig.wait_for([&] { return rig.window().isActiveWindow() && list().hasFocus(); }));
    }
    QAction* action(const QString& words) {
        for (auto* each : panel().actions().all())
            if (each->text() == words) return each;
        return nullptr;
    }
    QMenu* menu() {
        for (auto* each : list().findChildren<QMenu*>("FindingMenu"))
            if (each->isVisible()) return each;
        return nullptr;
    }
    QStringList menu_words() {
        QStringList words;
        for (const auto* each : menu()->actions())
            if (!each->isSeparator() && each->isVisible()) words << each->text();
        return words;
    }

    WindowRig rig;
};

TEST_F(Findings, AcceptingAsksForAReasonAndIsOneUndoableEdit) {
    crowd_group(2);
    stand_on("group-used-twice");
    const auto before = rig.design();
    const int edits = rig.document().history().count(), errors = panel().model().counts().error;
    QString refusal;
    in_next<app::AcceptDialog>([&](app::AcceptDialog& dialog) {
        auto* reason = dialog.findChild<QPlainTextEdit*>();
        EXPECT_TRUE(reason->hasFocus());
        EXPECT_FALSE(reason->accessibleName().isEmpty());
        QTest::keyClicks(reason, "  ");
        QTest::keyClick(dialog.findChild<QLineEdit*>(), Qt::Key_Return);
        refusal = dialog.findChild<QLabel*>("error")->isVisible() ? dialog.findChild<QLabel*>("error")->text() : "";
    });
    QTest::keyClick(&list(), Qt::Key_E, Qt::ControlModifier);
    ASSERT_TRUE(rig.wait_for([&] { return !QApplication::activeModalWidget() && !refusal.isEmpty(); }));
    EXPECT_EQ(refusal, "An accepted finding needs a reason: say why it may stand.");
    EXPECT_EQ(rig.design(), before) << "a refused and a dropped dialog change nothing";

    accept_current("Both carry the same <b>picture</b>.", "Head of AV");
    ASSERT_EQ(rig.design().waivers.size(), 1u);
    const auto& waiver = *rig.design().waivers.begin();
    EXPECT_EQ(waiver.reason, "Both carry the same <b>picture</b>.");
    EXPECT_EQ(waiver.by, "Head of AV");
    EXPECT_EQ(waiver.rule, "group-used-twice");
    EXPECT_EQ(waiver.subjects.size(), 2u);
    EXPECT_EQ(rig.document().history().count(), edits + 1);
    EXPECT_EQ(panel().model().counts().error, errors - 1) << "accepted ones are not counted";
    stand_on("group-used-twice", true);
    const auto at = list().currentIndex();
    EXPECT_EQ(row(at.row()).acceptance, "Accepted by Head of AV: Both carry the same <b>picture</b>.");
    EXPECT_TRUE(at.data(Qt::AccessibleTextRole).toString().endsWith(", accepted"));
    EXPECT_TRUE(at.data(Qt::AccessibleDescriptionRole).toString().contains("<b>picture</b>"));
    EXPECT_TRUE(at.data(Qt::ToolTipRole).toString().contains("&lt;b&gt;picture")) << "shown as typed, not as markup";

    const auto file = rig.folder() / "accepted.streamwright";
    ASSERT_TRUE(rig.document().save_as(file).ok());
    EXPECT_EQ(io::open_design(file)->design.waivers, rig.design().waivers) << "kept in the file";
    rig.document().history().undo();
    EXPECT_EQ(rig.design(), before);
    EXPECT_EQ(panel().model().counts().error, errors);
}

TEST_F(Findings, AChangedReasonIsSeenAndWithdrawingTakesItAway) {
    crowd_group(2);
    stand_on("group-used-twice");
    EXPECT_FALSE(action("Withdraw acceptance")->isVisible()) << "there is none";
    accept_current("For the rehearsal.", "Designer");
    stand_on("group-used-twice", true);
    EXPECT_NE(action("Change the reason…"), nullptr);
    ASSERT_TRUE(rig.wait_for([&] { return !rig.document().analyser().deferred_pending(); }));
    int changed = 0;
    QObject::connect(&panel().model(), &QAbstractItemModel::dataChanged, &list(), [&] { ++changed; });
    accept_current("For the opening night.", "Head of AV");
    EXPECT_EQ(changed, 1);
    EXPECT_EQ(row(list().currentIndex().row()).acceptance, "Accepted by Head of AV: For the opening night.");
    EXPECT_EQ(rig.design().waivers.size(), 1u) << "the same one, changed";
    QTest::keyClick(&list(), Qt::Key_Delete);
    ASSERT_TRUE(rig.wait_for([&] { return rig.design().waivers.empty(); }));
    EXPECT_FALSE(action("Withdraw acceptance")->isVisible());
    rig.document().history().undo();
    EXPECT_EQ(rig.design().waivers.begin()->reason, "For the opening night.");
    EXPECT_EQ(rig.design().devices.size(), 2u) << "Delete in the list deletes no device";
}

TEST_F(Findings, TheContextMenuOpensByKeyAndByMouseAndOffersAll) {
    crowd_group(2);
    stand_on("group-used-twice");
    QTest::keyClick(&list(), Qt::Key_F10, Qt::ShiftModifier);
    ASSERT_TRUE(rig.wait_for([&] { return menu() != nullptr; }));
    const auto remedy = row(list().currentIndex().row()).remedies.front();
    EXPECT_EQ(menu_words(),
              QStringList({remedy, "Apply to all of this kind…", "Accept with a reason…", "Show on the canvas"}));
    menu()->close();
    ASSERT_TRUE(rig.wait_for([&] { return menu() == nullptr; }));
    const auto box = list().visualRect(list().currentIndex());
    QContextMenuEvent by_key(QContextMenuEvent::Keyboard, {}, list().mapToGlobal(QPoint(0, 0)));
    QApplication::sendEvent(&list(), &by_key);
    ASSERT_NE(menu(), nullptr);
    menu()->close();
    ASSERT_TRUE(rig.wait_for([&] { return menu() == nullptr; }));
    QContextMenuEvent by_mouse(QContextMenuEvent::Mouse, box.center(), list().viewport()->mapToGlobal(box.center()));
    QApplication::sendEvent(list().viewport(), &by_mouse);
    ASSERT_NE(menu(), nullptr);
    menu()->actions().front()->trigger();
    ASSERT_TRUE(rig.wait_for([&] { return rig.findings_of("group-used-twice") == 0; })) << "the remedy is made";
    if (auto* open = menu()) open->close();
}

TEST_F(Findings, TheButtonsAreThereForTheKeyboardAndGiveWayOnASmallScreen) {
    crowd_group(2);
    stand_on("group-used-twice");
    QStringList seen;
    for (auto* button : panel().findChildren<QToolButton*>())
        if (button->isVisible() && button->defaultAction()) {
            seen << button->text();
            EXPECT_TRUE(button->focusPolicy() & Qt::TabFocus);
        }
    EXPECT_EQ(seen, QStringList({"Show on the canvas", "Accept with a reason…", "Apply to all of this kind…"}));
    rig.window().resize(1024, 700);
    ASSERT_TRUE(rig.wait_for([&] { return panel().width() < 900; }));
    EXPECT_LE(rig.window().width(), 1024);
    for (auto* button : panel().findChildren<QToolButton*>())
        EXPECT_FALSE(button->isVisible() && button->defaultAction()) << button->text().toStdString();
}

TEST_F(Findings, ShownOnTheCanvasAllItsSubjectsAreSelected) {
    crowd_group(2);
    stand_on("group-used-twice");
    rig.selection().clear();
    rig.look_at({-900, -900});
    QTest::keyClick(&list(), Qt::Key_Space);
    ASSERT_TRUE(rig.wait_for([&] { return rig.viewport().hasFocus(); }));
    EXPECT_EQ(rig.selection().of<model::StreamId>().size(), 2u);
}

TEST_F(Findings, AllOfAKindAreCuredByOneEditAfterAPreview) {
    crowd_group(4);
    stand_on("group-used-twice");
    const auto before = rig.design();
    const int edits = rig.document().history().count();
    int lines = 0;
    in_next<app::SettleDialog>([&](app::SettleDialog& dialog) {
        ASSERT_TRUE(rig.wait_for([&] { return !dialog.working(); }));
        lines = dialog.list().topLevelItemCount();
        for (int i = 0; i < lines; ++i) {
            const auto& line = *dialog.list().topLevelItem(i);
            EXPECT_FALSE(line.text(0).isEmpty());
            EXPECT_TRUE(line.text(2).startsWith("Will be settled")) << line.text(2).toStdString();
        }
        EXPECT_EQ(rig.design(), before) << "a preview changes nothing";
        QTest::keyClick(&dialog, Qt::Key_Return);
    });
    QTest::keyClick(&list(), Qt::Key_Return, Qt::ControlModifier);
    ASSERT_TRUE(rig.wait_for([&] { return rig.findings_of("group-used-twice") == 0; }));
    EXPECT_EQ(lines, 4) << "three pairs, and the pair that is left of the first two";
    EXPECT_EQ(rig.document().history().count(), edits + 1) << "one edit";
    EXPECT_EQ(rig.window().status().words(), "3 settled; none of this kind remain.");
    ASSERT_TRUE(rig.wait_for([&] { return !rig.document().analyser().deferred_pending(); }));
    EXPECT_EQ(rig.window().status().words(), "3 settled; none of this kind remain.") << "it stands to be read";
    rig.document().history().undo();
    EXPECT_EQ(rig.design(), before);
}

TEST_F(Findings, OnlyWhatIsTickedIsCured) {
    crowd_group(4);
    stand_on("group-used-twice");
    in_next<app::SettleDialog>([&](app::SettleDialog& dialog) {
        ASSERT_TRUE(rig.wait_for([&] { return !dialog.working(); }));
        auto& tree = dialog.list();
        tree.setCurrentItem(tree.topLevelItem(3));
        QTest::keyClick(&tree, Qt::Key_Space);
        EXPECT_EQ(tree.topLevelItem(3)->checkState(0), Qt::Unchecked);
        QStringList words;
        for (const auto* button : dialog.findChildren<QPushButton*>()) words << button->text();
        EXPECT_TRUE(words.contains("Apply 3")) << words.join(' ').toStdString();
        QTest::keyClick(&dialog, Qt::Key_Return);
        ASSERT_TRUE(rig.wait_for([&] { return !dialog.isVisible(); }));
    });
    QTest::keyClick(&list(), Qt::Key_Return, Qt::ControlModifier);
    ASSERT_TRUE(rig.wait_for([&] { return rig.findings_of("group-used-twice") == 1; }));
    EXPECT_EQ(rig.window().status().words(), "2 settled; 1 of this kind remain.");
}

TEST_F(Findings, HundredsMayBeStoppedHalfWay) {
    crowd_group(2);
    // 250 more streams of one encoder to the group that is taken already.
    const auto encoder = rig.design().devices.begin()->id;
    auto many = rig.design();
    for (int i = 0; i < 250; ++i) {
        auto stream = model::Stream::blank(rig.document().ids().next<model::StreamId>());
        stream.encoder = encoder;
        stream.tag = "S-" + std::to_string(1000 + i);
        stream.group = base::parse_ipv4("239.192.1.1");
        stream.payload_rate = base::BitRate::from_count(1'000'000);
        many.streams.put(stream);
    }
    ASSERT_TRUE(rig.document().commit(model::difference(rig.design(), many), "Add"));
    ASSERT_GE(rig.findings_of("group-used-twice"), 250);
    stand_on("group-used-twice");
    const auto before = rig.design();
    bool was_working = false, seen = false;
    in_next<app::SettleDialog>([&](app::SettleDialog& dialog) {
        was_working = dialog.working();
        QTest::keyClick(&dialog, Qt::Key_Escape);
        EXPECT_FALSE(dialog.isVisible());
        seen = true;
    });
    QTest::keyClick(&list(), Qt::Key_Return, Qt::ControlModifier);
    ASSERT_TRUE(rig.wait_for([&] { return seen; }));
    EXPECT_TRUE(was_working);
    EXPECT_EQ(rig.design(), before);
}

}  // namespace streamwright::test::findings_list
