#include "tests/model/edits/edit_expect.h"

namespace {

using namespace streamwright;
using namespace streamwright::model;
using test::done, test::refused, test::row_of;

struct Two {
    test::DesignBuilder b;
    VlanId av = b.vlan(20, "AV", "10.20.0.0/24"), other = b.vlan(30, "Other");
    DeviceId first = b.device(test::types::switch_24(), "SW-1"), second = b.device(test::types::switch_24(), "SW-2");
    base::Ipv4 address = *base::parse_ipv4("10.20.0.9");

    Two() {
        b.querier(first, av, "10.20.0.2");
        b.querier(first, other);
    }
    std::vector<Querier> at(const Design& design, DeviceId id) const {
        return row_of<Device>(design, id).bridging.queriers;
    }
};

TEST(MoveQuerier, OneAsksInPlaceOfTheOther) {
    const Two t;
    const auto design = done(t.b.design, MoveQuerier{t.av, t.first, t.second, t.address});
    EXPECT_EQ(t.at(design, t.first), (std::vector<Querier>{{t.other, {}}})) << "other VLANs are left alone";
    EXPECT_EQ(t.at(design, t.second), (std::vector<Querier>{{t.av, t.address}}));
    const auto back = done(design, MoveQuerier{t.av, t.second, t.first, *base::parse_ipv4("10.20.0.2")});
    EXPECT_EQ(t.at(back, t.second), std::vector<Querier>{});
}

TEST(MoveQuerier, OnOneSwitchItOnlyChangesTheAddress) {
    const Two t;
    const auto design = done(t.b.design, MoveQuerier{t.av, t.first, t.first, t.address});
    EXPECT_EQ(t.at(design, t.first), (std::vector<Querier>{{t.other, {}}, {t.av, t.address}}));
}

TEST(MoveQuerier, SaysWhyNot) {
    Two t;
    const auto encoder = t.b.device(test::types::encoder(), "ENC-1");
    EXPECT_SAYS(refused(t.b.design, MoveQuerier{t.av, t.second, t.first, {}}),
                "SW-2 does not ask for members in VLAN 20");
    EXPECT_SAYS(refused(t.b.design, MoveQuerier{t.av, t.first, encoder, {}}), "ENC-1 is no switch");
    EXPECT_SAYS(refused(t.b.design, MoveQuerier{t.av, t.first, t.second, base::parse_ipv4("10.21.0.9")}),
                "10.21.0.9 is not in the subnet 10.20.0.0/24");
    EXPECT_SAYS(refused(t.b.design, MoveQuerier{VlanId(99), t.first, t.second, {}}), "no VLAN");
    EXPECT_SAYS(refused(t.b.design, MoveQuerier{t.av, t.first, DeviceId(99), {}}), "no device");
    EXPECT_SAYS(refused(t.b.design, MoveQuerier{t.av, DeviceId(99), t.first, {}}), "no device");
}

}  // namespace
