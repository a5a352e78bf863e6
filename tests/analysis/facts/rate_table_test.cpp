// The table of rates says of every stream what its own packets say, and its sums are their sums, to the last fraction.
// Single rates are held to worked examples by tests/model/stream_packets_test.cpp.
#include "core/analysis/facts/rate_table.h"

#include "core/model/stream_packets.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <numeric>

namespace streamwright::test::rate_table {

using namespace model;
using namespace base::literals;
using standards::PictureCoding;

struct Mixed {
    Table<Stream> streams;
    std::uint64_t next = 1;

    template <class Change>
    void add(Change&& change) {
        Stream row = Stream::blank(StreamId(next++));
        change(row);
        streams.put(std::move(row));
    }
    void picture(std::string_view format, const PictureEssence& essence) {
        add([&](Stream& row) {
            row.picture = essence;
            row.picture->format = standards::parse_video_format(format).value();
        });
    }
    Mixed() {
        add([](Stream& row) { row.payload_rate = 700_Mbps; });
        add([](Stream& row) { row.payload_rate = 850_Mbps, row.payload_octets = 1316, row.rtp = false; });
        for (const char* format : {"1080p59.94 4:2:2 10-bit", "2160p60 4:2:2 10-bit", "1080p59.94 4:2:2 10-bit",
                                   "1080i50 4:2:2 10-bit", "720p23.98 4:2:0 8-bit"}) {
            picture(format, {});
            picture(format, {.packing = standards::Packing::block});
            picture(format, {.coding = PictureCoding::jpeg_xs, .millibits_per_pixel = 3333});
            picture(format, {.coding = PictureCoding::h265, .rate = 12_Mbps, .udp_limit_octets = 1480});
        }
        for (const auto time : {standards::PacketTime::us_125, standards::PacketTime::us_333})
            add([&](Stream& row) {
                row.kind = catalogue::StreamKind::audio;
                row.sound = SoundEssence{{44'100, standards::AudioCoding::l16, 2, time}};
            });
        add([](Stream&) {});  // nothing stated: nothing sent
    }
};

TEST(RateTable, EachStreamWeighsWhatItsPacketsDo) {
    const Mixed mixed;
    const analysis::RateTable table(mixed.streams);
    int index = 0;
    for (const auto& row : mixed.streams) {
        EXPECT_EQ(table.of(index, false), stream_wire_rate(row, 0)) << index;
        EXPECT_EQ(table.of(index, true), stream_wire_rate(row, 1)) << index;
        EXPECT_EQ(table.whole(table.parts(index, true)), stream_wire_rate(row, 1).ceil()) << index;
        ++index;
    }
    EXPECT_EQ(table.of(2, false).ceil().count(), 2'663'985'615);  // E6
}

TEST(RateTable, SumsAndRanksAreThoseOfTheStreams) {
    const Mixed mixed;
    analysis::RateTable table(mixed.streams);
    std::vector<const Stream*> rows;
    for (const auto& row : mixed.streams) rows.push_back(&row);
    std::vector<int> all(rows.size());
    std::iota(all.begin(), all.end(), 0);
    const auto tagged = [](int stream) { return stream % 3 == 0; };
    base::Rate sum;
    for (const int i : all) sum += stream_wire_rate(*rows[static_cast<std::size_t>(i)], tagged(i) ? 1 : 0);
    EXPECT_EQ(table.sum(all, tagged), sum);
    for (const int a : all)
        for (const int b : all) {
            const auto x = table.of(a, false), y = table.of(b, true);
            EXPECT_EQ(table.rank(a, false) < table.rank(b, true), x < y) << a << ' ' << b;
        }
}

TEST(RateTable, StreamsThatDifferInOneFigureAreNotTakenForOne) {
    const standards::VideoFormat hd = standards::parse_video_format("1080p60 4:2:2 10-bit").value();
    std::vector<PictureEssence> each{
        {.format = hd}, {.format = hd, .packing = standards::Packing::block}, {.format = hd, .udp_limit_octets = 8960}};
    const auto vary = [&](auto change) { change(each.emplace_back(PictureEssence{.format = hd})); };
    vary([](PictureEssence& e) { e.format.width = 1918; });
    vary([](PictureEssence& e) { e.format.height = 1078; });
    vary([](PictureEssence& e) { e.format.frame_rate = standards::Hertz::whole(59); });
    vary([](PictureEssence& e) { e.format.interlaced = true; });
    vary([](PictureEssence& e) { e.format.depth = 12; });
    vary([](PictureEssence& e) { e.format.sampling = standards::Sampling::rgb; });
    Table<Stream> streams;
    for (std::size_t i = 0; i < each.size(); ++i) {
        Stream row = Stream::blank(StreamId(i + 1));
        row.picture = each[i];
        streams.put(row);
    }
    const analysis::RateTable table(streams);
    for (std::size_t i = 0; i < each.size(); ++i)
        EXPECT_EQ(table.of(static_cast<int>(i), false), standards::wire_rate(*packets_of(each[i]))) << i;
}

}  // namespace streamwright::test::rate_table
