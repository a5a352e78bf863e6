#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::poe_budget_exceeded_test {

using analysis::Severity;
using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

/// Field case F36: 24 decoders of that class, each drawing 12 W, on one switch with that budget.
model::Design loaded(int poe_class, std::optional<base::Power> budget, std::optional<bool> by_class = true) {
    DesignBuilder b;
    auto bridge = types::make_switch(24, 1_Gbps, 0);
    bridge.bridging->poe_budget = budget;
    bridge.bridging->poe_by_class = by_class;
    const auto id = b.device(bridge, "SW-1");
    auto type = types::make_decoder();
    type.ports[1].poe = catalogue::PoePort{catalogue::PoeSide::takes, poe_class, 12_W};
    for (int i = 1; i <= 24; ++i) {
        const auto number = std::to_string(i);
        const auto decoder = b.device(type, "DEC-" + number), display = b.device(types::display(), "DSP-" + number);
        b.cable(types::hdmi(), port_of(decoder, "out"), port_of(display, "in"), 2_m);
        b.cable(types::cat6a(), port_of(decoder, "net"), port_of(id, number), 20_m);
    }
    return b.design;
}

TEST(PoeBudgetExceeded, countsWhatIsReservedNotWhatIsDrawn) {
    // F36: class 4 reserves 30 W: 720 W of 370 W, 12 devices start; 740 W carries 24; class 3: 24 x 15.4 = 369.6 W fit.
    EXPECT_THAT(rules_found(loaded(4, 370_W)), ElementsAre("poe-budget-exceeded"));
    const auto finding = finding_of(loaded(4, 370_W), "poe-budget-exceeded");
    EXPECT_EQ(finding.severity, Severity::error);
    EXPECT_EQ(finding.measured, base::Value(720_W));
    EXPECT_EQ(finding.values[3], base::Value(std::int64_t{12})) << "devices that start";
    EXPECT_THAT(rules_found(loaded(4, 740_W)), IsEmpty());
    EXPECT_THAT(rules_found(loaded(3, 370_W)), IsEmpty());
}

TEST(PoeBudgetExceeded, justFitsAndJustDoesNot) {
    EXPECT_THAT(rules_found(loaded(4, 720_W)), IsEmpty());
    EXPECT_THAT(rules_found(loaded(4, 720_W - 1_mW)), ElementsAre("poe-budget-exceeded"));
}

TEST(PoeBudgetExceeded, countsTheDrawWhereTheTypeReservesByIt) {
    // 24 x 12 W and what 20 m of cable take on top stay below 370 W.
    EXPECT_THAT(rules_found(loaded(4, 370_W, false)), IsEmpty());
    EXPECT_THAT(rules_found(loaded(4, 280_W, false)), ElementsAre("poe-budget-exceeded"));
}

TEST(PoeBudgetExceeded, saysNotKnownWhereTheTypeIsSilent) {
    for (const auto& design : {loaded(4, {}), loaded(4, 370_W, {})}) {
        EXPECT_THAT(rules_found(design), ElementsAre("poe-budget-exceeded"));
        EXPECT_EQ(finding_of(design, "poe-budget-exceeded").severity, Severity::advice);
    }
    EXPECT_EQ(finding_of(loaded(4, 280_W, {}), "poe-budget-exceeded").severity, Severity::error)
        << "too little by either way of counting";
}

/// The 24 of class 4 with two supplies of 400 W, that together give 800 W.
model::Design with_supplies(catalogue::SupplySet supplies) {
    auto design = loaded(4, 400_W);
    DesignBuilder b;
    b.design = design;
    for (const auto& each : design.device_types) {
        if (!each.type->bridging) continue;
        auto type = *each.type;
        type.bridging->poe_budget_two = 800_W;
        b.embed(std::make_shared<const catalogue::DeviceType>(type));
    }
    for (const auto& device : design.devices)
        if (device.tag == "SW-1")
            b.change<model::Device>(device.id, [&](auto& each) { each.bridging.supplies = supplies; });
    return b.design;
}

TEST(PoeBudgetExceeded, twoSuppliesAddOrStandBy) {
    // 24 x 30 W (POE-023) = 720 W: of 800 W together; one alone carries floor(400 / 30) = 13.
    const auto added = finding_of(with_supplies(catalogue::SupplySet::two_added), "poe-budget-exceeded");
    EXPECT_EQ(added.severity, Severity::advice);
    EXPECT_EQ(added.limit, base::Value(400_W));
    EXPECT_EQ(added.values[3], base::Value(std::int64_t{13}));
    const auto standing_by = finding_of(with_supplies(catalogue::SupplySet::two_redundant), "poe-budget-exceeded");
    EXPECT_EQ(standing_by.severity, Severity::error);
    EXPECT_EQ(standing_by.limit, base::Value(400_W));
}

TEST(PoeBudgetExceeded, namesThePortsThatStayDark) {
    const auto design = loaded(4, 690_W);  // floor(690 / 30) = 23
    EXPECT_THAT(terms_of(design, finding_of(design, "poe-budget-exceeded")),
                testing::Contains(testing::AllOf(testing::HasSubstr("without power"), testing::HasSubstr("24"))));
}

}  // namespace streamwright::test::poe_budget_exceeded_test
