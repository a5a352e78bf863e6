// Switches that give power, and their ports.
#include "tests/deliver/small_venue.h"

#include <gtest/gtest.h>

namespace streamwright::test::poe_plan {

using namespace base::literals;

TEST(PoePlan, TellsWhatIsReservedAndWhatArrives) {
    SmallVenue venue;
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("poe-plan");
    const auto &switches = table(content), &ports = table(content, 1);
    ASSERT_EQ(switches.rows.size(), 1u);
    EXPECT_EQ(cell(switches, switches.rows.front(), "Supplies"), "one");
    EXPECT_EQ(cell(switches, switches.rows.front(), "Reserves"), "by class");
    EXPECT_EQ(cell(switches, switches.rows.front(), "Budget, W"), "740000");
    ASSERT_EQ(ports.rows.size(), 4u);
    const auto& port = ports.rows.front();
    EXPECT_EQ(cell(ports, port, "Class asked"), "3");
    EXPECT_EQ(cell(ports, port, "Reserved, W"), "15400");  // POE-021
    EXPECT_EQ(cell(ports, port, "Starts"), "yes");
    EXPECT_NE(ports.notes.back().find("Local electrical codes"), std::string::npos);
}

TEST(PoePlan, CriticalPortsStandFirst) {
    SmallVenue venue;
    for (const char* port : {"1", "2"})
        venue.b.port(port_of(venue.sw, port), [&](auto& row) {
            row.poe.priority = port == std::string("2") ? model::PoePriority::critical : model::PoePriority::low;
        });
    const Delivered delivered(venue.b.design);
    const auto content = delivered.document("poe-plan");
    const auto& ports = table(content, 1);
    ASSERT_EQ(ports.rows.size(), 4u);
    EXPECT_EQ(cell(ports, ports.rows.front(), "Priority"), "critical");
}

}  // namespace streamwright::test::poe_plan
