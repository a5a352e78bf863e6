// Pages of the schematic: one a sheet, in order, with frame and title block, everything inside the paper.
#include "core/deliver/drawing/sheet_size.h"
#include "tests/deliver/small_venue.h"

#include <gtest/gtest.h>

namespace streamwright::test::schematic {

using deliver::PagePart;

std::vector<std::string> texts(const PagePart& page) {
    std::vector<std::string> found;
    for (const auto& fragment : page.fragments)
        for (const auto& shape : fragment.shapes)
            if (const auto* line = std::get_if<deliver::TextLine>(&shape)) found.push_back(line->text);
    return found;
}

bool says(const PagePart& page, const std::string& text) {
    return std::ranges::any_of(texts(page), [&](const std::string& each) { return each.find(text) != each.npos; });
}

TEST(Schematic, HasAPageForEachSheetInOrder) {
    SmallVenue venue;
    venue.b.sheet(2);
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("schematic");
    ASSERT_EQ(content.parts.size(), 2u);
    EXPECT_EQ(std::get<PagePart>(content.parts[0]).name, "sheet-02");
    EXPECT_EQ(std::get<PagePart>(content.parts[1]).name, "sheet-04");
}

TEST(Schematic, EveryPlacedTagAndCableTagIsOnThePage) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("schematic");
    const auto& page = std::get<PagePart>(content.parts[0]);
    for (const char* tag : {"SRC-001", "ENC-001", "ENC-002", "SW-S2", "DEC-001", "DSP-001", "V201", "N211", "N217"})
        EXPECT_TRUE(says(page, tag)) << tag;
}

TEST(Schematic, CablesThatLeaveSayWhereTheyGo) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("schematic");
    const auto& page = std::get<PagePart>(content.parts[0]);
    EXPECT_TRUE(says(page, "PP-1"));  // the panel is not drawn
    EXPECT_TRUE(says(page, "not drawn"));
    EXPECT_TRUE(says(page, "open end"));
}

TEST(Schematic, TitleBlockBearsTheNewestRevision) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("schematic");
    const auto& page = std::get<PagePart>(content.parts[0]);
    for (const char* text : {"Legal owner", "Ferrow Quay Conference Centre", "FQ-AV-04", "2026-11-22", "04 / 01"})
        EXPECT_TRUE(says(page, text)) << text;
}

TEST(Schematic, NothingLeavesThePaper) {
    const SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("schematic");
    const auto& page = std::get<PagePart>(content.parts[0]);
    const deliver::Box paper{{}, page.width, page.height};
    for (const auto& fragment : page.fragments) {
        if (fragment.shapes.empty()) continue;
        EXPECT_TRUE(paper.holds(fragment.bounds.at)) << fragment.subject;
        EXPECT_TRUE(
            paper.holds({fragment.bounds.at.x + fragment.bounds.width, fragment.bounds.at.y + fragment.bounds.height}))
            << fragment.subject;
    }
}

}  // namespace streamwright::test::schematic
