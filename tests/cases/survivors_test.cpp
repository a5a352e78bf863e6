// Designs that are spoilt and still read: whatever the reader lets through, the analysis must end, name each finding
// once, and put it into words.
#include "core/analysis/analyser.h"
#include "core/analysis/report.h"
#include "core/io/design_json.h"
#include "tests/support/clean_design.h"
#include "tests/support/demo_designs.h"
#include "tests/support/mutate.h"
#include "tests/support/random_edit.h"

#include <gtest/gtest.h>

#include <set>

namespace streamwright::test::survivors_test {

/// The clean design after so many random edits.
model::Design edited(int edits) {
    auto design = clean_design().design();
    const auto library = types::all();
    std::mt19937_64 random(61);
    for (int step = 0; step < edits; ++step)
        if (const auto edit = random_edit(design, library, random))
            if (const auto delta = model::make_edit(design, *edit); delta.ok()) model::apply(design, *delta);
    return design;
}

void expect_analysed(const model::Design& design, const std::string& text) {
    const auto analysis = analysis::analyse(design);
    const auto book = analysis::english(design);
    std::set<std::string> keys;
    for (const auto& finding : analysis.findings) {
        EXPECT_TRUE(keys.insert(finding.key()).second) << finding.key() << "\nin: " << text;
        EXPECT_FALSE(analysis::sentence(finding, book).empty());
    }
}

TEST(Survivors, SpoiltDesignsThatAreReadAreAnalysed) {
    const std::vector<std::string> texts{io::write_design(huddle_room().design),
                                         io::write_design(clean_design().design()), io::write_design(edited(30))};
    std::mt19937_64 random(59);
    int analysed = 0;
    for (const auto& text : texts)
        for (int round = 0, here = 0; round < 500 && here < 10; ++round) {
            const auto spoilt = mutated(text, random);
            const auto read = io::read_design(spoilt, "spoilt");
            if (!read.ok()) continue;
            ++here, ++analysed;
            expect_analysed(*read, spoilt);
        }
    EXPECT_GE(analysed, 10) << "too few get past the reader to show anything";
}

}  // namespace streamwright::test::survivors_test
