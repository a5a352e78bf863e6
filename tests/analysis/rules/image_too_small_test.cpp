// Heights and distances: AVIXA V202.01, rows DSP-004 and DSP-006 to DSP-008 of the reference values.
#include "tests/support/wall_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::image_too_small_test {

using standards::ElementHeight;
using standards::ViewingCategory;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

constexpr auto rule = "image-too-small";

base::Length um(std::int64_t count) { return base::Length::from_count(count); }

/// The clean design with its first display in a room.
struct ViewedRoom {
    CleanDesign c = clean_design();
    model::RoomId room = c.b.room("1.01", "Hall");

    ViewedRoom(base::Length height, base::Length farthest, ViewingCategory viewing, std::optional<int> percent) {
        stand(c.display, "test.viewed", height);
        c.b.change<model::Room>(room, [&](auto& row) {
            row.farthest_viewer = farthest;
            row.viewing = viewing;
            if (percent) row.element_height = ElementHeight::from_count(*percent * 1000);
        });
    }
    void stand(model::DeviceId id, const std::string& key, std::optional<base::Length> height) {
        auto type = types::make_display();
        type.key = {key};
        type.image = catalogue::ImageFacts{1920, 1080, {}, {}};
        if (height) type.image->width = type.image->height = height;
        c.b.embed(std::make_shared<const catalogue::DeviceType>(type));
        c.b.change<model::Device>(id, [&](auto& row) { row.room = room, row.type = {key}; });
    }
    const model::Design& design() const { return c.design(); }
};

// DSP-006: 8 m and 3 % ask for 1.333333 m, rounded up to the micrometre: 1.333334 m.
TEST(ImageTooSmall, BasicDecisionMaking) {
    EXPECT_THAT(rules_found(ViewedRoom(um(1'333'334), um(8'000'000), ViewingCategory::basic, 3).design()), IsEmpty());
    const ViewedRoom small(um(1'333'333), um(8'000'000), ViewingCategory::basic, 3);
    EXPECT_THAT(rules_found(small.design()), ElementsAre(rule));
    EXPECT_EQ(finding_of(small.design(), rule).limit, base::Value(um(1'333'334)));
    EXPECT_EQ(finding_of(small.design(), rule).severity, analysis::Severity::advice);
}

// DSP-008: an 85-inch 16:9 image, 1058.5 mm high, reaches 6.351 m at 3 %.
TEST(ImageTooSmall, SaysHowFarTheImageReaches) {
    const ViewedRoom room(um(1'058'500), um(8'000'000), ViewingCategory::basic, 3);
    const auto finding = finding_of(room.design(), rule);
    EXPECT_EQ(finding.values.back(), base::Value(um(6'351'000)));
    EXPECT_THAT(english_sentence(room.design(), finding), HasSubstr("DSP-1 in Hall is 1.059 m high"));
    EXPECT_THAT(terms_of(room.design(), finding), ElementsAre("8 m / (200 x 3 %) = 1.333 m"));
    EXPECT_THAT(rules_found(ViewedRoom(um(1'058'500), um(6'351'000), ViewingCategory::basic, 3).design()), IsEmpty());
}

// DSP-004: 1500 mm and 1080 lines reach 4775 mm.
TEST(ImageTooSmall, AnalyticalDecisionMaking) {
    EXPECT_THAT(rules_found(ViewedRoom(um(1'500'000), um(4'775'000), ViewingCategory::analytical, {}).design()),
                IsEmpty());
    const ViewedRoom small(um(1'500'000), um(4'775'001), ViewingCategory::analytical, {});
    const auto finding = finding_of(small.design(), rule);
    EXPECT_EQ(finding.values.back(), base::Value(um(4'775'000)));
    EXPECT_THAT(terms_of(small.design(), finding), ElementsAre("4.775 m x 1080 lines / 3438 = 1.5 m"));
}

TEST(ImageTooSmall, SilentWhereAFactIsMissingOrNothingIsAsked) {
    const auto small = um(100'000), far = um(50'000'000);
    EXPECT_THAT(rules_found(ViewedRoom(small, far, ViewingCategory::basic, {}).design()), IsEmpty());
    EXPECT_THAT(rules_found(ViewedRoom(small, far, ViewingCategory::passive, 3).design()), IsEmpty());
    EXPECT_THAT(rules_found(ViewedRoom(small, far, ViewingCategory::full_motion, 3).design()), IsEmpty());
    ViewedRoom no_distance(small, far, ViewingCategory::basic, 3);
    no_distance.c.b.change<model::Room>(no_distance.room, [](auto& row) { row.farthest_viewer.reset(); });
    EXPECT_THAT(rules_found(no_distance.design()), IsEmpty());
}

TEST(ImageTooSmall, JudgesTheLargestImageOfTheRoom) {
    ViewedRoom room(um(2'000'000), um(8'000'000), ViewingCategory::basic, 3);
    room.stand(room.c.display2, "test.monitor", um(300'000));
    EXPECT_THAT(rules_found(room.design()), IsEmpty()) << "the small one is for the lectern";
    ViewedRoom both(um(600'000), um(8'000'000), ViewingCategory::basic, 3);
    both.stand(both.c.display2, "test.second", std::nullopt);
    EXPECT_THAT(rules_found(both.design()), IsEmpty()) << "one of unknown size may be the larger";
    both.stand(both.c.display2, "test.viewed", um(600'000));
    EXPECT_THAT(rules_found(both.design()), ElementsAre(rule, rule)) << "two of one size serve alike";
}

// Two rows of 680.4 mm with 1.8 mm between them are 1362.6 mm; 1362.6 x 200 x 3 % = 8175.6 mm.
TEST(ImageTooSmall, AWallIsOneImage) {
    WallRoom r;
    const auto hall = r.room.b.room("1.01", "Hall");
    const auto seen_from = [&](base::Length farthest) {
        r.room.b.change<model::Room>(hall, [&](auto& row) {
            row.viewing = ViewingCategory::basic;
            row.element_height = ElementHeight::from_count(3000);
            row.farthest_viewer = farthest;
        });
        return rules_found(r.design());
    };
    r.change_wall([&](auto& row) { row.room = hall; });
    EXPECT_THAT(seen_from(um(8'175'600)), IsEmpty());
    EXPECT_THAT(seen_from(um(8'175'601)), ElementsAre(rule));
    EXPECT_THAT(english_sentence(r.design(), finding_of(r.design(), rule)), HasSubstr("The image of Wall 1 in Hall"));
}

}  // namespace streamwright::test::image_too_small_test
