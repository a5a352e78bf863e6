#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::planes_share_test {

using testing::Contains;
using testing::ElementsAre;
using testing::Not;
using namespace base::literals;

/// Two planes of two switches each, a VLAN a plane; an encoder and a decoder with a port on each.
struct Planes {
    DesignBuilder b;
    model::VlanId vlans[2] = {b.vlan(10, "Red", "10.1.0.0/24"), b.vlan(20, "Blue", "10.2.0.0/24")};
    model::DeviceId near[2]{model::DeviceId(0), model::DeviceId(0)}, far[2]{model::DeviceId(0), model::DeviceId(0)};
    model::DeviceId encoder{0}, decoder{0};
    model::CableId trunks[2]{model::CableId(0), model::CableId(0)};
    model::StreamId red{0}, blue{0};
    model::PresetId preset{0};

    explicit Planes(std::optional<standards::SkewClass> skew = {}, base::Length blue_trunk = 10_m) {
        auto sends = types::make_encoder(), shows = types::make_decoder();
        for (auto* type : {&sends, &shows}) {
            type->key.text += "-two";
            type->ports.push_back(types::make_network_port("net2", {1_Gbps}));
        }
        shows.codec->skew_class = skew;
        encoder = b.device(sends, "ENC"), decoder = b.device(shows, "DEC");
        for (int plane = 0; plane < 2; ++plane) lay(plane, plane == 0 ? 10_m : blue_trunk);
        red = b.stream(encoder, 100_Mbps, "239.1.1.1", vlans[0]);
        blue = b.stream(encoder, 100_Mbps, "239.2.1.1", vlans[1]);
        b.change<model::Stream>(blue, [&](auto& row) {
            row.network_port = model::PortKey{"net2"};
            row.twin = red;
        });
        preset = b.preset("Show");
        b.subscribe(preset, red, decoder);
    }
    void lay(int plane, base::Length trunk) {
        const auto name = std::string(plane == 0 ? "R" : "B");
        near[plane] = b.device(types::switch_24(), "SW-" + name + "1");
        far[plane] = b.device(types::switch_24(), "SW-" + name + "2");
        b.querier(near[plane], vlans[plane], plane == 0 ? "10.1.0.1" : "10.2.0.1");
        trunks[plane] =
            b.cable(types::cat6a(), port_of(near[plane], "24"), port_of(far[plane], "24"), trunk, "T-" + name);
        const auto* port = plane == 0 ? "net" : "net2";
        b.cable(types::cat6a(), port_of(encoder, port), port_of(near[plane], "1"), 10_m, "E-" + name);
        b.cable(types::cat6a(), port_of(decoder, port), port_of(far[plane], "1"), 10_m, "D-" + name);
        for (const auto& at : {port_of(near[plane], "24"), port_of(far[plane], "24"), port_of(near[plane], "1"),
                               port_of(far[plane], "1")})
            b.port(at, [&](auto& row) { row.untagged = vlans[plane]; });
    }
};

analysis::LinkLoads loads_of(const model::Design& design) {
    return analysis::analyse(design).facts.get<analysis::LinkLoads>();
}

TEST(PlanesShare, ASubscriptionTakesBothAndNeitherFailureTakesThePicture) {
    Planes p;
    EXPECT_THAT(rules_found(p.b.design), Not(Contains("planes-share")));
    const auto loads = loads_of(p.b.design);
    for (const auto& unserved : loads.presets.at(0).unserved) EXPECT_TRUE(unserved.empty());
    auto settings = p.b.design.settings();
    settings.survive = model::Survival::link_or_switch;
    p.b.put(settings);
    EXPECT_THAT(rules_found(p.b.design), Not(Contains("single-point-of-failure")));
    p.b.change<model::Stream>(p.blue, [](auto& row) { row.twin.reset(); });
    EXPECT_THAT(rules_found(p.b.design), Contains("single-point-of-failure")) << "without its twin";
}

TEST(PlanesShare, FiresOnACommonDuct) {
    Planes p;
    for (const auto id : p.trunks) p.b.change<model::Cable>(id, [](auto& row) { row.duct = "Trench"; });
    const auto finding = finding_of(p.b.design, "planes-share");
    EXPECT_THAT(finding.subjects,
                ElementsAre(analysis::Subject(std::min(p.red, p.blue)), analysis::Subject(std::max(p.red, p.blue))));
    EXPECT_THAT(terms_of(p.b.design, finding), ElementsAre("both need Trench"));
}

TEST(PlanesShare, FiresOnACommonSwitch) {
    Planes p;
    p.b.change<model::Device>(p.near[0], [](auto& row) { row.bridging.stack = "core"; });
    p.b.change<model::Device>(p.near[1], [](auto& row) { row.bridging.stack = "core"; });
    EXPECT_THAT(rules_found(p.b.design), Not(Contains("planes-share"))) << "one member takes one plane";
    Planes q;
    q.b.change<model::Cable>(q.trunks[1], [&](auto& row) { row.a->port = port_of(q.near[0], "23"); });
    q.b.port(port_of(q.near[0], "23"), [&](auto& row) { row.untagged = q.vlans[1]; });
    q.b.port(port_of(q.near[0], "2"), [&](auto& row) { row.untagged = q.vlans[1]; });
    for (const auto& cable : model::Design(q.b.design).cables)
        if (cable.tag == "E-B")
            q.b.change<model::Cable>(cable.id, [&](auto& row) { row.b->port = port_of(q.near[0], "2"); });
    q.b.querier(q.far[1], q.vlans[1], "10.2.0.2");
    const auto finding = finding_of(q.b.design, "planes-share");
    EXPECT_THAT(terms_of(q.b.design, finding), ElementsAre("both need SW-R1"));
}

// The ways differ by the trunk alone: 5.45 ns a metre more of copper, and what queues: each stream is alone on its
// lines, so nothing. Class D allows 150 us: 27,522 m and 9 cm more (150,000 / 5.45 = 27,522.9).
TEST(PlanesShare, TheDifferenceIsHeldAgainstTheClassOfTheReceiver) {
    const auto told = [](std::optional<standards::SkewClass> skew, int metres) {
        const Planes p(skew, base::Length::from_count(metres * 1'000'000LL));
        const auto rules = rules_found(p.b.design);
        return std::count(rules.begin(), rules.end(), "planes-share");
    };
    EXPECT_EQ(told(standards::SkewClass::ultra_low, 10 + 27'522), 0);
    EXPECT_EQ(told(standards::SkewClass::ultra_low, 10 + 27'523), 1);
    EXPECT_EQ(told(standards::SkewClass::low, 10 + 27'523), 0) << "class A allows 10 ms";
    EXPECT_EQ(told({}, 10 + 27'523), 0) << "the type states no class";
}

TEST(PlanesShare, IsSilentAboutTheDifferenceWhereALengthIsMissing) {
    Planes p(standards::SkewClass::ultra_low, 30'000_m);
    EXPECT_THAT(rules_found(p.b.design), Contains("planes-share"));
    p.b.change<model::Cable>(p.trunks[1], [](auto& row) { row.length.reset(); });
    EXPECT_THAT(rules_found(p.b.design), Not(Contains("planes-share")));
}

}  // namespace streamwright::test::planes_share_test
