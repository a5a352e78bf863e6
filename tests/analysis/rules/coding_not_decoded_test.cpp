#include "tests/analysis/rules/packed_streams.h"

namespace streamwright::test::coding_not_decoded_test {

using standards::PictureCoding;
using testing::ElementsAre;
using testing::IsEmpty;

/// H.264 of 1080p60, shown by a decoder of such a type.
CleanDesign shown(const catalogue::PictureCodings& packed, const std::string& family = "light") {
    auto c = clean_design();
    pack_picture(c, "1080p60 4:2:0 8-bit", h264(8));
    change_type(c, c.decoder, [&](auto& type) {
        type.codec->packed = packed;
        type.codec->family = family;
    });
    return c;
}

TEST(CodingNotDecoded, FiresWhereTheDecoderTakesOtherCodings) {
    EXPECT_THAT(rules_found(shown({{PictureCoding::h264}, "", ""}).design()), IsEmpty());
    const auto design = shown({{PictureCoding::uncompressed, PictureCoding::jpeg_xs}, "", ""}).b.design;
    EXPECT_THAT(rules_found(design), ElementsAre("coding-not-decoded"));
    EXPECT_EQ(english_sentence(design, finding_of(design, "coding-not-decoded")),
              "DEC-1 shows S-1, which is H.264, but decodes uncompressed, JPEG XS only.");
}

// D1: 1080p60 takes level 4.2.
TEST(CodingNotDecoded, FiresJustBelowTheLevelNeeded) {
    EXPECT_THAT(rules_found(shown({{PictureCoding::h264}, "4.2", ""}).design()), IsEmpty());
    EXPECT_THAT(rules_found(shown({{PictureCoding::h264}, "4.1", ""}).design()), ElementsAre("coding-not-decoded"));
}

TEST(CodingNotDecoded, IsSilentWhereTheTypeStatesNoCoding) { EXPECT_THAT(rules_found(shown({}).design()), IsEmpty()); }

TEST(CodingNotDecoded, AnOpenStandardNeedsNoFamily) {
    EXPECT_THAT(rules_found(shown({{PictureCoding::h264}, "", ""}, "other").design()), IsEmpty());
    EXPECT_THAT(rules_found(shown({}, "other").design()), ElementsAre("subscription-not-decoded"));
}

TEST(CodingNotDecoded, IsSaidOnceForAllPresets) {
    auto c = shown({{PictureCoding::h265}, "", ""});
    c.b.subscribe(c.b.preset("Evening"), c.stream, c.decoder);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("coding-not-decoded"));
}

}  // namespace streamwright::test::coding_not_decoded_test
