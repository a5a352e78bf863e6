// Traffic models against tests/reference (rows COD-065 to COD-085, examples E8, E9, E11).
#include "core/standards/sender_shaping.h"

#include "core/standards/video_streams.h"
#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::sender_shaping {

using namespace standards;
using enum SenderType;

VideoFormat format_of(std::string_view written) { return parse_video_format(written).value(); }

Cadence cadence_of(std::string_view format) {
    const auto stream = video_stream(format_of(format), Packing::general).value();
    return {packets_per_picture(stream), stream.pictures};
}

std::string bursts(std::string_view format) {
    const auto cadence = cadence_of(format);
    const auto share = active_share(format_of(format)).value();
    std::string out;
    for (const auto sender : {narrow, narrow_linear, wide})
        out += (out.empty() ? "" : " / ") + std::to_string(most_burst(sender, cadence, share));
    return out;
}

std::string buffers(std::string_view format) {
    const auto cadence = cadence_of(format);
    return std::to_string(receiver_buffer(narrow, cadence)) + " / " + std::to_string(receiver_buffer(wide, cadence));
}

/// Nanoseconds with six decimals, from picoseconds: within one of them.
void expect_spacing(const char* id, std::string_view format) {
    EXPECT_NEAR(static_cast<double>(gapped_spacing(cadence_of(format), *active_share(format_of(format)))),
                static_cast<double>(row_number(id, 6)) / 1000, 1)
        << id;
}

constexpr const char* hd = "1080p59.94 4:2:2 10-bit";
constexpr const char* uhd = "2160p59.94 4:2:2 10-bit";
constexpr const char* fields = "1080i59.94 4:2:2 10-bit";

TEST(SenderShaping, BurstsAndBuffersAreAsPublished) {
    EXPECT_EQ(cadence_of(hd).packets, 4320);
    EXPECT_EQ(bursts(hd), reference_row("COD-074").value);
    EXPECT_EQ(buffers(hd), reference_row("COD-075").value);
    expect_spacing("COD-076", hd);
    EXPECT_EQ(cadence_of(uhd).packets, 17280);
    EXPECT_EQ(bursts(uhd), reference_row("COD-077").value);
    EXPECT_EQ(buffers(uhd), reference_row("COD-078").value);
    expect_spacing("COD-079", uhd);
    EXPECT_EQ(signal_example("E8").expected, "6, 5, 16 packet");
    EXPECT_EQ(signal_example("E9").expected, "9, 863 packet");
}

TEST(SenderShaping, FormulasAreThoseOfTheRows) {
    // The least values that the formulas allow, with nearly nothing to send.
    const Cadence few{1, Hertz::whole(1)};
    EXPECT_EQ(most_burst(narrow, few, {1, 1}), number_after(reference_row("COD-065").value, "max(", 0));
    EXPECT_EQ(most_burst(narrow_linear, few, {1, 1}), number_after(reference_row("COD-066").value, "max(", 0));
    EXPECT_EQ(most_burst(wide, few, {1, 1}), number_after(reference_row("COD-067").value, "max(", 0));
    EXPECT_EQ(receiver_buffer(narrow, few), number_after(reference_row("COD-068").value, "1500*", 0));
    EXPECT_EQ(receiver_buffer(narrow, few, 9000), 1) << "int(1500 x 8 / 9000)";
    EXPECT_EQ(receiver_buffer(wide, few), number_after(reference_row("COD-069").value, "1500*", 0));
    // And the divisors, with a picture of a second.
    const auto many = [](const char* id, const char* label) {
        return Cadence{100 * number_after(reference_row(id).value, label, 0), Hertz::whole(1)};
    };
    EXPECT_EQ(most_burst(narrow, many("COD-065", "N/("), {1, 1}), 100);
    EXPECT_EQ(most_burst(narrow_linear, many("COD-066", "N/("), {1, 2}), 100) << "no gap, no share";
    EXPECT_EQ(most_burst(wide, many("COD-067", "N/("), {1, 2}), 100);
    EXPECT_EQ(receiver_buffer(narrow, many("COD-068", "N/(")), 100);
    EXPECT_EQ(receiver_buffer(wide, {1000 * 300, Hertz::whole(1)}), 1000) << reference_row("COD-069").value;
}

TEST(SenderShaping, SharesAndOffsetsAreAsPublished) {
    const auto share = [](const char* format) {
        const auto found = active_share(format_of(format)).value();
        return std::to_string(found.over) + "/" + std::to_string(found.under);
    };
    EXPECT_EQ(share("720p50"), reference_row("COD-070").value);
    EXPECT_EQ("interlaced 480: " + share("480i59.94") + "; 576: " + share("576i50") + "; 1080: " + share("1080i50"),
              reference_row("COD-070").note);
    const auto offset = [](const char* format, std::int64_t over, std::int64_t under) {
        const auto frame = format_of(format).frame_rate;
        const auto exact = 1e12 * static_cast<double>(over * frame.den()) / static_cast<double>(under * frame.num());
        EXPECT_NEAR(static_cast<double>(default_offset(format_of(format)).value()), exact, 1) << format;
    };
    EXPECT_EQ(reference_row("COD-071").value, "43/1125");
    offset("2160p50", 43, 1125);
    EXPECT_EQ(reference_row("COD-072").value, "28/750");
    offset("720p60", 28, 750);
    EXPECT_EQ(reference_row("COD-073").value, "20/525, 26/625, 22/1125");
    offset("480i59.94", 20, 525);
    offset("576i50", 26, 625);
    offset("1080i50", 22, 1125);
    EXPECT_FALSE(active_share(format_of("1024x768i87")));
    EXPECT_FALSE(default_offset(format_of("1024x768i87")));
    EXPECT_EQ(default_offset(format_of(hd)), row_number("COD-080", 6)) << "us with six decimals";
}

TEST(SenderShaping, ThePublishedSampleOfAnAnalyserComesOut) {
    const auto cadence = cadence_of(fields);
    EXPECT_EQ(cadence.packets, 2160);
    const auto bursts_of_fields = bursts(fields);
    EXPECT_EQ(reference_row("COD-081").value, "7414.815 ns / 652504 ns / 4 / 16 / 8 / 720");
    EXPECT_EQ(gapped_spacing(cadence, *active_share(format_of(fields))), 7'414'815);
    EXPECT_NEAR(static_cast<double>(default_offset(format_of(fields)).value()), 652'504'000, 500);
    EXPECT_NEAR(static_cast<double>(default_offset(format_of(fields)).value()),
                100 * static_cast<double>(signal_number("E11", 1)), 1000);
    EXPECT_EQ(bursts_of_fields, "4 / 4 / 16");
    EXPECT_EQ(buffers(fields), "8 / 720");
}

TEST(SenderShaping, TokensAndReceiversAreAsPublished) {
    std::string tokens;
    for (const auto sender : {narrow, narrow_linear, wide})
        tokens += (tokens.empty() ? "" : ", ") + std::string(base::enum_text(sender));
    EXPECT_EQ(tokens, reference_row("COD-082").value);
    EXPECT_EQ(receives(narrow, wide) ? "yes" : "no", reference_row("COD-083").value);
    EXPECT_EQ(receiver_source.standing == Standing::memory, !was_read("COD-083"));
    EXPECT_TRUE(receives(narrow, narrow_linear));
    EXPECT_TRUE(receives(wide, narrow));
}

TEST(SenderShaping, IpmxIsAsPublished) {
    EXPECT_EQ(reference_row("COD-084").value, "CMAX = max(16,int(N/(21600*TFRAME))); VRXFULL = 2*CMAX; gapped");
    EXPECT_EQ(ipmx_most_burst({21'600 * 20, Hertz::whole(1)}), 20);
    EXPECT_EQ(ipmx_most_burst({1, Hertz::whole(1)}), 16);
    EXPECT_EQ(ipmx_receiver_buffer({21'600 * 20, Hertz::whole(1)}), 40);
    EXPECT_EQ(ipmx_frame_wander.count(), row_number("COD-085", 0) * 1'000'000);
}

}  // namespace streamwright::test::sender_shaping
