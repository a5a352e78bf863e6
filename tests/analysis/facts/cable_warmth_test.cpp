#include "core/analysis/facts/cable_warmth.h"

#include "tests/support/design_builder.h"

#include <gtest/gtest.h>

namespace streamwright::test::cable_warmth_test {

using namespace base::literals;

struct Room {
    DesignBuilder b;
    model::DeviceId bridge = b.device(types::switch_24(), "SW-1"), decoder = b.device(types::decoder(), "DEC-1");
    model::DeviceId other = b.device(types::switch_24(), "SW-2");
    model::CableId powered = b.cable(types::cat6a(), port_of(decoder, "net"), port_of(bridge, "1"), 10_m);
    model::CableId trunk = b.cable(types::cat6a(), port_of(other, "1"), port_of(bridge, "2"), 10_m);
    analysis::CableWarmth of(model::CableId cable) const {
        const auto wiring = graph::wire(b.design);
        const auto runs = graph::find_runs(wiring);
        const auto run = runs.run_of_cable.at(static_cast<std::size_t>(*wiring.cable_index(cable)));
        return analysis::cable_warmth(wiring, runs.list.at(static_cast<std::size_t>(run)));
    }
};

TEST(CableWarmth, theHottestPlannedCounts) {
    Room room;
    EXPECT_EQ(room.of(room.powered).total(), 20_degC);  // COP-008: lengths are stated for 20 degrees C
    room.b.change<model::Settings>({}, [](auto& row) { row.cable_temperature = 30_degC; });
    const auto hall = room.b.room("1.01", "Hall");
    room.b.change<model::Room>(hall, [](auto& row) { row.temperature = 35_degC; });
    room.b.change<model::Device>(room.decoder, [&](auto& row) { row.room = hall; });
    EXPECT_EQ(room.of(room.powered).total(), 35_degC);
    EXPECT_EQ(room.of(room.trunk).total(), 30_degC);
}

TEST(CableWarmth, theBundleIsWarmerWhereItCarriesPower) {
    Room room;
    room.b.change<model::Settings>({}, [](auto& row) {
        row.cable_temperature = 35_degC;
        row.cabling.bundle_rise = 15_degC;  // POE-036, TIA TSB-184-A, from memory: a setting
    });
    EXPECT_EQ(room.of(room.powered).total(), 50_degC);
    EXPECT_EQ(room.of(room.powered).rise, 15_degC);
    EXPECT_EQ(room.of(room.trunk).total(), 35_degC);
}

}  // namespace streamwright::test::cable_warmth_test
