// Deltas: applied and undone they lead there and back; joined they do what both did.
#include "core/model/delta.h"

#include "tests/support/design_builder.h"
#include "tests/support/random_edit.h"

#include <gtest/gtest.h>

namespace {

using namespace streamwright;
using namespace streamwright::model;

TEST(Delta, DifferenceOfEqualDesignsIsEmpty) {
    test::DesignBuilder b;
    b.device(test::types::encoder(), "ENC-1");
    Design copy = b.design;
    copy.devices.put(*copy.devices.begin());  // another chunk, the same row
    EXPECT_TRUE(difference(b.design, copy).empty());
}

TEST(Delta, AnEditThatChangesNothingVanishes) {
    test::DesignBuilder b;
    const auto id = b.device(test::types::encoder(), "ENC-1");
    Editing editing(b.design);
    auto row = *b.design.devices.find(id);
    row.tag = "other";
    editing.put(row);
    row.tag = "ENC-1";
    editing.put(row);
    EXPECT_TRUE(editing.done().empty());
}

TEST(Delta, HoldsRowsBeforeAndAfter) {
    test::DesignBuilder b;
    const auto kept = b.device(test::types::encoder(), "ENC-1");
    const auto gone = b.device(test::types::decoder(), "DEC-1");
    Editing editing(b.design);
    auto row = *b.design.devices.find(kept);
    row.tag = "ENC-9";
    editing.put(row);
    editing.erase<Device>(gone);
    const auto delta = editing.done();
    ASSERT_EQ(delta.of<Device>().size(), 2U);
    for (const auto& change : delta.of<Device>()) {
        if (change.key() == gone) {
            EXPECT_EQ(change.before->tag, "DEC-1");
            EXPECT_FALSE(change.after.has_value());
        } else {
            EXPECT_EQ(change.before->tag, "ENC-1");
            EXPECT_EQ(change.after->tag, "ENC-9");
        }
    }
}

TEST(Delta, RandomDeltasUndoRedoAndJoin) {
    const auto library = test::types::all();
    std::mt19937_64 random(11);
    Design design;
    const Design empty;
    Delta all;
    std::vector<Delta> done;
    for (int step = 0; step < 600; ++step) {
        const auto edit = test::random_edit(design, library, random);
        ASSERT_TRUE(edit.has_value());
        const auto delta = make_edit(design, *edit);
        ASSERT_TRUE(delta.ok());
        apply(design, *delta);
        all = joined(all, *delta);
        done.push_back(*delta);
    }
    Design at_once = empty;
    apply(at_once, all);
    EXPECT_TRUE(at_once == design);
    EXPECT_TRUE(difference(empty, design) == all);
    EXPECT_TRUE(all.inverse().inverse() == all);
    for (auto at = done.rbegin(); at != done.rend(); ++at) apply(design, at->inverse());
    EXPECT_TRUE(design == empty);
}

TEST(Delta, JoinedWithItsInverseIsNothing) {
    test::DesignBuilder b;
    Editing editing(b.design);
    editing.put(Preset{PresetId(5), 1, "Lecture", {}, {}});
    const auto delta = editing.done();
    EXPECT_FALSE(delta.empty());
    EXPECT_TRUE(joined(delta, delta.inverse()).empty());
}

}  // namespace
