// Field cases of cables and of power over them, each as a small design with the whole set of what must be found in it
// and nothing else. The rows, their figures and their sources stand in tests/reference/field-cases.csv.
#include "tests/cases/field_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::field_cable_cases_test {

using analysis::Severity;
using catalogue::CableGrade;
using catalogue::Connector;
using catalogue::Medium;
using testing::AllOf;
using testing::HasSubstr;
using namespace base::literals;

types::CablePtr changed(types::CablePtr like, const std::string& key,
                        const std::function<void(catalogue::CableType&)>& change) {
    auto type = *like;
    type.key = {key};
    change(type);
    return std::make_shared<const catalogue::CableType>(type);
}

types::DevicePtr module_of(const std::string& key, const std::function<void(catalogue::ModuleFacts&)>& change) {
    auto type = *types::module_sr();
    type.key = {key};
    change(*type.module);
    return std::make_shared<const catalogue::DeviceType>(type);
}

/// Two switches and a pair across their trunk.
struct TwoSwitches {
    FieldRoom room;
    model::DeviceId near = room.add_switch("SW-A"), far = room.add_switch("SW-B");
    model::CableId trunk = room.trunk(near, far);

    explicit TwoSwitches(base::BitRate rate = 200_Mbps) {
        room.querier(near);
        room.decoder(far, room.encoder(near, rate));
    }
    void fibre(CableGrade grade, base::Length length, int joints = 0) {
        const auto type = changed(types::om3(), "graded", [&](auto& each) { each.grade = grade; });
        room.b.embed(type);
        room.b.change<model::Cable>(trunk, [&](auto& row) {
            row.type = type->key;
            row.length = length;
            row.fibre.joints = joints;
        });
    }
    void modules(const types::DevicePtr& type) {
        room.b.embed(type);
        for (const auto device : {near, far})
            room.b.port(port_of(device, "s1"), [&](auto& row) { row.module = type->key; });
    }
    Found found() const { return found_by_rule(room.b.design); }
};

TEST(FieldCases, F30TenGigabitOnOldFibre) {
    TwoSwitches site;
    EXPECT_EQ(site.found(), Found{});
    site.fibre(CableGrade::om1, 60_m);
    EXPECT_EQ(site.found(), (Found{{"fibre-too-long", 1}}));
    EXPECT_THAT(sentence(site.room, "fibre-too-long"), AllOf(HasSubstr("60 m"), HasSubstr("33 m")));
    for (const auto& [grade, most] :
         {std::pair{CableGrade::om1, 33_m}, std::pair{CableGrade::om2, 82_m}, std::pair{CableGrade::om3, 300_m}}) {
        site.fibre(grade, most);
        EXPECT_EQ(site.found(), Found{});
        site.fibre(grade, most + 1_m);
        EXPECT_EQ(site.found(), (Found{{"fibre-too-long", 1}}));
    }
}

// 0.060 x 3.5 + 2 x 0.75 = 1.71 dB: too much as well, against a budget from memory.
TEST(FieldCases, F30ItsLossIsTooHighAsWell) {
    TwoSwitches site;
    site.fibre(CableGrade::om1, 60_m, 2);
    EXPECT_EQ(site.found(), (Found{{"fibre-loss-too-high", 1}, {"fibre-too-long", 1}}));
    EXPECT_EQ(finding_of(site.room.b.design, "fibre-loss-too-high").measured, base::Value(1710_mdB));
    EXPECT_EQ(finding_of(site.room.b.design, "fibre-loss-too-high").severity, Severity::warning);
}

// 1000BASE-SX carried it for years: 275 m of OM1, 220 m of the older grade.
TEST(FieldCases, F30OneGigabitRunsOnOldFibre) {
    TwoSwitches site;
    site.modules(module_of("sx", [](auto& module) {
        module.form = Connector::sfp;
        module.phy = "1000BASE-SX";
        module.rate = 1_Gbps;
    }));
    for (const auto& [grade, most] : {std::pair{CableGrade::om1, 275_m}, std::pair{CableGrade::old_62_5, 220_m}}) {
        site.fibre(grade, most);
        EXPECT_EQ(site.found(), Found{});
        site.fibre(grade, most + 1_m);
        EXPECT_EQ(site.found(), (Found{{"fibre-too-long", 1}}));
    }
}

// Cage {1 Gb/s}, module {10 Gb/s}: no link. What was to pass it is not complained of apart: the cause is.
TEST(FieldCases, F32WrongModuleForTheCage) {
    TwoSwitches site;
    auto slow = types::make_switch(48, 1_Gbps, 4);
    slow.key = {"slow-cages"};
    for (auto& port : slow.ports)
        if (port.connector == Connector::sfp_plus) port.rates = {1_Gbps};
    site.room.b.embed(std::make_shared<const catalogue::DeviceType>(slow));
    site.room.b.change<model::Device>(site.far, [](auto& row) { row.type = {"slow-cages"}; });
    EXPECT_EQ(site.found(), (Found{{"fibre-does-not-fit", 1}}));
}

// Cage {1, 10 Gb/s}, module {1 Gb/s}: pass at 1 Gb/s, a warning where the load fills it.
TEST(FieldCases, F32SlowerModuleInAFasterCage) {
    for (const auto rate : {200_Mbps, 900_Mbps}) {
        TwoSwitches site(rate);
        site.modules(module_of("sx", [](auto& module) {
            module.form = Connector::sfp;
            module.phy = "1000BASE-SX";
            module.rate = 1_Gbps;
        }));
        if (rate == 200_Mbps) {
            EXPECT_EQ(site.found(), Found{});
            continue;
        }
        // Of one stream alone no warning is due on an access port; on a trunk its 90 % is above the headroom.
        EXPECT_EQ(site.found(), (Found{{"link-overfull", 1}}));
        EXPECT_EQ(finding_of(site.room.b.design, "link-overfull").severity, Severity::warning);
    }
}

// The spare is a copper module, the plant is single-mode.
TEST(FieldCases, F32CopperModuleForSingleModePlant) {
    TwoSwitches site;
    const auto plant = types::os2();
    site.room.b.embed(plant);
    site.room.b.change<model::Cable>(site.trunk, [&](auto& row) { row.type = plant->key; });
    site.modules(types::module_lr());
    EXPECT_EQ(site.found(), Found{});
    const auto copper = module_of("copper", [](auto& module) {
        module.form = Connector::sfp;
        module.phy = "1000BASE-T";
        module.rate = 1_Gbps;
        module.medium = Medium::balanced_copper;
        module.connector = Connector::rj45;
        module.wavelength_nm = 0;
    });
    site.room.b.embed(copper);
    site.room.b.port(port_of(site.far, "s1"), [&](auto& row) { row.module = copper->key; });
    EXPECT_EQ(site.found(), (Found{{"fibre-does-not-fit", 1}}));
    EXPECT_THAT(sentence(site.room, "fibre-does-not-fit"),
                AllOf(HasSubstr("balanced copper"), HasSubstr("single-mode")));
}

/// A duplex link through cassettes at both ends of a 12-fibre trunk, with the swaps of lead, trunk, cassette and lead.
model::Design cassettes(int left_lead, int trunk, int cassette, int right_lead) {
    FieldRoom room;
    auto& b = room.b;
    const auto near = room.add_switch("SW-A"), far = room.add_switch("SW-B");
    room.querier(near);
    room.decoder(far, room.encoder(near, 200_Mbps));
    b.embed(types::module_sr());
    for (const auto device : {near, far})
        b.port(port_of(device, "s1"), [](auto& row) { row.module = types::module_sr()->key; });
    const auto lead = [](int swaps) {
        return changed(types::om3(), swaps == 1 ? "crossed" : "straight", [&](auto& type) {
            type.use = catalogue::CableUse::lead;
            type.crossed = swaps == 1;
        });
    };
    const auto panel = [&](const std::string& tag, int swaps) {
        auto type = *types::patch_panel();
        type.key = {"cassette-" + std::to_string(swaps)};
        for (auto& port : type.ports) {
            port.signal = catalogue::Signal::fibre;
            port.connector = Connector::lc_duplex;
            port.joints = 2;
            port.crosses = swaps == 1;
        }
        return b.device(type, tag);
    };
    const auto left = panel("CA-1", 0), right = panel("CA-2", cassette);
    b.cable(lead(left_lead), port_of(near, "s1"), port_of(left, "f1"), 2_m);
    const auto fixed = b.cable(types::om3(), port_of(left, "r1"), port_of(right, "r1"), 30_m);
    b.change<model::Cable>(fixed, [&](auto& row) { row.fibre.pair_swaps = trunk; });
    b.cable(lead(right_lead), port_of(right, "f1"), port_of(far, "s1"), 2_m);
    // Four pairs at the 0.75 dB that any may lose are too much for the budget: 0.5 dB is typical (ATT-011).
    b.change<model::Settings>({}, [](auto& row) { row.cabling.joint_loss = 500_mdB; });
    return b.design;
}

TEST(FieldCases, F33DuplexLinksNeedAnOddNumberOfSwaps) {
    EXPECT_EQ(found_by_rule(cassettes(0, 0, 1, 0)), Found{});
    EXPECT_EQ(found_by_rule(cassettes(1, 0, 0, 0)), Found{});
    EXPECT_EQ(found_by_rule(cassettes(1, 1, 0, 1)), Found{}) << "a pair-flipped trunk: three swaps";
    EXPECT_EQ(found_by_rule(cassettes(0, 0, 1, 1)), (Found{{"fibre-polarity", 1}}));
    const auto crossed_twice = cassettes(1, 0, 0, 1);
    EXPECT_EQ(found_by_rule(crossed_twice), (Found{{"fibre-polarity", 1}}));
    EXPECT_THAT(english_sentence(crossed_twice, finding_of(crossed_twice, "fibre-polarity")), HasSubstr("2 times"));
}

/// A decoder fed over unscreened category 6 of that length, in a ceiling of 35 degrees C where its bundle adds 15.
Found in_the_ceiling(base::Length length, model::WarmRule rule, base::Temperature way, base::Temperature rise) {
    FieldRoom room;
    const auto bridge = room.add_switch("SW-1");
    room.decoder(bridge);
    const auto cat6 = changed(types::cat6a(), "cat6-unscreened", [](auto& type) {
        type.grade = CableGrade::cat6;
        type.screened = false;
    });
    room.b.embed(cat6);
    room.b.change<model::Cable>(room.last_cable, [&](auto& row) { row.type = cat6->key, row.length = length; });
    room.b.change<model::Settings>({}, [&](auto& row) {
        row.cable_temperature = way;
        row.cabling.bundle_rise = rise;
        row.cabling.warm_rule = rule;
    });
    return found_by_rule(room.b.design);
}

// At 50 degrees C: 90 / 1.14 = 78.9 m by the quotient rule, 90 x 0.86 = 77.4 m by the linear one.
TEST(FieldCases, F35WarmBundle) {
    using enum model::WarmRule;
    const Found too_long{{"copper-too-long", 1}};
    EXPECT_EQ(in_the_ceiling(90_m, strictest, 20_degC, {}), Found{});
    EXPECT_EQ(in_the_ceiling(90_m, strictest, 35_degC, 15_degC), too_long);
    for (const auto rule : {quotient, linear}) {
        EXPECT_EQ(in_the_ceiling(77_m, rule, 35_degC, 15_degC), Found{});
        EXPECT_EQ(in_the_ceiling(80_m, rule, 35_degC, 15_degC), too_long);
    }
    EXPECT_EQ(in_the_ceiling(78_m, quotient, 35_degC, 15_degC), Found{});
    EXPECT_EQ(in_the_ceiling(78_m, linear, 35_degC, 15_degC), too_long);
    EXPECT_EQ(in_the_ceiling(78_m, strictest, 35_degC, 15_degC), too_long) << "a warning: the rules differ";
    EXPECT_EQ(in_the_ceiling(78_m, linear, 35_degC, {}), Found{}) << "without the bundle the way is at 35 degrees C";
}

/// Decoders of that class that draw 12 W each, on one switch.
FieldRoom powered(int poe_class, base::Power budget) {
    FieldRoom room;
    const auto bridge = room.add_switch("SW-1", [&](auto& type) { type.bridging->poe_budget = budget; });
    auto type = types::make_decoder();
    type.key = {"thirsty"};
    for (auto& port : type.ports)
        if (port.poe) port.poe = catalogue::PoePort{catalogue::PoeSide::takes, poe_class, 12_W};
    for (int i = 0; i < 24; ++i) room.decoder(bridge, {}, std::make_shared<const catalogue::DeviceType>(type));
    return room;
}

// Class 4 reserves 30 W a port: floor(370 / 30) = 12 of 24 decoders start; class 3 reserves 15.4 W: all 24.
TEST(FieldCases, F36ReservedNotDrawn) {
    const auto room = powered(4, 370_W);
    EXPECT_EQ(found_by_rule(room.b.design), (Found{{"poe-budget-exceeded", 1}}));
    const auto finding = finding_of(room.b.design, "poe-budget-exceeded");
    EXPECT_EQ(finding.measured, base::Value(720_W));
    EXPECT_EQ(finding.values[3], base::Value(std::int64_t{12}));
    EXPECT_THAT(terms_of(room.b.design, finding),
                testing::ElementsAre("24 x 30 W = 720 W", AllOf(HasSubstr("without power"), HasSubstr("24"))));
    EXPECT_EQ(found_by_rule(powered(4, 740_W).b.design), Found{});
    EXPECT_EQ(found_by_rule(powered(3, 370_W).b.design), Found{}) << "24 x 15.4 W = 369.6 W";
}

}  // namespace streamwright::test::field_cable_cases_test
