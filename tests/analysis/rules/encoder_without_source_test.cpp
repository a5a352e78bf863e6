#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::encoder_without_source_test {

using testing::ElementsAre;
using testing::IsEmpty;

TEST(EncoderWithoutSource, firesWhereTheLeadIsMissing) {
    auto c = clean_design();
    c.b.design.cables.erase(c.source_lead);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("encoder-without-source"));
    EXPECT_EQ(finding_of(c.design(), "encoder-without-source").severity, analysis::Severity::error);
}

TEST(EncoderWithoutSource, warnsOnlyWhereNobodySubscribes) {
    auto c = clean_design();
    c.b.design.cables.erase(c.source_lead);
    c.b.design.subscriptions.erase(c.shown);
    EXPECT_EQ(finding_of(c.design(), "encoder-without-source").severity, analysis::Severity::warning);
}

TEST(EncoderWithoutSource, isSilentOnEncodersWithoutPictureInputs) {
    auto c = clean_design();
    auto type = types::make_encoder();
    type.key = {"test.audio-encoder"};
    type.ports.erase(type.ports.begin(), type.ports.begin() + 2);
    c.b.device(type, "AUD-1");
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

/// A gateway on switch A that decodes the clean design's family and sends another, with a decoder of that one.
struct GatewayRoom {
    CleanDesign c = clean_design();
    model::DeviceId gateway{0}, decoder{0};
    model::StreamId sent{0};

    GatewayRoom() {
        auto& b = c.b;
        auto type = types::make_decoder();
        type.key = {"test.gateway"};
        std::erase_if(type.ports, [](const auto& port) { return port.signal != catalogue::Signal::copper; });
        type.codec->sends_family = "other";
        type.codec->roles = {catalogue::Role::encoder, catalogue::Role::decoder};
        type.codec->roles_at_once = true;
        gateway = b.device(type, "GW-9");
        auto other = types::make_decoder();
        other.key = {"test.other-decoder"};
        other.codec->family = "other";
        decoder = b.device(other, "DEC-9");
        const auto run = base::Length::from_count(20'000'000);
        b.cable(types::cat6a(), port_of(gateway, "net"), port_of(c.switch_a, "9"), run);
        b.cable(types::cat6a(), port_of(decoder, "net"), port_of(c.switch_b, "9"), run);
        b.cable(types::hdmi(), port_of(decoder, "out"), port_of(b.device(types::display(), "DSP-9"), "in"),
                base::Length::from_count(2'000'000));
        sent = b.stream(gateway, base::BitRate::from_count(100'000'000), "239.192.1.9");
    }
    const model::Design& design() const { return c.design(); }
};

TEST(EncoderWithoutSource, aGatewayMustDecodeWhereItsStreamIsShown) {
    GatewayRoom room;
    room.c.b.subscribe(room.c.preset, room.sent, room.decoder);
    EXPECT_THAT(rules_found(room.design()), ElementsAre("encoder-without-source"));
    EXPECT_EQ(finding_of(room.design(), "encoder-without-source").variant, 2);
    room.c.b.subscribe(room.c.preset, room.c.stream, room.gateway);
    EXPECT_THAT(rules_found(room.design()), IsEmpty());
}

TEST(EncoderWithoutSource, aDecoderOfTheOtherFamilyIsShownTheWayThroughTheGateway) {
    GatewayRoom room;
    room.c.b.subscribe(room.c.preset, room.c.stream, room.gateway);
    room.c.b.subscribe(room.c.preset, room.c.stream, room.decoder);
    EXPECT_THAT(rules_found(room.design()), ElementsAre("subscription-not-decoded"));
    const auto finding = finding_of(room.design(), "subscription-not-decoded");
    ASSERT_EQ(finding.remedies.size(), 1U);
    EXPECT_THAT(rules_found(cured(room.design(), finding)), IsEmpty());
}

}  // namespace streamwright::test::encoder_without_source_test
