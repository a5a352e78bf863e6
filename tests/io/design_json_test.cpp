// Designs to text and back: equal, byte for byte the same, nothing lost, short, one record a line.
#include "core/io/design_json.h"

#include "tests/io/sample_design.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <fstream>
#include <iterator>

namespace {

using namespace streamwright;
using namespace streamwright::io;

model::Design read_good(const std::string& text) {
    auto design = read_design(text, "room.streamwright");
    EXPECT_TRUE(design.ok()) << (design.ok() ? "" : design.error().english());
    return design.ok() ? *design : model::Design{};
}

TEST(DesignJson, EveryFieldTravels) {
    const auto design = test::full_design();
    const auto text = write_design(design);
    EXPECT_TRUE(read_good(text) == design);
    EXPECT_EQ(write_design(read_good(text)), text);
}

TEST(DesignJson, RandomDesignsTravelUnchanged) {
    for (std::uint64_t seed = 1; seed <= 12; ++seed) {
        const auto design = test::random_design(seed, 150);
        const auto text = write_design(design);
        const auto again = read_good(text);
        ASSERT_TRUE(again == design) << seed;
        ASSERT_EQ(write_design(again), text) << seed;
    }
}

TEST(DesignJson, OneRecordALineSortedByIdEndingWithANewline) {
    model::Design design;
    design.presets.put({model::PresetId(2), 2, "B", {}, {}});
    design.presets.put({model::PresetId(1), 1, "A", {}, {}});
    const auto text = write_design(design);
    EXPECT_THAT(text, testing::StartsWith("{\n\"format\":\"streamwright\",\n\"version\":1,\n\"settings\":[],\n"));
    EXPECT_THAT(text, testing::HasSubstr("\n\"presets\":[\n{\"id\":\"000000000001\",\"name\":\"A\"},\n"
                                         "{\"id\":\"000000000002\",\"number\":2,\"name\":\"B\"}\n],\n"));
    EXPECT_THAT(text, testing::EndsWith("\n}\n"));
}

TEST(DesignJson, UnknownKeysSurviveLoadEditAndSave) {
    const std::string text =
        "{\"format\":\"streamwright\",\"version\":1,\"pictures\":[{\"sha\":\"1\"},{\"sha\":\"2\"}],\"zoom\":1.5,"
        "\"rooms\":[{\"id\":\"000000000001\",\"name\":\"Hall\",\"colour\":{\"r\":1,\"a\":[true,null]},\"/odd~key\":7}],"
        "\"vlans\":[{\"id\":\"000000000002\"}],"
        "\"device_types\":[{\"key\":\"t\",\"name\":\"T\",\"maker\":\"Generic\",\"size\":{\"tilt\":3},"
        "\"novel\":[1]}],"
        "\"devices\":[{\"id\":\"000000000003\",\"type\":\"t\",\"bridging\":{\"stp_mode\":\"x\"},"
        "\"addresses\":[{\"address\":\"10.0.0.1\",\"lease_s\":60}]}]}";
    auto design = read_good(text);
    auto room = *design.rooms.begin();
    room.name = "Quay Hall";
    design.rooms.put(room);
    const auto saved = write_design(design);
    for (const char* kept : {"\"colour\":{\"r\":1,\"a\":[true,null]}", "\"/odd~key\":7", "\"stp_mode\":\"x\"",
                             "\"lease_s\":60", "\"novel\":[1]", "\"tilt\":3", "\"zoom\":1.5",
                             "\"pictures\":[\n{\"sha\":\"1\"},\n{\"sha\":\"2\"}\n]", "Quay Hall"})
        EXPECT_THAT(saved, testing::HasSubstr(kept));
    EXPECT_TRUE(read_good(saved) == design);
    EXPECT_EQ(write_design(read_good(saved)), saved);
}

TEST(DesignJson, AnUnknownKeyOfAListElementGoesWithTheElement) {
    auto design = read_good(
        "{\"format\":\"streamwright\",\"version\":1,\"device_types\":[{\"key\":\"t\",\"name\":\"T\",\"maker\":"
        "\"Generic\"}],"
        "\"devices\":[{\"id\":\"000000000003\",\"type\":\"t\",\"addresses\":[{\"address\":\"10.0.0.1\",\"lease_s\":60}]"
        "}]}");
    auto device = *design.devices.begin();
    device.addresses.clear();
    design.devices.put(device);
    EXPECT_THAT(write_design(design), testing::Not(testing::HasSubstr("lease_s")));
}

TEST(DesignJson, AnUnknownKeyNeverBringsBackAPartThatWasCleared) {
    auto design = read_good(
        "{\"format\":\"streamwright\",\"version\":1,\"device_types\":[{\"key\":\"t\",\"name\":\"T\",\"maker\":"
        "\"Generic\"}],"
        "\"racks\":[{\"id\":\"000000000001\"}],\"devices\":[{\"id\":\"000000000003\",\"type\":\"t\","
        "\"rack\":{\"rack\":\"000000000001\",\"tilt\":3}}]}");
    EXPECT_THAT(write_design(design), testing::HasSubstr("\"tilt\":3"));
    auto device = *design.devices.begin();
    device.rack.reset();
    design.devices.put(device);
    EXPECT_FALSE(read_good(write_design(design)).devices.begin()->rack.has_value());
}

TEST(DesignJson, ReadsRecordsInAnyOrderAndWithAByteOrderMark) {
    const auto design = read_good(
        "\xEF\xBB\xBF{\"presets\":[{\"name\":\"B\",\"id\":\"000000000002\"},{\"id\":\"000000000001\"}],"
        "\"version\":1,\"format\":\"streamwright\"}");
    EXPECT_EQ(design.presets.size(), 2U);
}

TEST(DesignJson, TheReleasedFileOfVersion1StillOpens) {
    std::ifstream file(STREAMWRIGHT_SOURCE_DIR "/tests/released/version-1.streamwright", std::ios::binary);
    const std::string text((std::istreambuf_iterator<char>(file)), {});
    ASSERT_FALSE(text.empty());
    const auto design = read_good(text);
    EXPECT_EQ(design.devices.size(), 3U);
    EXPECT_EQ(design.settings().title, "Ferrow Quay");
    EXPECT_EQ(write_design(design), text) << "the form changed: it needs a new version and a migration";
}

}  // namespace
