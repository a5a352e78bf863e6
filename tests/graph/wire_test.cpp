// What an earlier wiring spares must change no answer: after each of many random edits, over every verb and undone in
// turn, the wiring made beside the earlier one is the one that is made fresh.
#include "core/graph/wiring.h"
#include "core/model/edits/all_edits.h"
#include "tests/support/design_builder.h"
#include "tests/support/random_edit.h"
#include "tests/support/random_network.h"

#include <gtest/gtest.h>

namespace streamwright::graph {
namespace {

void expect_same(const Wiring &a, const Wiring &b) {
    ASSERT_EQ(a.devices.size(), b.devices.size());
    for (std::size_t i = 0; i < a.devices.size(); ++i) {
        const auto &x = a.devices[i], &y = b.devices[i];
        EXPECT_TRUE(x.row == y.row && x.type == y.type && x.room == y.room) << i;
        EXPECT_TRUE(x.first_port == y.first_port && x.port_index == y.port_index) << i;
        EXPECT_TRUE(x.sends == y.sends && x.shows == y.shows) << i;
        EXPECT_EQ(b.device_index(x.row->id), a.device_index(x.row->id));
    }
    ASSERT_EQ(a.cables.size(), b.cables.size());
    for (std::size_t i = 0; i < a.cables.size(); ++i) {
        const auto &x = a.cables[i], &y = b.cables[i];
        EXPECT_TRUE(x.row == y.row && x.type == y.type && x.a == y.a && x.b == y.b) << i;
        EXPECT_EQ(b.cable_index(x.row->id), static_cast<int>(i));
    }
    ASSERT_EQ(a.streams.size(), b.streams.size());
    for (std::size_t i = 0; i < a.streams.size(); ++i) {
        EXPECT_TRUE(a.streams[i].row == b.streams[i].row && a.streams[i].encoder == b.streams[i].encoder) << i;
        EXPECT_EQ(b.stream_index(a.streams[i].row->id), static_cast<int>(i));
    }
    ASSERT_EQ(a.subscriptions.size(), b.subscriptions.size());
    for (std::size_t i = 0; i < a.subscriptions.size(); ++i) {
        const auto &x = a.subscriptions[i], &y = b.subscriptions[i];
        EXPECT_TRUE(x.row == y.row && x.stream == y.stream && x.decoder == y.decoder) << i;
    }
    EXPECT_EQ(a.overrides, b.overrides);
    EXPECT_EQ(a.cable_starts, b.cable_starts);
    EXPECT_EQ(a.cable_list, b.cable_list);
    ASSERT_EQ(a.port_indices.size(), b.port_indices.size());
    for (std::size_t i = 0; i < a.port_indices.size(); ++i) {
        EXPECT_EQ(a.port_indices[i].type, b.port_indices[i].type);
        EXPECT_EQ(a.port_indices[i].like, b.port_indices[i].like);
    }
}

TEST(Wire, AnEarlierWiringChangesNoAnswer) {
    const auto library = test::types::all();
    for (unsigned seed = 1; seed <= 12; ++seed) {
        std::mt19937_64 random(seed);
        auto design = test::random_network(seed);
        auto earlier = wire(design);
        for (int i = 0; i < 80; ++i) {
            const auto edit = test::random_edit(design, library, random);
            ASSERT_TRUE(edit);
            const auto delta = model::make_edit(design, *edit);
            ASSERT_TRUE(delta.ok());
            model::apply(design, *delta);
            earlier = wire(design, earlier);
            expect_same(earlier, wire(design));
            if (i % 5 != 0 || testing::Test::HasFailure()) continue;
            model::apply(design, delta->inverse());
            earlier = wire(design, earlier);
            expect_same(earlier, wire(design));
        }
    }
}

}  // namespace
}  // namespace streamwright::graph
