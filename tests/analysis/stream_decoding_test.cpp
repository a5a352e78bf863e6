// Who can show which stream, by open standard or by family, alone and as the worst case takes it.
#include "core/analysis/stream_decoding.h"

#include "core/analysis/facts/compatibility.h"
#include "tests/analysis/rules/packed_streams.h"

namespace streamwright::test::stream_decoding {

using catalogue::StreamKind;
using standards::AudioCoding;
using standards::PacketTime;
using standards::PictureCoding;

catalogue::Codec codec_of(const std::string& family) {
    catalogue::Codec codec;
    codec.family = family;
    return codec;
}

model::Stream video() { return model::Stream::blank(model::StreamId(1)); }

model::Stream packed(const model::PictureEssence& picture) {
    auto row = video();
    row.picture = picture;
    row.picture->format = standards::parse_video_format("1080p60 4:2:0 8-bit").value();
    return row;
}

TEST(StreamDecoding, FamiliesDecideWhereNothingIsStated) {
    const auto sender = codec_of("light"), other = codec_of("dark");
    EXPECT_TRUE(analysis::shows_stream(sender, StreamKind::video, video(), &sender));
    EXPECT_FALSE(analysis::shows_stream(other, StreamKind::video, video(), &sender));
    EXPECT_FALSE(analysis::shows_stream(other, StreamKind::video, packed(h264(8)), &sender)) << "its type is silent";
    EXPECT_FALSE(analysis::shows_stream(sender, StreamKind::usb, video(), &sender));
    EXPECT_FALSE(analysis::shows_stream(sender, StreamKind::video, video(), nullptr));
}

TEST(StreamDecoding, AnOpenStandardDecidesWhereTheTypeSpeaks) {
    const auto sender = codec_of("light");
    auto other = codec_of("dark");
    other.packed = {{PictureCoding::h264}, "4.2", ""};
    EXPECT_TRUE(analysis::shows_stream(other, StreamKind::video, packed(h264(8)), &sender));
    EXPECT_FALSE(analysis::shows_stream(other, StreamKind::video, video(), &sender)) << "a typed rate is no standard";
    // 62.5 Mb/s is the most of level 4.2 (Table A-1: 50,000; Table A-2: x 1,250): above it the next level is needed.
    EXPECT_TRUE(analysis::shows_stream(other, StreamKind::video, packed(h264(62)), &sender));
    EXPECT_FALSE(analysis::shows_stream(other, StreamKind::video, packed(h264(63)), &sender));
    const model::PictureEssence light{.coding = PictureCoding::jpeg_xs, .millibits_per_pixel = 2000};
    EXPECT_FALSE(analysis::shows_stream(other, StreamKind::video, packed(light), &sender));
}

TEST(StreamDecoding, TheHighTierIsBeyondALevelOfTheMainOne) {
    auto decoder = codec_of("light");
    decoder.packed = {{PictureCoding::h265}, "", "6.2"};
    const auto at = [&](std::int64_t megabits) {
        return analysis::takes_level(
            decoder,
            *packed({.coding = PictureCoding::h265, .rate = base::BitRate::from_count(megabits * 1'000'000)}).picture);
    };
    EXPECT_TRUE(at(240));  // Table A.9, level 6.2, main tier: 240,000 kb/s
    EXPECT_FALSE(at(241));
}

/// Whether the first input of the decoder may show the first stream, as the worst case takes it.
bool may_show(const CleanDesign& c) {
    const auto analysed = analysis::analyse(c.design());
    const auto& wiring = analysed.facts.get<graph::Wiring>();
    const auto compatibility = analysis::usual_compatibility(wiring);
    int index = 0;
    for (const auto& row : c.design().streams) {
        if (row.id == c.stream) break;
        ++index;
    }
    for (const auto& slot : compatibility.slots)
        if (slot.device == *wiring.device_index(c.decoder)) return compatibility.shows(slot.kind, index);
    return false;
}

TEST(StreamDecoding, TheWorstCaseCountsWhatTheStandardLetsShow) {
    auto c = clean_design();
    EXPECT_TRUE(may_show(c));
    pack_picture(c, "1080p60 4:2:0 8-bit", h264(8));
    change_type(c, c.decoder, [](auto& type) { type.codec->family = "dark"; });
    EXPECT_FALSE(may_show(c));
    change_type(c, c.decoder, [](auto& type) { type.codec->packed.codings = {PictureCoding::h264}; });
    EXPECT_TRUE(may_show(c));
    change_type(c, c.decoder, [](auto& type) { type.codec->packed.codings = {PictureCoding::h265}; });
    EXPECT_FALSE(may_show(c));
}

TEST(StreamDecoding, AFlowIsHeldAgainstTheLevels) {
    auto c = clean_design();
    pack_sound(c, {48'000, AudioCoding::l24, 8, PacketTime::ms_1});
    change_type(c, c.decoder, [](auto& type) {
        type.codec->family = "dark";
        type.codec->sound_flows = catalogue::SoundFlows{{"A"}, false, {}, {}};
    });
    EXPECT_TRUE(may_show(c));
    c.b.change<model::Stream>(c.stream, [](auto& row) { row.sound->flow.channels = 9; });
    EXPECT_FALSE(may_show(c));
}

}  // namespace streamwright::test::stream_decoding
