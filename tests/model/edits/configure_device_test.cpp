#include "tests/model/edits/edit_expect.h"

namespace {

using namespace streamwright;
using namespace streamwright::model;
using test::done, test::refused;

TEST(ConfigureDevice, SetsUpButNeitherRenamesNorMoves) {
    test::DesignBuilder b;
    const auto id = b.device(test::types::endpoint(), "EP-1");
    const auto room = b.room("1", "Hall");
    b.change<Device>(id, [&](Device& row) { row.room = room; });
    Device row = *b.design.devices.find(id);
    row.roles = {catalogue::Role::decoder};
    row.host_name = "ep-1";
    row.tag = "other";
    row.room.reset();
    const auto design = done(b.design, ConfigureDevice{row});
    const auto& now = test::row_of<Device>(design, id);
    EXPECT_EQ(now.roles, row.roles);
    EXPECT_EQ(now.host_name, "ep-1");
    EXPECT_EQ(now.tag, "EP-1");
    EXPECT_EQ(now.room, room);
}

TEST(ConfigureDevice, AllowsBothRolesWhereTheTypeHasBothBecauseARuleSpeaksThen) {
    test::DesignBuilder b;
    Device row = *b.design.devices.find(b.device(test::types::endpoint(), "EP-1"));
    row.roles = {catalogue::Role::encoder, catalogue::Role::decoder};
    done(b.design, ConfigureDevice{row});
}

TEST(ConfigureDevice, RefusesWhatCannotBe) {
    test::DesignBuilder b;
    const Device encoder = *b.design.devices.find(b.device(test::types::encoder(), "ENC-1"));
    Device row = encoder;
    row.roles = {catalogue::Role::decoder};
    EXPECT_SAYS(refused(b.design, ConfigureDevice{row}), "ENC-1 cannot be set to the role decoder");
    row = encoder;
    row.bridging.priority = 4097;
    EXPECT_SAYS(refused(b.design, ConfigureDevice{row}), "bridge priority must be from 0 to 61440 in steps of 4096");
    row = encoder;
    row.addresses = {{PortKey{"none"}, {}, {}, {}}};
    EXPECT_SAYS(refused(b.design, ConfigureDevice{row}), "no port none");
    row = encoder;
    row.bridging.queriers = {{VlanId(5), {}}};
    EXPECT_SAYS(refused(b.design, ConfigureDevice{row}), "names the VLAN");
    EXPECT_SAYS(refused(b.design, ConfigureDevice{Device::blank(DeviceId(77))}), "no device");
}

}  // namespace
