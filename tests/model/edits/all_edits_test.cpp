// All verbs together: thousands of random edits leave the design sound, undo exactly, and draw every verb.
#include "tests/model/edits/edit_expect.h"
#include "tests/support/random_edit.h"

#include <algorithm>
#include <set>

namespace {

using namespace streamwright;
using namespace streamwright::model;

TEST(AllEdits, NamesAreAlphabeticalAndOneForEachVerb) {
    const auto names = edit_names();
    EXPECT_EQ(names.size(), std::variant_size_v<AnyEdit>);
    EXPECT_TRUE(std::is_sorted(names.begin(), names.end()));
    EXPECT_EQ(std::set<std::string_view>(names.begin(), names.end()).size(), names.size());
}

TEST(AllEdits, RandomEditsKeepTheDesignSoundAndUndoExactly) {
    const auto library = test::types::all();
    std::set<std::size_t> drawn;
    for (const std::uint64_t seed : {1U, 2U, 3U, 4U, 5U, 6U}) {
        std::mt19937_64 random(seed);
        Design design;
        for (int step = 0; step < 700; ++step) {
            const auto edit = test::random_edit(design, library, random);
            ASSERT_TRUE(edit.has_value());
            drawn.insert(edit->index());
            const Design before = design;
            const auto delta = make_edit(design, *edit);
            ASSERT_TRUE(delta.ok());
            apply(design, *delta);
            const auto broken = broken_bonds(design);
            ASSERT_TRUE(broken.empty()) << edit_names()[edit->index()] << ": " << broken.front().english();
            Design undone = design;
            apply(undone, delta->inverse());
            ASSERT_TRUE(undone == before) << edit_names()[edit->index()];
        }
        EXPECT_GT(design.devices.size(), 10U);
        EXPECT_GT(design.cables.size(), 10U);
    }
    EXPECT_EQ(drawn.size(), std::variant_size_v<AnyEdit>) << "a verb was never drawn";
}

TEST(AllEdits, TheSameSeedDrawsTheSameEdits) {
    const auto library = test::types::all();
    Design one, two;
    std::mt19937_64 first(9), second(9);
    for (int step = 0; step < 100; ++step) {
        const auto a = test::random_edit(one, library, first);
        const auto b = test::random_edit(two, library, second);
        ASSERT_TRUE(a && b);
        ASSERT_EQ(a->index(), b->index());
        apply(one, make_edit(one, *a).value());
        apply(two, make_edit(two, *b).value());
        ASSERT_TRUE(one == two);
    }
}

}  // namespace
