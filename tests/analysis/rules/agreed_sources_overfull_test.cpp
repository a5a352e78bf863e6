#include "tests/cases/field_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::agreed_sources_overfull_test {

using analysis::Severity;
using testing::AllOf;
using testing::HasSubstr;
using namespace base::literals;

/// 24 encoders of 450 Mb/s on A, as many decoders on B shown nothing, a trunk of 10 Gb/s with an agreement; the
/// querier at A, so that nothing crosses unasked, or at B.
FieldRoom agreed(std::optional<int> number, bool querier_at_b = false) {
    FieldRoom room;
    const auto a = room.add_switch("SW-A"), b = room.add_switch("SW-B");
    const auto trunk = room.trunk(a, b);
    room.querier(querier_at_b ? b : a);
    for (int i = 0; i < 24; ++i) {
        room.encoder(a, 450_Mbps);
        room.decoder(b);
    }
    if (number) room.b.change<model::Cable>(trunk, [&](auto& row) { row.agreed = {*number, "IT", "2026-11-20"}; });
    return room;
}

// 24 x 0.45 = 10.8 Gb/s of 10; 22 x 0.45 = 9.9, 99 %; 17 x 0.45 = 7.65, 76.5 %, within the headroom of 80 %.
TEST(AgreedSourcesOverfull, holdsTheNumberAgainstTheLink) {
    EXPECT_EQ(found_by_rule(agreed({}).b.design), (Found{{"link-overfull-worst-case", 1}}));
    const auto over = agreed(23);
    EXPECT_EQ(found_by_rule(over.b.design), (Found{{"agreed-sources-overfull", 1}}));
    const auto finding = finding_of(over.b.design, "agreed-sources-overfull");
    EXPECT_EQ(finding.severity, Severity::error);
    EXPECT_THAT(sentence(over, "agreed-sources-overfull"),
                AllOf(HasSubstr("the number agreed, 23 (IT, 2026-11-20)"), HasSubstr("103.5 %")));
    EXPECT_EQ(finding_of(agreed(22).b.design, "agreed-sources-overfull").severity, Severity::warning);
    EXPECT_EQ(found_by_rule(agreed(17).b.design), Found{});
}

// Toward the querier everything flows, whatever people agree on.
TEST(AgreedSourcesOverfull, countsWhatFlowsUnasked) {
    const auto room = agreed(4, true);
    EXPECT_EQ(found_by_rule(room.b.design)["agreed-sources-overfull"], 1);
    EXPECT_THAT(sentence(room, "agreed-sources-overfull"), HasSubstr("10.8 Gb/s"));
}

TEST(AgreedSourcesOverfull, isSilentWithoutAnAgreement) {
    EXPECT_EQ(found_by_rule(agreed({}, true).b.design).count("agreed-sources-overfull"), 0u);
}

}  // namespace streamwright::test::agreed_sources_overfull_test
