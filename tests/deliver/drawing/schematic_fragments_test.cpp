// Fragments: what a plate, a cable, a flag and a badge consist of, and where.
#include "core/deliver/drawing/schematic_fragments.h"

#include "tests/deliver/small_venue.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace streamwright::test::fragments {

using deliver::Fragment;
using deliver::Path;
using deliver::Scene;
using deliver::TextLine;
using DrawRole = deliver::Role;
using namespace base::literals;

struct Drawn {
    SmallVenue venue;
    Delivered delivered{venue.b.design};
    Scene scene{delivered.design, delivered.analysis.facts, venue.sheet, analysis::english(delivered.design)};

    Fragment device(model::DeviceId id) const {
        return deliver::device_fragment(scene, *delivered.design.places.find({venue.sheet, id}));
    }
    Fragment cable(model::CableId id) const {
        return deliver::cable_fragment(scene, model::CableLine::blank({venue.sheet, id}));
    }
};

std::vector<std::string> texts(const Fragment& fragment) {
    std::vector<std::string> found;
    for (const auto& shape : fragment.shapes)
        if (const auto* line = std::get_if<TextLine>(&shape)) found.push_back(line->text);
    return found;
}

std::vector<Path> paths(const Fragment& fragment, DrawRole role) {
    std::vector<Path> found;
    for (const auto& shape : fragment.shapes)
        if (const auto* path = std::get_if<Path>(&shape); path && path->role == role) found.push_back(*path);
    return found;
}

TEST(DeviceFragment, TellsTagTypePortsAndFact) {
    const Drawn drawn;
    const auto words = texts(drawn.device(drawn.venue.encoder_1));
    EXPECT_THAT(words, testing::Contains("ENC-001"));
    EXPECT_THAT(words, testing::Contains(testing::StartsWith("S-")));
    EXPECT_EQ(std::ranges::count(words, "N"), 1);
}

TEST(DeviceFragment, CabledLugsAreFilledFreeOnesHollow) {
    const Drawn drawn;
    const auto fragment = drawn.device(drawn.venue.encoder_1);
    EXPECT_EQ(paths(fragment, DrawRole::lug_cabled).size(), 2u);  // picture and network
    EXPECT_EQ(paths(fragment, DrawRole::lug_free).size(), types::encoder()->ports.size() - 2);
}

TEST(DeviceFragment, LugsPointWithTheFlow) {
    const Drawn drawn;
    const auto fragment = drawn.device(drawn.venue.encoder_1);
    for (const auto& lug : paths(fragment, DrawRole::lug_cabled))
        EXPECT_EQ(lug.points.size(), lug.signal == catalogue::Signal::video ? 5u : 4u);  // arrow, square
}

TEST(DeviceFragment, DecodersSayWhatTheyShow) {
    const Drawn drawn;
    EXPECT_THAT(texts(drawn.device(drawn.venue.decoder_1)), testing::Contains(testing::StartsWith("shows S-")));
}

TEST(DeviceFragment, SwitchesCountTheirFreePorts) {
    const Drawn drawn;
    EXPECT_THAT(texts(drawn.device(drawn.venue.sw)), testing::Contains(testing::HasSubstr("23 free")));
}

TEST(CableFragment, CarriesItsTagInTheLine) {
    const Drawn drawn;
    EXPECT_THAT(texts(drawn.cable(drawn.venue.v1)), testing::Contains("V201"));
}

TEST(CableFragment, UprightCablesAreCutAtCrossings) {
    Drawn drawn;
    auto design = drawn.delivered.design;
    // N211 goes level at y = 150; N212 crosses it upright at x = 160.
    design.cable_lines.put({{drawn.venue.sheet, drawn.venue.n1},
                            {{150_mm, 54500_um}, {150_mm, 150_mm}, {170_mm, 150_mm}, {170_mm, 74500_um}},
                            true,
                            {}});
    design.cable_lines.put({{drawn.venue.sheet, drawn.venue.n2},
                            {{160_mm, 104500_um}, {160_mm, 160_mm}, {240_mm, 160_mm}, {240_mm, 74500_um}},
                            true,
                            {}});
    const Scene scene{design, drawn.delivered.analysis.facts, drawn.venue.sheet, drawn.scene.book};
    const auto fragment = deliver::cable_fragment(scene, *design.cable_lines.find({drawn.venue.sheet, drawn.venue.n2}));
    const auto lines = paths(fragment, DrawRole::cable);
    ASSERT_GE(lines.size(), 2u);
    EXPECT_EQ(lines[0].points.back(), (model::SheetPoint{160_mm, 148500_um}));
    EXPECT_EQ(lines[1].points.front(), (model::SheetPoint{160_mm, 151500_um}));
}

TEST(CableFragment, EndsOnTheLugs) {
    const Drawn drawn;
    const auto line = deliver::cable_points(drawn.scene, model::CableLine::blank({drawn.venue.sheet, drawn.venue.v1}));
    ASSERT_GE(line.size(), 2u);
    for (std::size_t i = 1; i < line.size(); ++i) EXPECT_TRUE(line[i].x == line[i - 1].x || line[i].y == line[i - 1].y);
}

TEST(CableFragment, NoEndOnTheSheetNoDrawing) {
    const Drawn drawn;
    EXPECT_TRUE(drawn.cable(drawn.venue.n4).shapes.empty());
}

TEST(BadgeFragment, ShapeTellsTheSeverity) {
    const Drawn drawn;
    const auto subject = "device:" + drawn.venue.sw.text();
    const auto corners = [&](analysis::Severity severity) {
        return std::get<Path>(deliver::badge_fragment(drawn.scene, subject, severity, 2).shapes.front()).points.size();
    };
    EXPECT_EQ(corners(analysis::Severity::error), 4u);
    EXPECT_EQ(corners(analysis::Severity::warning), 3u);
    EXPECT_GT(corners(analysis::Severity::advice), 8u);
    EXPECT_TRUE(deliver::badge_fragment(drawn.scene, subject, analysis::Severity::error, 0).shapes.empty());
    EXPECT_TRUE(deliver::badge_fragment(drawn.scene, "stream:x", analysis::Severity::error, 1).shapes.empty());
}

TEST(SchematicFragments, PaintDevicesOverCables) {
    const Drawn drawn;
    const auto all = deliver::schematic_fragments(drawn.scene);
    std::size_t last_cable = 0, first_device = all.size();
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (all[i].subject.starts_with("cable:")) last_cable = i;
        if (all[i].subject.starts_with("device:")) first_device = std::min(first_device, i);
    }
    EXPECT_LT(last_cable, first_device);
}

}  // namespace streamwright::test::fragments
