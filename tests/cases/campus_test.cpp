// The generated campus: as large as asked, sound, the same for a seed, and without errors of its own making.
#include "tests/support/campus.h"

#include "core/io/design_json.h"
#include "core/model/integrity.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>

namespace streamwright::test {

namespace campus_test {

std::size_t count_of(const model::Design& design, const std::string& prefix) {
    return static_cast<std::size_t>(std::count_if(design.devices.begin(), design.devices.end(), [&](const auto& row) {
        return row.tag.compare(0, prefix.size(), prefix) == 0;
    }));
}

TEST(Campus, HasTheEndpointsSwitchesAndStreamsAskedFor) {
    const auto design = campus(300, 1);
    EXPECT_EQ(count_of(design, "ENC-") + count_of(design, "DEC-"), 300U);
    EXPECT_EQ(count_of(design, "SW-A"), 12U);  // 25 endpoints each
    EXPECT_EQ(count_of(design, "SW-G"), 2U);   // 10 access switches each
    EXPECT_EQ(count_of(design, "SW-CORE"), 1U);
    EXPECT_EQ(design.streams.size(), 2 * count_of(design, "ENC-"));
    EXPECT_EQ(design.presets.size(), 4U);
}

TEST(Campus, PlacesEveryDeviceOnASheet) {
    const auto design = campus(60, 2);
    std::set<model::DeviceId> placed;
    for (const auto& place : design.places) placed.insert(place.on.device);
    EXPECT_EQ(placed.size(), design.devices.size());
    EXPECT_EQ(design.cable_lines.size(), design.cables.size());
}

TEST(Campus, IsSoundAndTheSameForASeed) {
    const auto design = campus(110, 7);
    EXPECT_TRUE(model::broken_bonds(design).empty());
    EXPECT_EQ(design, campus(110, 7));
    EXPECT_NE(io::write_design(design), io::write_design(campus(110, 8)));
}

TEST(Campus, GivesNoTwoDevicesOneAddressAndNoTwoStreamsOneGroup) {
    const auto design = campus(1000, 3);
    std::set<base::Ipv4> hosts, groups;
    for (const auto& device : design.devices)
        for (const auto& host : device.addresses) EXPECT_TRUE(hosts.insert(*host.address).second);
    for (const auto& stream : design.streams) EXPECT_TRUE(groups.insert(*stream.group).second);
}

TEST(Campus, CanBeTheNetworkAlone) {
    const auto design = campus(100, 4, CampusParts::network_only);
    EXPECT_EQ(design.devices.size(), 100U + 4U + 1U + 1U);
}

}  // namespace campus_test

}  // namespace streamwright::test
