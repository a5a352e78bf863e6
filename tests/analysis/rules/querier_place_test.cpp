#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::querier_place_test {

using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

/// A star: three encoders on SW-A, a decoder on SW-B that shows the first, SW-C between them.
struct Star {
    DesignBuilder b{5};
    model::VlanId vlan = b.vlan(20, "AV", "10.20.0.0/24");
    model::DeviceId a = b.device(types::switch_24(), "SW-A"), other = b.device(types::switch_24(), "SW-B"),
                    core = b.device(types::switch_24(), "SW-C");
    model::DeviceId decoder = b.device(types::decoder(), "DEC-1");

    explicit Star(int encoders = 3) {
        b.usual_vlan(vlan);
        b.cable(types::cat6a(), port_of(a, "24"), port_of(core, "1"), 10_m, "T-A");
        b.cable(types::cat6a(), port_of(other, "24"), port_of(core, "2"), 10_m, "T-B");
        b.address(a, "10.20.0.2"), b.address(other, "10.20.0.3"), b.address(core, "10.20.0.4");
        b.cable(types::cat6a(), port_of(decoder, "net"), port_of(other, "1"), 10_m);
        for (int i = 1; i <= encoders; ++i) {
            const auto encoder = b.device(types::encoder(), "ENC-" + std::to_string(i));
            b.cable(types::cat6a(), port_of(encoder, "net"), port_of(a, std::to_string(i)), 10_m);
            const auto stream = b.stream(encoder, 100_Mbps, "239.192.1." + std::to_string(i));
            if (i == 1) b.subscribe(b.preset("Lecture"), stream, decoder);
        }
    }
};

int told(const model::Design& design) {
    const auto rules = rules_found(design);
    return static_cast<int>(std::count(rules.begin(), rules.end(), "querier-place"));
}

TEST(QuerierPlace, AStarWorkedOutByHand) {
    // On the wire 100 Mb/s x 1478 / 1400 = 105.571428 Mb/s (RTP 12, UDP 8, IPv4 20, Ethernet 18, preamble and gap 20).
    // Asking at SW-B all three cross both trunks, 316.7 Mb/s; asking at SW-A only the one that is shown does.
    Star star;
    star.b.querier(star.other, star.vlan, "10.20.0.3");
    const auto& design = star.b.design;
    ASSERT_EQ(told(design), 1);
    const auto finding = finding_of(design, "querier-place");
    EXPECT_EQ(finding.severity, analysis::Severity::advice);
    EXPECT_EQ(english_sentence(design, finding),
              "SW-B asks for members in VLAN 20 AV, and a trunk carries up to 316.714 Mb/s; with SW-A asking, the "
              "fullest would "
              "carry 105.571 Mb/s.");
    EXPECT_THAT(terms_of(design, finding),
                ElementsAre("with SW-B: 316.714 Mb/s from SW-A to SW-C", "with SW-A: 105.571 Mb/s from SW-A to SW-C"));
    const auto cure = cured(design, finding);
    EXPECT_EQ(told(cure), 0);
    EXPECT_THAT(cure.devices.find(star.other)->bridging.queriers, IsEmpty());
    EXPECT_THAT(cure.devices.find(star.a)->bridging.queriers,
                ElementsAre(model::Querier{star.vlan, base::parse_ipv4("10.20.0.2")}));
}

TEST(QuerierPlace, TheCoreIsNoBetterThanTheFarEnd) {
    // With one switch fewer to choose from, asking at SW-C still takes all three over the trunk of SW-A: equal, silent.
    Star star;
    star.b.querier(star.other, star.vlan, "10.20.0.3");
    star.b.change<model::Device>(star.a, [](auto& row) { row.bridging.snooping_off = true; });
    EXPECT_EQ(told(star.b.design), 0);
}

TEST(QuerierPlace, IsSilentWhereAllIsShownAnyway) {
    Star star(1);
    for (const auto id : {star.a, star.other, star.core}) {
        auto b = star.b;
        b.querier(id, star.vlan, "10.20.0.9");
        EXPECT_EQ(told(b.design), 0) << "the one stream crosses both trunks wherever the querier is";
    }
}

TEST(QuerierPlace, IsSilentAtTheBestPlaceAndOnACleanDesign) {
    Star star;
    star.b.querier(star.a, star.vlan, "10.20.0.2");
    EXPECT_EQ(told(star.b.design), 0);
    EXPECT_EQ(told(clean_design().design()), 0);
}

TEST(QuerierPlace, TakesAFreeAddressWhereTheSwitchHasNone) {
    Star star;
    star.b.querier(star.other, star.vlan, "10.20.0.3");
    star.b.change<model::Device>(star.a, [](auto& row) { row.addresses.clear(); });
    const auto cure = cured(star.b.design, finding_of(star.b.design, "querier-place"));
    EXPECT_THAT(cure.devices.find(star.a)->bridging.queriers,
                ElementsAre(model::Querier{star.vlan, base::parse_ipv4("10.20.0.1")}));
    star.b.change<model::Vlan>(star.vlan, [](auto& row) { row.subnet.reset(); });
    EXPECT_THAT(finding_of(star.b.design, "querier-place").remedies, IsEmpty()) << "no address, nobody would follow";
}

TEST(QuerierPlace, OneEditOnACleanDesignGivesExactlyIt) {
    // A second stream on switch A that nobody shows: asking at B takes both over the trunk.
    auto c = clean_design();
    c.b.change<model::Device>(c.switch_a, [&](auto& row) {
        std::erase_if(row.bridging.queriers, [&](const auto& each) { return each.vlan == c.usual; });
    });
    c.b.change<model::Device>(c.switch_b, [&](auto& row) {
        row.bridging.queriers.push_back(
            {c.usual, row.addresses.empty() ? base::parse_ipv4("10.30.0.9") : row.addresses.front().address});
    });
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
    c.b.stream(c.encoder, 200_Mbps, "239.192.1.9");
    EXPECT_THAT(rules_found(c.design()), ElementsAre("querier-place"));
}

}  // namespace streamwright::test::querier_place_test
