#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::surround_without_downmix_test {

using analysis::Severity;
using catalogue::AudioFormat;
using testing::ElementsAre;
using testing::IsEmpty;

const std::vector<AudioFormat> all_formats{AudioFormat::stereo_pcm, AudioFormat::multichannel_pcm,
                                           AudioFormat::compressed_surround};
const std::vector<AudioFormat> two_channels{AudioFormat::stereo_pcm};

/// The clean design, its first stream with that sound, its first display and decoder with those facts.
model::Design heard(std::optional<AudioFormat> sent, const std::vector<AudioFormat>& taken,
                    std::optional<bool> downmix) {
    auto c = clean_design();
    c.b.change<model::Stream>(c.stream, [&](auto& row) { row.audio = sent; });
    auto display = types::make_display();
    display.key = {"sink"};
    display.ports[0].audio = taken;
    auto decoder = types::make_decoder();
    decoder.key = {"heard"};
    decoder.codec->downmix = downmix;
    c.b.embed(std::make_shared<const catalogue::DeviceType>(display));
    c.b.embed(std::make_shared<const catalogue::DeviceType>(decoder));
    c.b.change<model::Device>(c.display, [](auto& row) { row.type = {"sink"}; });
    c.b.change<model::Device>(c.decoder, [](auto& row) { row.type = {"heard"}; });
    return c.b.design;
}

// Field case F43: of a surround sink and a stereo sink the second is silent; a source of two channels passes; a decoder
// that mixes down passes.
TEST(SurroundWithoutDownmix, firesAtASinkOfTwoChannelsOnly) {
    EXPECT_THAT(rules_found(heard(AudioFormat::compressed_surround, all_formats, false)), IsEmpty());
    const auto silent = heard(AudioFormat::compressed_surround, two_channels, false);
    EXPECT_THAT(rules_found(silent), ElementsAre("surround-without-downmix"));
    EXPECT_EQ(finding_of(silent, "surround-without-downmix").severity, Severity::error);
    EXPECT_THAT(rules_found(heard(AudioFormat::multichannel_pcm, two_channels, false)),
                ElementsAre("surround-without-downmix"));
}

TEST(SurroundWithoutDownmix, passesWithTwoChannelsOrADownmix) {
    EXPECT_THAT(rules_found(heard(AudioFormat::stereo_pcm, two_channels, false)), IsEmpty());
    EXPECT_THAT(rules_found(heard(AudioFormat::compressed_surround, two_channels, true)), IsEmpty());
}

TEST(SurroundWithoutDownmix, saysNotKnownOrNothingWhereFactsAreMissing) {
    const auto unsure = heard(AudioFormat::compressed_surround, two_channels, std::nullopt);
    EXPECT_THAT(rules_found(unsure), ElementsAre("surround-without-downmix"));
    EXPECT_EQ(finding_of(unsure, "surround-without-downmix").severity, Severity::advice);
    EXPECT_THAT(rules_found(heard(AudioFormat::compressed_surround, {}, false)), IsEmpty());
    EXPECT_THAT(rules_found(heard(std::nullopt, two_channels, false)), IsEmpty());
}

}  // namespace streamwright::test::surround_without_downmix_test
