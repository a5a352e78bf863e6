// Expected figures: by hand from IEEE 802.3 (18 octets of header and check, 20 of preamble and gap, 4 of a tag), RFC
// 3550 (12), 768 (8) and 791 (20): a packet of 1400 octets of payload is 1478 on the wire, 1482 with a tag.
#include "core/analysis/number_chains.h"

#include "core/analysis/report.h"
#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::number_chains_test {

using analysis::NumberChain;
using analysis::Subject;
using testing::ElementsAre;
using testing::IsEmpty;

std::vector<NumberChain> chains(const model::Design& design, const Subject& subject) {
    return analysis::number_chains(analysis::analyse(design).facts, subject);
}

std::vector<std::string> titles(const model::Design& design, const Subject& subject) {
    const auto book = analysis::english(design);
    std::vector<std::string> found;
    for (const auto& chain : chains(design, subject)) found.push_back(base::fill(chain.title, book));
    return found;
}

/// The figures of the lines that close a sum.
std::vector<base::Value> sums(const NumberChain& chain) {
    std::vector<base::Value> figures;
    for (const auto& line : chain.lines)
        if (line.sum) figures.push_back(line.figure);
    return figures;
}

base::Value bits(std::int64_t count) { return base::BitRate::from_count(count); }

TEST(NumberChains, aStreamTellsHowItsRateComesAbout) {
    const auto c = clean_design();
    const auto found = chains(c.design(), c.stream);
    ASSERT_EQ(found.size(), 1U);
    // 200,000,000 x 1478 / 1400, rounded up.
    EXPECT_THAT(sums(found[0]), ElementsAre(base::Value(std::int64_t{1478}), bits(211'142'858)));
    // With the tag 200,000,000 x 1482 / 1400.
    EXPECT_EQ(found[0].lines.back().figure, bits(211'714'286));
}

TEST(NumberChains, aCableTellsItsLengthAndTheLoadOfItsLinkBothWays) {
    const auto c = clean_design();
    const auto found = chains(c.design(), c.trunk);
    ASSERT_EQ(found.size(), 3U);
    EXPECT_THAT(titles(c.design(), c.trunk),
                testing::UnorderedElementsAre("Length and limit", testing::StartsWith("Load from SW-A"),
                                              testing::StartsWith("Load from SW-B")));
    // One stream untagged and one tagged: 200,000,000 x (1478 + 1482) / 1400, rounded up.
    int loaded = 0;
    for (const auto& chain : found)
        for (const auto& sum : sums(chain)) loaded += sum == bits(422'857'143) ? 1 : 0;
    EXPECT_EQ(loaded, 1);
}

TEST(NumberChains, aDecoderTellsHowLateItsPictureIs) {
    const auto c = clean_design();
    EXPECT_THAT(titles(c.design(), c.decoder), testing::Contains(testing::StartsWith("Delay of ")));
}

TEST(NumberChains, whatNoNumberIsReckonedForHasNone) {
    const auto c = clean_design();
    EXPECT_THAT(chains(c.design(), c.preset), IsEmpty());
    EXPECT_THAT(chains(c.design(), model::DeviceId(4711)), IsEmpty());
    EXPECT_THAT(chains(c.design(), model::PortRef{c.encoder, {"no-such-port"}}), IsEmpty());
}

TEST(NumberChains, namesAreTagsPortsIdsAndNamesOfPresets) {
    const auto c = clean_design();
    const auto& design = c.design();
    const auto tag = design.devices.find(c.switch_a)->tag;
    EXPECT_THAT(analysis::subjects_named(design, tag), ElementsAre(Subject(c.switch_a)));
    EXPECT_THAT(analysis::subjects_named(design, tag + " 1"), ElementsAre(Subject(model::PortRef{c.switch_a, {"1"}})));
    EXPECT_THAT(analysis::subjects_named(design, analysis::subject_text(c.shown)), ElementsAre(Subject(c.shown)));
    EXPECT_THAT(analysis::subjects_named(design, design.presets.find(c.preset)->name), ElementsAre(Subject(c.preset)));
    EXPECT_THAT(analysis::subjects_named(design, ""), IsEmpty());
    EXPECT_THAT(analysis::subjects_named(design, tag + " "), IsEmpty());
}

}  // namespace streamwright::test::number_chains_test
