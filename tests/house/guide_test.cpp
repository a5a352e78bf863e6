// The generated chapters of the user guide say what the program says.
#include "core/deliver/rule_page.h"
#include "tests/house/source_tree.h"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>

namespace streamwright::test::guide {

TEST(Guide, TheChapterOfRulesIsAsTheRulesAre) {
    std::ifstream file(source_root() / "resources/guide/rules.md", std::ios::binary);
    const std::string page{std::istreambuf_iterator<char>(file), {}};
    EXPECT_TRUE(page == deliver::rules_guide()) << "run write_guide resources/guide after changing a rule or its words";
}

}  // namespace streamwright::test::guide
