// EDID facts against tests/reference (rows LNK-068 to LNK-070, AUD-012).
#include "core/standards/edid.h"

#include "core/standards/video_timing.h"
#include "tests/standards/reference_rows.h"

#include <gtest/gtest.h>

namespace streamwright::test::edid {

using namespace standards;

TEST(Edid, SizesAreAsPublished) {
    EXPECT_EQ(edid_block_octets, row_number("LNK-068", 0));
    EXPECT_EQ(most_edid_blocks, row_number("LNK-069", 0));
}

TEST(Edid, The4kFormatsOfHdmiAreThoseOfCta) {
    std::string codes;
    for (int i = 1; i <= 4; ++i) codes += (i > 1 ? ", " : "") + std::to_string(*cta_code_of_hdmi_4k(i));
    EXPECT_EQ(codes, reference_row("LNK-070").value);
    EXPECT_FALSE(cta_code_of_hdmi_4k(0));
    EXPECT_FALSE(cta_code_of_hdmi_4k(5));
}

TEST(Edid, AudioCodesAreAsPublished) {
    const std::string value = reference_row("AUD-012").value;
    for (const auto& format : edid_audio_formats()) {
        const bool named = format.name.find(' ') == std::string_view::npos;
        const auto said = std::to_string(format.code) + (named ? " " + std::string(format.name) : "");
        EXPECT_NE(value.find(said), std::string::npos) << said;
    }
    EXPECT_EQ(edid_audio_formats().size(), 6U) << value;
}

}  // namespace streamwright::test::edid
