#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::rack_unit_clash_test {

using model::RackFace;
using testing::ElementsAre;
using testing::IsEmpty;

struct RackOfTwo {
    CleanDesign c = clean_design();
    model::RackId rack = c.b.rack("North A");
    model::DeviceId first{0}, second{0};

    static catalogue::DeviceType unit(int height, std::optional<bool> full_depth) {
        auto type = types::make_rack_type();
        type.key = {"unit-" + std::to_string(height) + (full_depth ? *full_depth ? "-full" : "-half" : "")};
        type.kind = catalogue::DeviceKind::other;
        type.size.rack_units = height;
        type.size.full_depth = full_depth;
        return type;
    }
    model::DeviceId mount(const std::string& tag, int at, int height, RackFace face = RackFace::front,
                          std::optional<bool> full_depth = {}) {
        const auto id = c.b.device(unit(height, full_depth), tag);
        c.b.change<model::Device>(id, [&](auto& row) { row.rack = model::RackPlace{rack, at, face}; });
        return id;
    }
};

TEST(RackUnitClash, firesWhereUnitsOverlap) {
    // Field case F39: 4 RU at U2 and 4 RU at U3 overlap in U3, U4 and U5; U2 and U6 do not.
    RackOfTwo clash;
    clash.mount("AMP-1", 2, 4);
    clash.mount("AMP-2", 3, 4);
    EXPECT_THAT(rules_found(clash.c.design()), ElementsAre("rack-unit-clash"));
    const auto finding = finding_of(clash.c.design(), "rack-unit-clash");
    EXPECT_EQ(english_sentence(clash.c.design(), finding), "AMP-1 and AMP-2 both take U3 to U5 of their rack.");

    RackOfTwo apart;
    apart.mount("AMP-1", 2, 4);
    apart.mount("AMP-2", 6, 1);
    EXPECT_THAT(rules_found(apart.c.design()), IsEmpty());
}

TEST(RackUnitClash, keepsItsKeyWhicheverOfTheTwoStandsLower) {
    RackOfTwo clash;
    const auto first = clash.mount("AMP-1", 2, 4), second = clash.mount("AMP-2", 3, 4);
    const auto key = finding_of(clash.c.design(), "rack-unit-clash").key();
    clash.c.b.change<model::Device>(first, [](auto& row) { row.rack->unit = 3; });
    EXPECT_EQ(finding_of(clash.c.design(), "rack-unit-clash").key(), key);
    clash.c.b.change<model::Device>(second, [](auto& row) { row.rack->unit = 2; });
    EXPECT_EQ(finding_of(clash.c.design(), "rack-unit-clash").key(), key);
}

TEST(RackUnitClash, looksThroughTheRackOnlyWhereTheTypeSaysFullDepth) {
    RackOfTwo known;
    known.mount("AMP-1", 2, 2, RackFace::front, true);
    known.mount("PAN-1", 3, 1, RackFace::rear);
    EXPECT_THAT(rules_found(known.c.design()), ElementsAre("rack-unit-clash"));
    for (const std::optional<bool> depth : {std::optional<bool>(), std::optional<bool>(false)}) {
        RackOfTwo other;
        other.mount("AMP-1", 2, 2, RackFace::front, depth);
        other.mount("PAN-1", 3, 1, RackFace::rear, depth);
        EXPECT_THAT(rules_found(other.c.design()), IsEmpty());
    }
}

TEST(RackUnitClash, firesWhereAUnitReachesOutOfTheRack) {
    RackOfTwo top;
    const auto units = top.c.design().racks.find(top.rack)->units;
    top.mount("AMP-1", units - 1, 2);
    EXPECT_THAT(rules_found(top.c.design()), IsEmpty()) << "the topmost place";
    top.mount("AMP-2", units, 2, RackFace::rear);
    EXPECT_THAT(rules_found(top.c.design()), ElementsAre("rack-unit-clash"));
    // The lowest of two units stands in the topmost place n, so the upper one in n + 2 - 1.
    const auto n = std::to_string(units), over = std::to_string(units + 1);
    EXPECT_THAT(terms_of(top.c.design(), finding_of(top.c.design(), "rack-unit-clash")),
                ElementsAre("lowest unit " + n + " + height 2 - 1 = " + over));
}

TEST(RackUnitClash, isSilentForWhatHasNoHeight) {
    RackOfTwo shelf;
    shelf.mount("BOX-1", 2, 0);
    shelf.mount("BOX-2", 2, 0);
    EXPECT_THAT(rules_found(shelf.c.design()), IsEmpty());
}

}  // namespace streamwright::test::rack_unit_clash_test
