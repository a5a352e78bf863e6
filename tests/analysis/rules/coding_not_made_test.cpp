#include "tests/analysis/rules/packed_streams.h"

namespace streamwright::test::coding_not_made_test {

using standards::PictureCoding;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

/// Sent by an encoder of such a type.
template <class Change>
model::Design sent(std::string_view format, const model::PictureEssence& essence, Change&& change) {
    auto c = clean_design();
    pack_picture(c, format, essence);
    change_type(c, c.encoder, [&](auto& type) { change(*type.codec); });
    return c.b.design;
}

template <class Change>
std::vector<std::string> rules(std::string_view format, const model::PictureEssence& essence, Change&& change) {
    return rules_found(sent(format, essence, change));
}

constexpr const char* full_hd = "1080p60 4:2:0 8-bit";

TEST(CodingNotMade, FiresWhereTheTypeStatesOtherCodings) {
    const auto makes = [](std::vector<PictureCoding> codings) {
        return [codings](catalogue::Codec& codec) { codec.packed.codings = codings; };
    };
    EXPECT_THAT(rules(full_hd, h264(8), makes({PictureCoding::jpeg_xs, PictureCoding::h264})), IsEmpty());
    EXPECT_THAT(rules(full_hd, h264(8), makes({PictureCoding::jpeg_xs})), ElementsAre("coding-not-made"));
    EXPECT_THAT(rules(full_hd, h264(8), makes({})), IsEmpty()) << "a type that states none is silent";
}

// D1: 1080p60 takes level 4.2.
TEST(CodingNotMade, FiresJustBelowTheLevelNeeded) {
    const auto up_to = [](const std::string& level) {
        return [level](catalogue::Codec& codec) { codec.packed = {{PictureCoding::h264}, level, ""}; };
    };
    EXPECT_THAT(rules(full_hd, h264(8), up_to("4.2")), IsEmpty());
    const auto design = sent(full_hd, h264(8), up_to("4.1"));
    EXPECT_THAT(rules_found(design), ElementsAre("coding-not-made"));
    EXPECT_EQ(english_sentence(design, finding_of(design, "coding-not-made")),
              "S-1 needs level 4.2 of H.264, but ENC-1 makes level 4.1 at most.");
    EXPECT_THAT(terms_of(design, finding_of(design, "coding-not-made")).front(),
                HasSubstr("1080p60 4:2:0 8-bit, H.264"));
}

// 50 Mb/s is what level 4.2 allows (Table: 50,000 x 1,250 = 62.5 Mb/s); a type may say less.
TEST(CodingNotMade, FiresJustAboveTheMostRate) {
    const auto most = [](catalogue::Codec& codec) {
        codec.usual_rate.reset();
        codec.most_rate = base::BitRate::from_count(20'000'000);
    };
    EXPECT_THAT(rules(full_hd, h264(20), most), IsEmpty());
    EXPECT_THAT(rules(full_hd, h264(21), most), ElementsAre("coding-not-made"));
}

TEST(CodingNotMade, FiresBeyondTheFormatOfTheCodec) {
    catalogue::CodecPicture hd;
    hd.most_format = standards::parse_video_format("1080p60").value();
    hd.most_sampling = standards::Sampling::ycbcr_422;
    hd.most_depth = 10;
    const auto limited = [&](catalogue::Codec& codec) { codec.picture = hd; };
    const auto light = [](std::int64_t millibits) {
        return model::PictureEssence{.coding = PictureCoding::jpeg_xs, .millibits_per_pixel = millibits};
    };
    EXPECT_THAT(rules("1080p60 4:2:2 10-bit", light(2000), limited), IsEmpty());
    EXPECT_THAT(rules("1080p120 4:2:2 10-bit", light(1000), limited), ElementsAre("coding-not-made"));
    EXPECT_THAT(rules("2160p15 4:2:2 10-bit", light(1000), limited), ElementsAre("coding-not-made"));
    EXPECT_THAT(rules("1080p60 4:4:4 10-bit", light(2000), limited), ElementsAre("coding-not-made"));
    EXPECT_THAT(rules("1080p60 4:2:2 12-bit", light(2000), limited), ElementsAre("coding-not-made"));
    EXPECT_THAT(rules("1080p60 4:2:0 8-bit", light(2000), limited), IsEmpty());
}

TEST(CodingNotMade, SaysNothingOfARateThatIsTypedIn) {
    auto c = clean_design();
    change_type(c, c.encoder, [](auto& type) { type.codec->packed.codings = {PictureCoding::jpeg_xs}; });
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

}  // namespace streamwright::test::coding_not_made_test
