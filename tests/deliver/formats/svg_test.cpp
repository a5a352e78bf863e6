// SVG: well formed by xmllint, sized in millimetres, a group for each subject, each tag as text.
#include "tests/deliver/small_venue.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <fstream>

namespace streamwright::test::svg_format {

std::vector<deliver::OutputFile> write(const std::vector<deliver::Content>& contents) {
    for (const auto& format : deliver::core_formats())
        if (format.name == "svg") return format.write(contents, {}).value();
    return {};
}

TEST(Svg, IsWellFormed) {
    SmallVenue venue;
    venue.b.change<model::Device>(venue.encoder_1, [](auto& row) { row.tag = "<ENC> & \"1\"\x01"; });
    const auto files = write({Delivered(venue.b.design).document("schematic")});
    ASSERT_EQ(files.size(), 1u);
    TempFolder folder;
    const auto path = folder.path() / files[0].name;
    std::ofstream(path, std::ios::binary) << files[0].bytes;
    EXPECT_EQ(run_command("xmllint --noout " + path.string()), 0);
}

TEST(Svg, IsSizedInMillimetres) {  // ISO 216 A3
    const SmallVenue venue;
    const auto files = write({Delivered(venue.b.design).document("schematic")});
    EXPECT_NE(files[0].bytes.find("width=\"420mm\" height=\"297mm\" viewBox=\"0 0 420 297\""), std::string::npos);
}

TEST(Svg, EachTagIsText) {
    const SmallVenue venue;
    const auto files = write({Delivered(venue.b.design).document("schematic")});
    for (const char* tag : {"ENC-001", "ENC-002", "SW-S2", "DEC-001", "V201"})
        EXPECT_NE(files[0].bytes.find(std::string(">") + tag + "</text>"), std::string::npos) << tag;
}

TEST(Svg, SubjectsAreGroupsWithTheirId) {
    const SmallVenue venue;
    const auto files = write({Delivered(venue.b.design).document("schematic")});
    EXPECT_NE(files[0].bytes.find("<g id=\"device-" + venue.sw.text() + "\">"), std::string::npos);
    EXPECT_NE(files[0].bytes.find("<g id=\"cable-" + venue.n1.text() + "\">"), std::string::npos);
}

TEST(Svg, SameDesignSameBytes) {
    const SmallVenue venue;
    const auto once = write({Delivered(venue.b.design).document("schematic")});
    const auto again = write({Delivered(venue.b.design).document("schematic")});
    EXPECT_EQ(once[0].bytes, again[0].bytes);
}

}  // namespace streamwright::test::svg_format
