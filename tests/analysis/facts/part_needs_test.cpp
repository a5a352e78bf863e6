// Supplies, licences and spares, against counts by hand.
#include "tests/analysis/facts/counted_parts.h"

#include <gtest/gtest.h>

namespace streamwright::test::part_needs_test {

using namespace counted_parts;
using namespace base::literals;
using catalogue::LicencePer;

catalogue::DeviceType server(const std::string& key, LicencePer per, int each, int count) {
    catalogue::DeviceType type;
    type.key = {key};
    type.name = "Management server";
    type.kind = catalogue::DeviceKind::management_server;
    type.licences = {{"Management licence", per, each, count}};
    return type;
}

void add_encoders(DesignBuilder& b, int from, int to) {
    for (int i = from; i <= to; ++i) b.device(types::encoder(), "ENC-" + std::to_string(i));
}

TEST(PartNeeds, licencesAreCountedForEachTenBegun) {
    // Field case F48: 2 licences per 10 sources, ceil(sources / 10) x 2.
    DesignBuilder b;
    b.device(server("test.server", LicencePer::encoder, 10, 2), "MS-1");
    EXPECT_EQ(pieces(parts_of(b.design), PartKind::licence), 0) << "no encoder, no licence";
    add_encoders(b, 1, 10);
    EXPECT_EQ(pieces(parts_of(b.design), PartKind::licence), 2) << "10 encoders: one ten";
    add_encoders(b, 11, 11);
    b.device(types::decoder(), "DEC-1");
    const auto parts = parts_of(b.design);
    ASSERT_NE(only(parts, PartKind::licence), nullptr);
    EXPECT_EQ(only(parts, PartKind::licence)->quantity, 4) << "11 encoders: two tens begun; decoders do not count";
    EXPECT_EQ(only(parts, PartKind::licence)->name, "Management licence");
    EXPECT_EQ(only(parts, PartKind::licence)->licence->counted, 11);
    b.device(server("test.server", LicencePer::encoder, 10, 2), "MS-2");
    EXPECT_EQ(pieces(parts_of(b.design), PartKind::licence), 8) << "each device that needs them";
}

TEST(PartNeeds, licencesOfATypeThatIsNotPlacedAreNotCounted) {
    DesignBuilder b;
    add_encoders(b, 1, 3);
    b.embed(std::make_shared<const catalogue::DeviceType>(server("test.server", LicencePer::encoder, 1, 1)));
    EXPECT_EQ(pieces(parts_of(b.design), PartKind::licence), 0);
}

TEST(PartNeeds, licencesPerDecoderOrEndpointCountThose) {
    DesignBuilder b;
    add_encoders(b, 1, 3);
    for (int i = 1; i <= 4; ++i) b.device(types::decoder(), "DEC-" + std::to_string(i));
    b.device(types::endpoint(), "EP-1");  // can be either; what it does here is not set
    b.device(server("test.by-decoder", LicencePer::decoder, 1, 1), "MS-1");
    b.device(server("test.by-endpoint", LicencePer::endpoint, 5, 1), "MS-2");
    for (const auto& part : parts_of(b.design)) {
        if (part.kind != PartKind::licence) continue;
        const bool by_decoder = part.key == "test.by-decoder";
        EXPECT_EQ(part.quantity, by_decoder ? 4 : 2) << "4 decoders; 3 + 4 + 1 endpoints: two fives begun";
        EXPECT_EQ(part.licence->undecided, by_decoder ? 1 : 0);
    }
    EXPECT_EQ(pieces(parts_of(b.design), PartKind::licence), 6);
}

TEST(PartNeeds, eightOfTwentyFourEndpointsOnPortsWithoutPoeNeedASupply) {
    // Field case F48: 24 endpoints of which 8 are on non-PoE ports, power supplies 8.
    DesignBuilder b;
    auto plain = types::make_switch(24, 1_Gbps, 0);
    plain.key = {"test.plain"};
    for (auto& port : plain.ports) port.poe.reset();
    const auto feeding = b.device(types::switch_24(), "SW-1"), other = b.device(plain, "SW-2");
    for (int i = 1; i <= 24; ++i) {
        const auto encoder = b.device(types::encoder(), "ENC-" + std::to_string(i));
        b.cable(types::cat6a(), port_of(encoder, "net"), port_of(i <= 16 ? feeding : other, std::to_string(i)), 30_m);
    }
    const auto parts = parts_of(b.design);
    ASSERT_NE(only(parts, PartKind::plug_in_supply), nullptr);
    EXPECT_EQ(only(parts, PartKind::plug_in_supply)->quantity, 8);
    EXPECT_EQ(only(parts, PartKind::plug_in_supply)->key, "test.encoder");
    EXPECT_EQ(only(parts, PartKind::plug_in_supply)->devices.size(), 8u);
}

TEST(PartNeeds, aPortThatGivesTooSmallAClassFeedsNobody) {
    // IEEE 802.3 clauses 33 and 145, class tables: class 2 is 7 W at the supply, class 3 is 15.4 W.
    for (const int given : {2, 3}) {
        DesignBuilder b;
        auto weak = types::make_switch(4, 1_Gbps, 0);
        for (auto& port : weak.ports) port.poe->poe_class = given;
        const auto sw = b.device(weak, "SW-1"), encoder = b.device(types::encoder(), "ENC-1");
        b.cable(types::cat6a(), port_of(encoder, "net"), port_of(sw, "1"), 30_m);
        EXPECT_EQ(pieces(parts_of(b.design), PartKind::plug_in_supply), given == 2 ? 1 : 0);
    }
}

TEST(PartNeeds, typesWithAnInnerSupplyNeedNone) {
    DesignBuilder b;
    b.device(types::switch_24(), "SW-1");
    b.device(types::endpoint(), "EP-1");  // states no power at all
    EXPECT_EQ(pieces(parts_of(b.design), PartKind::plug_in_supply), 0);
}

void plan_spares(DesignBuilder& b, model::SparePlan plan) {
    auto settings = b.design.settings();
    settings.spares = plan;
    b.put(settings);
}

TEST(PartNeeds, sparesOfEndpointsAreRoundedUp) {
    // Field case F48: 10 % of 40 = 4. One more: 4.1, so 5.
    DesignBuilder b;
    plan_spares(b, {.endpoints_percent = 10});
    add_encoders(b, 1, 40);
    b.device(types::switch_24(), "SW-1");
    EXPECT_EQ(find(parts_of(b.design), "test.encoder")->spare, 4);
    EXPECT_EQ(find(parts_of(b.design), "test.encoder")->quantity, 40) << "spares stand apart";
    add_encoders(b, 41, 41);
    EXPECT_EQ(find(parts_of(b.design), "test.encoder")->spare, 5);
    EXPECT_EQ(find(parts_of(b.design), types::switch_24()->key.text)->spare, 0) << "a switch is no endpoint";
}

TEST(PartNeeds, sparesOfModulesAndLeadsAreOfEachKind) {
    DesignBuilder b;
    plan_spares(b, {.of_each_module = 1, .of_each_lead = 2});
    const auto a = b.device(types::switch_24(), "SW-A"), c = b.device(types::switch_24(), "SW-B");
    b.embed(types::module_sr());
    for (const auto& device : {a, c})
        b.port(port_of(device, "s1"), [](auto& row) { row.module = types::module_sr()->key; });
    b.cable(types::om3(), port_of(a, "s1"), port_of(c, "s1"), 60_m);
    b.cable(types::cat6a_lead(), port_of(a, "1"), port_of(c, "1"));
    b.cable(counted_parts::direct_attach(), port_of(a, "s2"), port_of(c, "s2"));
    const auto parts = parts_of(b.design);
    EXPECT_EQ(find(parts, "test.module.10gbase-sr", PartFrom::derived)->spare, 1) << "+1 spare per kind: F48";
    EXPECT_EQ(find(parts, "test.cat6a.lead")->spare, 2);
    EXPECT_EQ(find(parts, "test.dac")->spare, 2);
    EXPECT_EQ(only(parts, PartKind::patch_lead)->spare, 2) << "fibre leads that are not drawn";
    EXPECT_EQ(find(parts, "test.om3")->spare, 0) << "installed cable is bought by the metre";
    EXPECT_EQ(find(parts, types::switch_24()->key.text)->spare, 0);
}

TEST(PartNeeds, withoutAPlanThereAreNoSpares) {
    DesignBuilder b;
    add_encoders(b, 1, 3);
    for (const auto& part : parts_of(b.design)) EXPECT_EQ(part.spare, 0);
}

}  // namespace streamwright::test::part_needs_test
