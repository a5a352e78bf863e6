// The catalogue's search: what is named so comes first, wherever its group usually stands.
#include "app/panels/catalogue_panel.h"

#include "tests/app/window_rig.h"

#include <QLineEdit>
#include <QTest>
#include <QTreeView>

#include <gtest/gtest.h>

namespace streamwright::test {

namespace catalogue_panel_test {

QString first_found(WindowRig& rig, const QString& words) {
    auto& catalogue = rig.window().catalogue();
    auto* search = catalogue.findChild<QLineEdit*>();
    search->clear();
    QTest::keyClicks(search, words);
    auto* list = catalogue.findChild<QTreeView*>();
    const auto* types = list->model();
    return types->index(0, 0, types->index(0, 0)).data().toString();
}

TEST(CataloguePanel, FindsTheNearestNameFirst) {
    WindowRig rig;
    EXPECT_EQ(first_found(rig, "keyboard and mouse"), "Keyboard and mouse");
    EXPECT_TRUE(first_found(rig, "switch, 24 x sfp+").startsWith("Switch, 24 x SFP+"));
    EXPECT_TRUE(first_found(rig, "display").startsWith("Display"));
    EXPECT_EQ(first_found(rig, "sfp+ poe 24").left(6), "Switch") << "words found here and there still answer";
}

}  // namespace catalogue_panel_test

}  // namespace streamwright::test
