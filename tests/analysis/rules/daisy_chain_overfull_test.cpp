#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::daisy_chain_overfull_test {

using analysis::Severity;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using namespace base::literals;

constexpr auto payload = 189'445'196_bps;  // 200 Mb/s on the wire: x 1478 / 1400 (RFC 3550, 768, 791; IEEE 802.3)

/// The clean design and a chain of `units` decoders on port 10 of its second switch. Each shows a stream of its own, or
/// all the same; the encoders hang on that switch too.
CleanDesign chain(int units, bool same) {
    auto c = clean_design();
    c.b.change<model::Settings>({}, [](auto& row) { row.headroom_percent = 100; });
    auto before = port_of(c.switch_b, "10");
    std::optional<model::StreamId> stream;
    for (int i = 1; i <= units; ++i) {
        const auto n = std::to_string(i);
        const auto decoder = c.b.device(types::make_chained_decoder(), "CHAIN-" + n),
                   display = c.b.device(types::display(), "SHOW-" + n);
        c.b.cable(types::hdmi(), port_of(decoder, "out"), port_of(display, "in"), 2_m);
        c.b.cable(types::cat6a(), before, port_of(decoder, "net"), 10_m, "CH-" + n);
        before = port_of(decoder, "aux");
        if (!stream || !same) {
            const auto encoder = c.b.device(types::encoder(), "SEND-" + n),
                       source = c.b.device(types::source(), "GIVE-" + n);
            c.b.cable(types::hdmi(), port_of(source, "out"), port_of(encoder, "in"), 2_m);
            c.b.cable(types::cat6a(), port_of(encoder, "net"), port_of(c.switch_b, std::to_string(10 + i)), 10_m);
            stream = c.b.stream(encoder, payload, "239.192.3." + n);
        }
        c.b.subscribe(c.preset, *stream, decoder);
    }
    return c;
}

int count(const model::Design& design) {
    const auto rules = rules_found(design);
    return static_cast<int>(std::count(rules.begin(), rules.end(), "daisy-chain-overfull"));
}

// Field case F14: six decoders in a chain, each its own 200 Mb/s stream: 1.2, 1.0, 0.8, 0.6, 0.4, 0.2 Gb/s; the first
// link has 120 % of 1 Gb/s, the second is exactly full; with one stream for all 0.2 on each.
TEST(DaisyChainOverfull, firesOnceAtTheFirstLinkOfTheChain) {
    const auto c = chain(6, false);
    EXPECT_EQ(count(c.design()), 1);
    const auto finding = finding_of(c.design(), "daisy-chain-overfull");
    EXPECT_EQ(finding.severity, Severity::error);
    EXPECT_THAT(english_sentence(c.design(), finding),
                testing::AllOf(HasSubstr("CH-1 from"), HasSubstr("with 6 of its endpoints"), HasSubstr("120")));
    EXPECT_THAT(rules_found(c.design()), testing::Not(testing::Contains("link-overfull")));
}

TEST(DaisyChainOverfull, OneEndpointWithABuiltInSwitchIsNoChain) {
    // 6 x 200 Mb/s of one encoder with a built-in switch on its own 1 Gb/s link: overfull, but nothing is chained.
    auto c = clean_design();
    auto type = *types::encoder();
    type.bridging = types::switch_24()->bridging;
    c.b.embed(std::make_shared<const catalogue::DeviceType>(type));
    for (int i = 1; i <= 6; ++i) c.b.stream(c.encoder, payload, "239.192.4." + std::to_string(i));
    const auto rules = rules_found(c.design());
    EXPECT_EQ(std::count(rules.begin(), rules.end(), "daisy-chain-overfull"), 0);
    EXPECT_GE(std::count(rules.begin(), rules.end(), "link-overfull"), 1);
}

TEST(DaisyChainOverfull, passesFullButNotOver) {
    EXPECT_EQ(count(chain(5, false).design()), 0) << "1.0 Gb/s on 1 Gb/s, no headroom asked for";
    EXPECT_EQ(count(chain(6, true).design()), 0) << "one stream for all";
}

// F14: floor(0.8 / 0.2) = 4 units at a headroom of 80 %.
TEST(DaisyChainOverfull, warnsAboveTheHeadroom) {
    auto four = chain(4, false), five = chain(5, false);
    for (auto* c : {&four, &five}) c->b.change<model::Settings>({}, [](auto& row) { row.headroom_percent = 80; });
    EXPECT_EQ(count(four.design()), 0);
    EXPECT_EQ(count(five.design()), 1);
    EXPECT_EQ(finding_of(five.design(), "daisy-chain-overfull").severity, Severity::warning);
}

TEST(DaisyChainOverfull, isSilentWithoutAPreset) {
    auto c = chain(6, false);
    c.b.design.subscriptions = {};
    c.b.design.presets = {};
    EXPECT_EQ(count(c.design()), 0);
}

}  // namespace streamwright::test::daisy_chain_overfull_test
