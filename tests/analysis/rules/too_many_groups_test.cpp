#include "tests/analysis/rules/tree_rooms.h"

#include <gmock/gmock.h>

namespace streamwright::test::too_many_groups_test {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

/// Decoder 1 of a type with this many inputs and this limit; each input is shown a stream, of the same group or not.
CleanDesign joining(int inputs, std::optional<int> limit, bool one_group = false) {
    auto c = clean_design();
    change_type(c, c.decoder, [&](auto& type) {
        type.codec->most_groups = limit;
        while (static_cast<int>(type.codec->inputs.size()) < inputs)
            type.codec->inputs.push_back({{"w" + std::to_string(type.codec->inputs.size())}, "", {}});
    });
    for (int i = 1; i < inputs; ++i) {
        const auto group = "239.192.7." + std::to_string(one_group ? 1 : i);
        const auto stream = c.b.stream(c.encoder, base::BitRate::from_count(1'000'000), group);
        c.b.subscribe(c.preset, stream, c.decoder, "w" + std::to_string(i));
    }
    return c;
}

// Field case F09: 25 groups where 20 may be joined.
TEST(TooManyGroups, firesJustAboveTheLimit) {
    EXPECT_THAT(rules_found(joining(20, 20).design()), IsEmpty());
    EXPECT_THAT(rules_found(joining(21, 20).design()), ElementsAre("too-many-groups"));
    const auto design = joining(25, 20).design();
    EXPECT_THAT(rules_found(design), ElementsAre("too-many-groups"));
    EXPECT_THAT(english_sentence(design, finding_of(design, "too-many-groups")),
                HasSubstr("joins 25 groups in preset Lecture, and its type joins 20 at once: 5 too many"));
}

TEST(TooManyGroups, isSilentWhereTheTypeStatesNoLimit) {
    EXPECT_THAT(rules_found(joining(25, std::nullopt).design()), IsEmpty());
}

TEST(TooManyGroups, countsAGroupOnce) {
    const auto rules = rules_found(joining(3, 2, true).design());
    EXPECT_EQ(std::count(rules.begin(), rules.end(), "too-many-groups"), 0);
}

}  // namespace streamwright::test::too_many_groups_test
