// Delays that people notice against tests/reference (rows LAT-028 to LAT-034).
#include "core/standards/response_targets.h"

#include "core/standards/audio_streams.h"
#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::response_targets {

using namespace standards;

std::int64_t milliseconds(base::Duration time) { return time.count() / 1'000'000; }

TEST(ResponseTargets, PairsOfRowsAreAsPublished) {
    const auto* talk = response_target("conversation, one way");
    ASSERT_NE(talk, nullptr);
    EXPECT_EQ(milliseconds(talk->good), row_number("LAT-028", 0));
    EXPECT_EQ(milliseconds(talk->most), row_number("LAT-029", 0));
    EXPECT_EQ(talk->source.standing == Standing::read, was_read("LAT-028"));
    const auto* pointer = response_target("pointer and keyboard");
    ASSERT_NE(pointer, nullptr);
    EXPECT_EQ(milliseconds(pointer->good), row_number("LAT-030", 0));
    EXPECT_EQ(milliseconds(pointer->most), row_number("LAT-031", 0));
    EXPECT_EQ(pointer->source.standing == Standing::read, was_read("LAT-030"));
}

TEST(ResponseTargets, RangesAreAsPublished) {
    for (const auto& [name, id] : {std::pair("direct view next to the presenter", "LAT-032"),
                                   std::pair("live image of a speaker in the same room", "LAT-033")}) {
        const auto* target = response_target(name);
        ASSERT_NE(target, nullptr) << name;
        EXPECT_TRUE(reference_row(id).quantity.starts_with(name)) << id;
        EXPECT_EQ(std::to_string(milliseconds(target->good)) + " to " + std::to_string(milliseconds(target->most)),
                  reference_row(id).value);
        EXPECT_EQ(target->source.standing == Standing::read, was_read(id)) << id;
    }
    EXPECT_EQ(response_target("none"), nullptr);
}

TEST(ResponseTargets, TheLinkOffsetIsPlannedInPacketTimes) {
    EXPECT_EQ(std::to_string(least_link_offset_packets) + " to " + std::to_string(most_link_offset_packets) +
                  " x packet time",
              reference_row("LAT-034").value);
    EXPECT_EQ(link_offset_source.standing == Standing::read, was_read("LAT-034"));
}

}  // namespace streamwright::test::response_targets
