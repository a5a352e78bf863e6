#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::copper_too_long_test {

using analysis::Severity;
using catalogue::CableGrade;
using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

types::CablePtr graded(CableGrade grade, catalogue::CableUse use = catalogue::CableUse::installed) {
    auto type = *types::cat6a();
    type.key = {"test.graded." + std::to_string(static_cast<int>(grade)) + '.' + std::to_string(static_cast<int>(use))};
    type.grade = grade;
    type.use = use;
    type.screened = false;
    return std::make_shared<const catalogue::CableType>(type);
}

/// Two 10 Gb/s copper switches joined by a run: panels at both ends, leads, and the fixed cable between.
struct Channel {
    CleanDesign c = clean_design();
    model::CableId fixed{0}, lead_a{0}, lead_b{0};
    explicit Channel(CableGrade grade, base::BitRate rate = 10_Gbps) {
        auto type = types::make_switch(4, rate, 0);
        const auto left = c.b.device(type, "SW-X"), right = c.b.device(type, "SW-Y");
        c.b.change<model::Device>(left, [](auto& row) { row.bridging.priority = 4096; });
        const auto near = c.b.device(types::patch_panel(), "PP-X"), far = c.b.device(types::patch_panel(), "PP-Y");
        const auto lead = graded(CableGrade::cat8, catalogue::CableUse::lead);
        lead_a = c.b.cable(lead, port_of(left, "1"), port_of(near, "f1"), 5_m);
        fixed = c.b.cable(graded(grade), port_of(near, "r1"), port_of(far, "r1"), 90_m);
        lead_b = c.b.cable(lead, port_of(far, "f1"), port_of(right, "1"), 5_m);
    }
    std::vector<std::string> with(base::Length installed, base::Length lead = 5_m) {
        for (const auto id : {lead_a, lead_b}) c.b.change<model::Cable>(id, [&](auto& row) { row.length = lead; });
        c.b.change<model::Cable>(fixed, [&](auto& row) { row.length = installed; });
        return rules_found(c.design());
    }
    void warm(base::Temperature temperature) {
        c.b.change<model::Settings>({}, [&](auto& row) { row.cable_temperature = temperature; });
    }
    analysis::Finding finding() { return finding_of(c.design(), "copper-too-long"); }
};

TEST(CopperTooLong, judgesInstalledPartAndChannel) {
    // network-values.csv COP-001 to COP-003: permanent link 90 m, channel 100 m (TIA-568.2-D, ISO/IEC 11801-1).
    Channel run(CableGrade::cat6a);
    EXPECT_THAT(run.with(90_m, 5_m), IsEmpty());
    EXPECT_THAT(run.with(90_m, 5_m + 1_mm), ElementsAre("copper-too-long"));
    EXPECT_EQ(run.finding().limit, base::Value(100_m));
    EXPECT_THAT(run.with(90_m + 1_mm, 2_m), ElementsAre("copper-too-long"));
    EXPECT_EQ(run.finding().limit, base::Value(90_m));
}

TEST(CopperTooLong, namesItsArithmetic) {
    Channel run(CableGrade::cat6a);
    run.with(90_m, 6_m);  // 90 + 6 + 6 = 102
    EXPECT_THAT(terms_of(run.c.design(), run.finding()), ElementsAre("installed 90 m + leads 12 m = 102 m"));
    run.warm(50_degC);
    // Strictest at 50 degrees C, unscreened: 20 K at 0.4 % and 10 K at 0.6 % take 14 % of 90 m: 77.4 m.
    run.with(78_m, 4_m);
    EXPECT_THAT(terms_of(run.c.design(), run.finding()),
                ElementsAre("78 m - 77.4 m = 600 mm too long",
                            "90 m at 20 degrees C, 77.4 m at 50 °C by the linear rule of TIA-568-C.2 and ISO/IEC "
                            "11801",
                            "90 m at 20 degrees C, 79.5 m at 50 °C by the table of TIA-568"));  // COP-015
    // One patch lead and no installed part: 101 - 100 = 1.
    auto c = clean_design();
    const auto type = types::make_switch(4, 10_Gbps, 0);
    const auto left = c.b.device(type, "SW-X"), right = c.b.device(type, "SW-Y");
    c.b.cable(graded(CableGrade::cat6a, catalogue::CableUse::lead), port_of(left, "1"), port_of(right, "1"), 101_m);
    EXPECT_THAT(terms_of(c.design(), finding_of(c.design(), "copper-too-long")),
                ElementsAre("101 m - 100 m = 1 m too long"));
}

TEST(CopperTooLong, reachesAsFarAsSpeedAndGradeAllow) {
    // Worked example C-8 (PHY-006): 10GBASE-T on category 6 reaches 55 m; C-10 (PHY-009): 25GBASE-T on category 8 30 m.
    Channel cat6(CableGrade::cat6);
    EXPECT_THAT(cat6.with(45_m, 5_m), IsEmpty());
    EXPECT_THAT(cat6.with(46_m, 5_m), ElementsAre("copper-too-long"));
    EXPECT_THAT(Channel(CableGrade::cat6a).with(46_m, 5_m), IsEmpty());
    // PHY-007, from memory and so a setting: 37 m among hostile neighbours.
    cat6.c.b.change<model::Settings>({}, [](auto& row) { row.cabling.cat6_10g = 37_m; });
    EXPECT_THAT(cat6.with(27_m, 5_m), IsEmpty());
    EXPECT_THAT(cat6.with(28_m, 5_m), ElementsAre("copper-too-long"));
    Channel gigabit(CableGrade::cat6, 1_Gbps);
    EXPECT_THAT(gigabit.with(90_m, 5_m), IsEmpty());
}

TEST(CopperTooLong, cautionsWhereNeighboursDecide) {
    // Worked example C-9 (PHY-004): 5GBASE-T on category 5e is conditional, a caution and never a pass.
    Channel run(CableGrade::cat5e, 5_Gbps);
    EXPECT_THAT(run.with(80_m, 5_m), ElementsAre("copper-too-long"));
    EXPECT_EQ(run.finding().severity, Severity::warning);
}

TEST(CopperTooLong, shortensInTheHeat) {
    // Field case F35 at 50 degrees C, unscreened: 77 m passes, 80 m fails by every published rule, 78 m by some.
    Channel run(CableGrade::cat6a);
    run.warm(50_degC);
    EXPECT_THAT(run.with(77_m, 4_m), IsEmpty());
    EXPECT_THAT(run.with(78_m, 4_m), ElementsAre("copper-too-long"));
    EXPECT_EQ(run.finding().severity, Severity::warning);
    EXPECT_THAT(run.with(80_m, 4_m), ElementsAre("copper-too-long"));
    EXPECT_EQ(run.finding().severity, Severity::error);
    run.warm(20_degC);
    EXPECT_THAT(run.with(90_m, 4_m), IsEmpty());
}

TEST(CopperTooLong, readsTheWarmthOfTheRoomsAtItsEnds) {
    Channel run(CableGrade::cat6a);
    EXPECT_THAT(run.with(80_m, 4_m), IsEmpty());
    const auto room = run.c.b.room("0.1", "Plant");
    run.c.b.change<model::Room>(room, [](auto& row) { row.temperature = 50_degC; });
    for (const auto& device : run.c.design().devices)
        if (device.tag == "SW-X") run.c.b.change<model::Device>(device.id, [&](auto& row) { row.room = room; });
    EXPECT_THAT(run.with(80_m, 4_m), ElementsAre("copper-too-long"));
}

TEST(CopperTooLong, offersABetterCableOfTheDesign) {
    Channel run(CableGrade::cat6);
    run.with(60_m);
    run.c.b.embed(graded(CableGrade::cat6a));
    EXPECT_THAT(rules_found(cured(run.c.design(), run.finding())), IsEmpty());
}

TEST(CopperTooLong, saysNotKnownWithoutGradeAndAboveSixtyDegrees) {
    Channel unstated(CableGrade::none);
    EXPECT_THAT(unstated.with(50_m), ElementsAre("copper-too-long"));
    EXPECT_EQ(unstated.finding().severity, Severity::advice);
    Channel hot(CableGrade::cat6a);
    hot.warm(61_degC);
    EXPECT_THAT(hot.with(30_m), testing::Contains("copper-too-long"));
    EXPECT_EQ(hot.finding().severity, Severity::advice);
}

TEST(CopperTooLong, isSilentWhereTheLengthIsNotKnown) {
    Channel run(CableGrade::cat6a);
    run.c.b.change<model::Cable>(run.fixed, [](auto& row) { row.length.reset(); });
    EXPECT_THAT(rules_found(run.c.design()), ElementsAre("length-unknown"));
}

}  // namespace streamwright::test::copper_too_long_test
