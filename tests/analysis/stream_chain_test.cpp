// The chain of numbers of a stream and its words, held to worked examples E3, E5, E6, E8, E12, E14, E18, E19, D1 and
// rows COD-108, COD-117 of tests/reference.
#include "core/analysis/stream_chain.h"

#include "core/analysis/report.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

namespace streamwright::test::stream_chain {

using standards::PictureCoding;
using testing::Contains;

/// "words: figure", a line each.
std::vector<std::string> lines_of(const model::Stream& stream) {
    const model::Design design;
    const auto book = analysis::english(design);
    std::vector<std::string> lines;
    for (const auto& line : analysis::stream_chain(stream))
        lines.push_back(base::fill({line.pattern, line.values}, book) + ": " + base::print(line.figure, book));
    return lines;
}

model::Stream picture(std::string_view format, model::PictureEssence essence = {}) {
    auto row = model::Stream::blank(model::StreamId(1));
    essence.format = standards::parse_video_format(format).value();
    row.picture = essence;
    return row;
}

model::Stream sound(const standards::AudioStream& flow) {
    auto row = model::Stream::blank(model::StreamId(1));
    row.sound = model::SoundEssence{flow};
    return row;
}

TEST(StreamChain, GoesFromThePictureToTheWire) {
    const auto lines = lines_of(picture("1080p59.94 4:2:2 10-bit"));
    for (const char* line :
         {"Packets a frame, of 1208 octets: 4320", "Full packet on the wire, octets: 1286", "Frames a second: 59.94",
          "Burst at most, narrow sender: 6", "On the wire, untagged: 2.664 Gb/s"})
        EXPECT_THAT(lines, Contains(line));
}

TEST(StreamChain, TellsTheShortLastPacket) {
    const auto lines =
        lines_of(picture("2160p60 4:2:2 10-bit",
                         {.coding = PictureCoding::jpeg_xs, .millibits_per_pixel = 4000, .udp_limit_octets = 1480}));
    // E18: 2849 packets; COD-117: the last has 512 octets of codestream, and 4 of header.
    EXPECT_THAT(lines, Contains("Packets a frame, of 1460 octets: 2848"));
    EXPECT_THAT(lines, Contains("Packets a frame, of 516 octets: 1"));
    EXPECT_THAT(lines, Contains("On the wire, untagged: 2.103 Gb/s"));  // E19
}

TEST(StreamChain, FieldsAreCalledSo) {
    EXPECT_THAT(lines_of(picture("1080i50 4:2:2 10-bit")), Contains("Fields a second: 50"));
}

TEST(StreamChain, GoesFromSamplesToTheWire) {
    const auto lines = lines_of(sound({}));
    for (const char* line : {"48 samples x 2 channels x 3 octets: 288", "Full packet on the wire, octets: 366",
                             "Packets a second: 1000", "On the wire, untagged: 2.928 Mb/s", "Level of ST 2110-30: A"})
        EXPECT_THAT(lines, Contains(line));
    EXPECT_THAT(lines_of(sound({48'000, standards::AudioCoding::l24, 2, standards::PacketTime::us_250})),
                Contains("Level of ST 2110-30: none"));
}

TEST(StreamChain, WordsSayWhatIsCarriedAndHow) {
    const auto h264 =
        picture("1080p60 4:2:0 8-bit", {.coding = PictureCoding::h264, .rate = base::BitRate::from_count(8'000'000)});
    EXPECT_EQ(analysis::packing_words(h264), "H.264, level 4.2");  // D1
    EXPECT_EQ(analysis::essence_words(h264), "1080p60 4:2:0 8-bit");
    EXPECT_EQ(analysis::packing_words(picture("1080p60", {.packing = standards::Packing::block})),
              "uncompressed, block packing");
    EXPECT_EQ(
        analysis::packing_words(picture("1080p60", {.coding = PictureCoding::jpeg_xs, .millibits_per_pixel = 3500})),
        "JPEG XS, 3.5 bits per pixel");
    EXPECT_EQ(analysis::flow_words({48'000, standards::AudioCoding::l24, 1, standards::PacketTime::us_125}),
              "1 channel, 48 kHz, L24, 125 us");
    EXPECT_EQ(
        analysis::packets_a_second(sound({48'000, standards::AudioCoding::l24, 2, standards::PacketTime::us_125})),
        "8000");  // COD-108
    EXPECT_EQ(analysis::essence_words(model::Stream::blank(model::StreamId(1))), "");
}

}  // namespace streamwright::test::stream_chain
