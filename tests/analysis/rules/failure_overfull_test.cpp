#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::failure_overfull_test {

using testing::Contains;
using testing::Not;
using namespace base::literals;

/// One encoder on SW-2, its display on SW-1, which asks; a trunk of 1 Gb/s and one set to 100 Mb/s.
struct TwoTrunks {
    DesignBuilder b;
    model::DeviceId one = b.device(types::switch_24(), "SW-1"), two = b.device(types::switch_24(), "SW-2");
    model::CableId fast{0}, slow{0};

    explicit TwoTrunks(base::BitRate payload, model::Survival survive = model::Survival::link) {
        const auto vlan = b.vlan(1, "AV", "10.1.0.0/24");
        b.usual_vlan(vlan);
        b.querier(one, vlan, "10.1.0.1");
        b.change<model::Device>(one, [](auto& row) { row.bridging.priority = 4096; });
        fast = b.cable(types::cat6a(), port_of(one, "24"), port_of(two, "24"), 10_m, "T-1");
        slow = b.cable(types::cat6a(), port_of(one, "23"), port_of(two, "23"), 10_m, "T-2");
        b.port(port_of(two, "23"), [](auto& row) { row.rate_limit = 100_Mbps; });
        const auto encoder = b.device(types::encoder(), "ENC"), decoder = b.device(types::decoder(), "DEC");
        b.cable(types::cat6a(), port_of(encoder, "net"), port_of(two, "1"), 10_m);
        b.cable(types::cat6a(), port_of(decoder, "net"), port_of(one, "1"), 10_m);
        b.subscribe(b.preset("Talk"), b.stream(encoder, payload, "239.192.0.1"), decoder);
        auto settings = b.design.settings();
        settings.survive = survive;
        b.put(settings);
    }
};

// 1400 octets take 1478 on the wire (RTP 12, UDP 8, IPv4 20, Ethernet 18, preamble and gap 20): 94,722,598 b/s of
// payload are 99,999,999.9 b/s, one more is 100,000,000.96.
TEST(FailureOverfull, FiresAboveTheCapacityOfTheOtherWay) {
    const TwoTrunks t(base::BitRate::from_count(94'722'599));
    const auto finding = finding_of(t.b.design, "failure-overfull");
    EXPECT_EQ(finding.severity, analysis::Severity::warning);
    EXPECT_EQ(finding.subjects.front(), analysis::Subject(t.slow));
    EXPECT_EQ(english_sentence(t.b.design, finding),
              "Without T-1, T-2 from SW-2 to SW-1 carries 100 Mb/s of 100 Mb/s in preset Talk: 100.1 %.");
    EXPECT_EQ(finding.measured, base::Value(base::BitRate::from_count(100'000'001)));
    EXPECT_THAT(rules_found(t.b.design), Not(Contains("single-point-of-failure")));
}

TEST(FailureOverfull, IsSilentWhereItJustFits) {
    EXPECT_THAT(rules_found(TwoTrunks(base::BitRate::from_count(94'722'598)).b.design),
                Not(Contains("failure-overfull")));
}

TEST(FailureOverfull, IsSilentUntilSomethingIsAsked) {
    const TwoTrunks t(base::BitRate::from_count(94'722'599), model::Survival::nothing);
    EXPECT_THAT(rules_found(t.b.design), Not(Contains("failure-overfull")));
}

TEST(FailureOverfull, IsSilentWhereItIsOverfullAnyway) {
    TwoTrunks t(base::BitRate::from_count(94'722'599));
    t.b.design.cables.erase(t.fast);
    EXPECT_THAT(rules_found(t.b.design), Not(Contains("failure-overfull"))) << "another rule says it";
    EXPECT_THAT(rules_found(t.b.design), Contains("link-slower-than-stream"));
}

}  // namespace streamwright::test::failure_overfull_test
