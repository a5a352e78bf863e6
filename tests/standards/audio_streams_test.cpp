// Sound in packets against tests/reference (rows COD-088 to COD-111, examples E12 to E17).
#include "core/standards/audio_streams.h"

#include "core/standards/wire_overhead.h"
#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::audio_streams {

using namespace standards;

/// "96 kHz 24-bit 4 ch 1 ms (level AX)".
AudioStream stream_of(std::string_view condition) {
    AudioStream stream;
    stream.sampling_hz = number_after(condition, "", 3);
    stream.coding = number_after(condition, "kHz ", 0) == 16 ? AudioCoding::l16 : AudioCoding::l24;
    stream.channels = static_cast<int>(number_after(condition, "bit ", 0));
    stream.packet_time = condition.find("125 us") != std::string_view::npos ? PacketTime::us_125 : PacketTime::ms_1;
    return stream;
}

TEST(AudioStreams, PacketsAreAsPublished) {
    for (int i = 96; i <= 108; i += 2) {
        const auto& row = reference_row((i < 100 ? "COD-0" : "COD-") + std::to_string(i));
        const auto stream = stream_of(row.condition);
        const auto payload = audio_payload_octets(stream);
        EXPECT_EQ(std::to_string(payload) + " / " + std::to_string(ip_packet_octets(payload, true)) + " / " +
                      std::to_string(packet_wire_octets(payload, true)),
                  row.value)
            << row.id;
        EXPECT_EQ(samples_per_packet(stream), number_after(row.note, "", 0)) << row.id;
        EXPECT_EQ(packets_a_second(stream), Hertz::whole(number_after(row.note, "samples, ", 0))) << row.id;
        EXPECT_FALSE(contradiction(stream)) << row.id;
        const auto level = row.condition.find("level ");
        if (level != std::string::npos) {
            EXPECT_EQ(std::string(audio_level(stream)->name) + ")", row.condition.substr(level + 6)) << row.id;
        }
    }
}

TEST(AudioStreams, RatesAreAsPublished) {
    for (int i = 97; i <= 109; i += 2) {
        const auto& row = reference_row((i < 100 ? "COD-0" : "COD-") + std::to_string(i));
        const auto stream = stream_of(row.condition);
        EXPECT_EQ(audio_wire_rate(stream).ceil().count(), row_number(row.id, 6)) << row.id;
        EXPECT_EQ(audio_ip_rate(stream).ceil().count(), number_after(row.note, "IP rate ", 6)) << row.id;
        EXPECT_EQ(audio_frame_rate(stream).ceil().count(), number_after(row.note, "frame rate ", 6)) << row.id;
    }
}

TEST(AudioStreams, LevelsAreAsPublished) {
    const char* ids[] = {"COD-088", "COD-089", "COD-090", "COD-091", "COD-092", "COD-093"};
    ASSERT_EQ(standards::audio_levels().size(), std::size(ids));
    for (std::size_t i = 0; i < std::size(ids); ++i) {
        const auto& row = reference_row(ids[i]);
        const auto& level = standards::audio_levels()[i];
        EXPECT_EQ("ST 2110-30 level " + std::string(level.name), row.quantity);
        EXPECT_EQ(std::to_string(level.sampling_hz / 1000) + " kHz, " + std::string(base::enum_text(level.packet_time)),
                  row.condition);
        EXPECT_EQ("1 to " + std::to_string(level.most_channels), row.value);
        EXPECT_EQ(level.source.standing == Standing::read, was_read(ids[i])) << ids[i];
    }
}

TEST(AudioStreams, ALevelStopsBeforeThePacketIsFull) {
    const AudioStream ten{48'000, AudioCoding::l24, 10, PacketTime::ms_1};
    EXPECT_EQ(most_channels_in_packet(ten), row_number("COD-110", 0));
    EXPECT_FALSE(contradiction(ten));
    EXPECT_EQ(audio_level(ten), nullptr) << reference_row("COD-110").note;
    const AudioStream eleven{48'000, AudioCoding::l24, 11, PacketTime::ms_1};
    EXPECT_EQ(contradiction(eleven)->english(), "11 channels do not go into one packet of 1 ms: 10 at most.");
    const AudioStream e17{48'000, AudioCoding::l24, 64, PacketTime::ms_1};
    EXPECT_EQ(audio_payload_octets(e17), number_after(signal_example("E17").formula, "= ", 0));
    EXPECT_EQ(most_audio_octets, number_after(signal_example("E17").formula, "> ", 0));
    EXPECT_TRUE(contradiction(e17)) << signal_example("E17").expected;
}

TEST(AudioStreams, WorkedExamplesComeOut) {
    const AudioStream stereo;
    EXPECT_EQ(audio_payload_octets(stereo), signal_number("E12", 0));
    EXPECT_EQ(audio_ip_rate(stereo).ceil().count(), signal_number("E13", 0));
    EXPECT_EQ(audio_wire_rate(stereo).ceil().count(), signal_number("E14", 0));
    EXPECT_EQ(audio_wire_rate({48'000, AudioCoding::l24, 8, PacketTime::ms_1}).ceil().count(), signal_number("E15", 0));
}

TEST(AudioStreams, Aes3FramesTakeFourOctets) {
    const AudioStream transparent{48'000, AudioCoding::am824, 2, PacketTime::ms_1};
    EXPECT_EQ(audio_payload_octets(transparent), row_number("COD-111", 0));
    EXPECT_EQ(audio_level(transparent), nullptr) << "levels are of linear PCM";
}

TEST(AudioStreams, PairsOutsideAes67AreRefused) {
    EXPECT_EQ(reference_row("COD-094").value, "L16/96000 and L24/44100");
    const AudioStream l16{96'000, AudioCoding::l16, 2, PacketTime::ms_1};
    const AudioStream l24{44'100, AudioCoding::l24, 2, PacketTime::ms_1};
    EXPECT_EQ(contradiction(l16)->english(),
              "The sampling rate of L16 cannot be 96000 Hz: that pair is outside AES67.");
    EXPECT_TRUE(contradiction(l24));
    EXPECT_FALSE(contradiction({44'100, AudioCoding::l16, 2, PacketTime::ms_1}));
    EXPECT_TRUE(contradiction({22'050, AudioCoding::l16, 2, PacketTime::ms_1}));
    EXPECT_TRUE(contradiction({48'000, AudioCoding::l16, 0, PacketTime::ms_1}));
}

TEST(AudioStreams, PacketTimesAreAsPublished) {
    std::string times;
    for (const auto& [time, name] : base::EnumText<PacketTime>::names) {
        times += (times.empty() ? "" : ", ") + std::string(name);
        // The name is the time of the samples, cut to whole microseconds.
        const auto period = packets_a_second({48'000, AudioCoding::l24, 1, time}).period();
        const std::int64_t unit = name.ends_with("ms") ? 1'000'000 : 1'000;
        EXPECT_EQ(period.count() / unit, number_after(name, "", 0)) << name;
    }
    EXPECT_EQ(times, "125 us, 250 us, 333 us, 1 ms, 4 ms");
    EXPECT_EQ(reference_row("COD-095").value, "125, 250, 333 us, 1 ms, 4 ms");
}

}  // namespace streamwright::test::audio_streams
