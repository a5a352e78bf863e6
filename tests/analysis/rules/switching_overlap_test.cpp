#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::switching_overlap_test {

using testing::AllOf;
using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using namespace base::literals;

// On the wire x 1478 / 1400 (RFC 3550, 768, 791; IEEE 802.3): the first is 499,999,999.4 b/s, the second 500,000,000.5.
constexpr auto just_half = 473'612'990_bps, over_half = 473'612'991_bps;

struct Switched {
    CleanDesign c = clean_design();
    model::DeviceId other{0};
    model::PresetId after{0};

    /// The clean design's first decoder, shown its own encoder in one preset and another one in a second.
    explicit Switched(base::BitRate each) {
        auto& b = c.b;
        other = b.device(types::encoder(), "ENC-9");
        const auto source = b.device(types::source(), "SRC-9");
        b.cable(types::hdmi(), port_of(source, "out"), port_of(other, "in"), 2_m);
        b.cable(types::cat6a(), port_of(other, "net"), port_of(c.switch_a, "9"), 30_m);
        b.change<model::Stream>(c.stream, [&](auto& row) { row.payload_rate = each, row.payload_octets = 1400; });
        const auto stream = b.stream(other, each, "239.192.1.9");
        b.change<model::Stream>(stream, [&](auto& row) { row.payload_octets = 1400; });
        after = b.preset("after");
        b.subscribe(after, stream, c.decoder);
    }
    void set_fast_leave(model::DeviceId id) {
        c.b.change<model::Device>(id, [](auto& row) { row.bridging.fast_leave = true; });
    }
};

TEST(SwitchingOverlap, FiresWhereOldAndNewDoNotFitTogetherAndIsCuredByFastLeave) {
    const Switched s(over_half);
    EXPECT_THAT(rules_found(s.c.design()), ElementsAre("switching-overlap"));
    const auto finding = finding_of(s.c.design(), "switching-overlap");
    EXPECT_EQ(finding.subjects, std::vector<analysis::Subject>{s.c.switch_b});
    // Worked example I-3: last-member interval 1 s, count 2: 2 s.
    EXPECT_THAT(english_sentence(s.c.design(), finding), AllOf(HasSubstr("2 s"), HasSubstr("DEC-1")));
    EXPECT_THAT(terms_of(s.c.design(), finding), Contains(HasSubstr("2 x 500")));
    EXPECT_THAT(rules_found(cured(s.c.design(), finding)), IsEmpty());
}

TEST(SwitchingOverlap, IsSilentWhereBothFit) { EXPECT_THAT(rules_found(Switched(just_half).c.design()), IsEmpty()); }

TEST(SwitchingOverlap, IsSilentOnAPortSetByHandAndWithoutASecondPreset) {
    Switched s(over_half);
    s.c.b.port(port_of(s.c.switch_b, "1"), [](auto& row) { row.fast_leave = true; });
    EXPECT_THAT(rules_found(s.c.design()), IsEmpty());
    Switched once(over_half);
    model::apply(once.c.b.design, *model::make(once.c.design(), model::Remove{{once.after}, false}));
    EXPECT_THAT(rules_found(once.c.design()), IsEmpty());
}

TEST(SwitchingOverlap, AMarkCountsForNothingOnASwitchThatCannotLeaveFast) {
    Switched s(over_half);
    auto type = *types::switch_24();
    type.bridging->fast_leave = false;
    s.c.b.embed(std::make_shared<const catalogue::DeviceType>(type));
    s.set_fast_leave(s.c.switch_b);
    EXPECT_THAT(rules_found(s.c.design()), ElementsAre("switching-overlap"));
    EXPECT_THAT(finding_of(s.c.design(), "switching-overlap").remedies, IsEmpty());
}

TEST(SwitchingOverlap, TheSameStreamInBothPresetsCountsOnce) {
    Switched s(over_half);
    model::Design& design = s.c.b.design;
    for (const auto& row : std::vector(design.subscriptions.begin(), design.subscriptions.end()))
        if (row.preset == s.after)
            s.c.b.change<model::Subscription>(row.id, [&](auto& each) { each.stream = s.c.stream; });
    EXPECT_THAT(rules_found(design), IsEmpty());
}

TEST(SwitchingOverlap, ALinkWithSeveralReceiversIsToldByItself) {
    // The trunk by copper, 1 Gb/s: 500 Mb/s of each preset fit, both together do not, and the port is no single
    // receiver.
    Switched s(over_half);
    s.set_fast_leave(s.c.switch_b);
    model::apply(s.c.b.design, *model::make(s.c.design(), model::Remove{{s.c.trunk}, false}));
    const auto a = port_of(s.c.switch_a, "20"), b = port_of(s.c.switch_b, "20");
    const auto trunk = s.c.b.cable(types::cat6a(), a, b, 30_m, "T-1");
    for (const auto& port : {a, b}) s.c.b.port(port, [&](auto& row) { row.tagged = {s.c.second}; });
    // The second pair's 200 Mb/s would join in; it shows nothing here.
    model::apply(s.c.b.design, *model::make(s.c.design(), model::Remove{{s.c.stream2}, false}));
    EXPECT_THAT(rules_found(s.c.design()), Contains("switching-overlap"));
    const auto finding = finding_of(s.c.design(), "switching-overlap");
    EXPECT_EQ(finding.subjects.front(), analysis::Subject(trunk));
}

}  // namespace streamwright::test::switching_overlap_test
