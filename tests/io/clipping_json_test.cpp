// Copied devices through text and back; anything else on the clipboard gives the one sentence.
#include "core/io/clipping_json.h"

#include "core/io/design_json.h"
#include "core/model/clipping.h"
#include "tests/io/sample_design.h"

#include <gtest/gtest.h>

namespace {

using namespace streamwright;
using namespace streamwright::io;

std::vector<model::DeviceId> all_devices(const model::Design& design) {
    std::vector<model::DeviceId> ids;
    for (const auto& row : design.devices) ids.push_back(row.id);
    return ids;
}

void expect_refused(std::string_view text) {
    const auto read = read_clipping(text);
    ASSERT_FALSE(read.ok()) << text;
    EXPECT_EQ(read.error().english(), "The clipboard holds no devices to paste; copy some on a sheet first.");
}

TEST(ClippingJson, WhatIsCopiedTravelsUnchanged) {
    for (std::uint64_t seed = 1; seed <= 8; ++seed) {
        const auto design = test::random_design(seed, 150);
        for (const auto& sheet : design.sheets) {
            const auto clipping = model::copied(design, all_devices(design), sheet.id);
            if (clipping.devices.empty()) continue;
            const auto read = read_clipping(write_clipping(clipping));
            ASSERT_TRUE(read.ok()) << read.error().english();
            EXPECT_TRUE(*read == clipping) << seed;
        }
    }
}

TEST(ClippingJson, AnythingElseIsRefusedInOneSentence) {
    for (const char* text : {"", " \n", "Lectern PC", "{}", "[1, 2]", "{\"format\":\"streamwright\",\"version\":99}",
                             "<html><b>copied from a page</b></html>", "\xff\xfe\x01"})
        expect_refused(text);
    expect_refused(write_design(model::Design()));
}

TEST(ClippingJson, ACutOffTextIsRefusedWhereverItEnds) {
    const auto design = test::full_design();
    const auto text = write_clipping(model::copied(design, all_devices(design), design.sheets.begin()->id));
    for (std::size_t length = 0; length + 2 < text.size(); length += 7) expect_refused(text.substr(0, length));
}

}  // namespace
