// Names resolved to indices, and back. Expected values: the rows that were put in.
#include "core/graph/wiring.h"

#include "tests/support/design_builder.h"

#include <gtest/gtest.h>

namespace streamwright::graph {
namespace {

using test::DesignBuilder;
using test::port_of;
namespace types = test::types;

TEST(Wiring, ResolvesDevicesPortsAndCables) {
    DesignBuilder b;
    const auto sw = b.device(types::switch_24(), "SW");
    const auto enc = b.device(types::encoder(), "ENC");
    const auto cable = b.cable(types::cat6a(), port_of(sw, "10"), port_of(enc, "net"));
    const auto wiring = wire(b.design);
    ASSERT_EQ(wiring.devices.size(), 2U);
    const auto at = wiring.port_at(port_of(sw, "10"));
    ASSERT_TRUE(at);
    EXPECT_EQ(wiring.port_type(*at).key.text, "10");
    EXPECT_EQ(wiring.ref(*at), port_of(sw, "10"));
    EXPECT_TRUE(wiring.is_network_port(*at));
    EXPECT_FALSE(wiring.is_passive(*at));
    ASSERT_EQ(wiring.cables_at(*at).size(), 1U);
    const int index = wiring.cables_at(*at)[0];
    EXPECT_EQ(wiring.cable_index(cable), index);
    EXPECT_EQ(wiring.far_end(index, *at), wiring.port_at(port_of(enc, "net")));
}

TEST(Wiring, LeavesWhatIsNotThereUnresolved) {
    DesignBuilder b;
    const auto sw = b.device(types::switch_24(), "SW");
    const auto lost = b.cable(types::cat6a(), port_of(sw, "no such port"), port_of(b.fresh<model::DeviceId>(), "1"));
    b.change<model::Device>(b.device(types::encoder(), "ENC"), [](auto& row) { row.type = {"no.such.type"}; });
    const auto wiring = wire(b.design);
    const auto& cable = wiring.cables[static_cast<std::size_t>(*wiring.cable_index(lost))];
    EXPECT_FALSE(cable.a);
    EXPECT_FALSE(cable.b);
    int typeless = 0;
    for (const auto& device : wiring.devices) typeless += device.type ? 0 : 1;
    EXPECT_EQ(typeless, 1);
    EXPECT_FALSE(wiring.device_index(b.fresh<model::DeviceId>()));
}

TEST(Wiring, TellsKeysApartThatBeginAlike) {
    auto type = types::make_decoder();
    type.key = {"test.alike"};
    for (const char* key : {"network port 2", "network port 1", "network port"})
        type.ports.push_back(types::make_network_port(key, {base::BitRate::from_count(1)}));
    DesignBuilder b;
    const auto device = b.device(type, "X");
    const auto wiring = wire(b.design);
    for (const char* key : {"network port", "network port 1", "network port 2", "net", "out"})
        EXPECT_EQ(wiring.ref(*wiring.port_at(port_of(device, key))).port.text, key);
    EXPECT_FALSE(wiring.port_at(port_of(device, "network port 3")));
}

TEST(Wiring, RolesOfAnEndpointAreUndecidedUntilSet) {
    DesignBuilder b;
    const auto ep = b.device(types::endpoint(), "EP");
    EXPECT_TRUE(wire(b.design).roles(0).empty());
    b.change<model::Device>(ep, [](auto& row) { row.roles = {catalogue::Role::decoder}; });
    EXPECT_EQ(wire(b.design).roles(0), std::vector{catalogue::Role::decoder});
}

}  // namespace
}  // namespace streamwright::graph
