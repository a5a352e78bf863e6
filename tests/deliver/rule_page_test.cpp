// The page of rules: complete, laid out for a terminal and as Markdown, its links leading somewhere.
#include "core/deliver/rule_page.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <set>
#include <sstream>

namespace streamwright::deliver {

namespace rule_page_test {

TEST(RulePage, EachRuleSaysWhatThePageNeeds) {
    for (const auto& rule : analysis::all_rules()) {
        const auto& words = rule.words;
        EXPECT_FALSE(words.measured.empty()) << words.id << ": say in its file how it is measured";
        EXPECT_FALSE(words.remedy.empty()) << words.id << ": say in its file what to do";
        for (const auto text : {words.meaning, words.measured, words.remedy})
            EXPECT_TRUE(text.ends_with('.')) << words.id;
        EXPECT_TRUE(words.offers.empty() || words.offers.ends_with('.')) << words.id;
        EXPECT_FALSE(words.title.ends_with('.')) << words.id;
    }
}

TEST(RulePage, ARuleForATerminalStandsUnderItsId) {
    const auto* rule = analysis::find_rule("copper-too-long");
    ASSERT_NE(rule, nullptr);
    const auto text = rule_text(rule->words);
    std::istringstream lines(text);
    std::string line;
    std::getline(lines, line);
    EXPECT_EQ(line, "copper-too-long (error)");
    while (std::getline(lines, line)) {
        EXPECT_TRUE(line.starts_with("    ")) << line;
        EXPECT_FALSE(line.ends_with(' ')) << line;
        const auto columns = std::ranges::count_if(line, [](char c) { return (c & 0xC0) != 0x80; });
        EXPECT_LE(columns, 100) << line;
    }
    for (const char* part : {"theme: ", "measured: ", "says: ", "remedy: ", "offers: ", "source: IEEE 802.3"})
        EXPECT_NE(text.find(part), std::string::npos) << part;
    EXPECT_NE(text.find("the channel from \u2026 to \u2026 is \u2026 long"), std::string::npos);
}

TEST(RulePage, NoPlaceOfAPatternIsLeftOver) {
    for (const auto& text : {rules_text(), rules_guide()})
        for (std::size_t at = 0; (at = text.find('%', at)) != std::string::npos; ++at)
            EXPECT_FALSE(at + 1 < text.size() && text[at + 1] >= '1' && text[at + 1] <= '9') << text.substr(at, 60);
}

TEST(RulePage, TheGuideHasOneSectionARuleAndEveryLinkLeadsToAHeading) {
    std::istringstream lines(rules_guide());
    std::set<std::string> headings, links;
    std::size_t sections = 0;
    for (std::string line; std::getline(lines, line);) {
        if (line.starts_with("### ")) ++sections;
        if (line.starts_with("## ") || line.starts_with("### ")) {
            std::string heading;
            for (const char c : line.substr(line.find(' ') + 1)) {
                if (c == ' ') heading += '-';
                if (std::isalnum(static_cast<unsigned char>(c)) || c == '-')
                    heading += static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
            }
            EXPECT_TRUE(headings.insert(heading).second) << heading;
        }
        for (std::size_t at = 0; (at = line.find("](#", at)) != std::string::npos; ++at)
            links.insert(line.substr(at + 3, line.find(')', at) - at - 3));
    }
    EXPECT_EQ(sections, analysis::all_rules().size());
    EXPECT_EQ(links, headings);
}

}  // namespace rule_page_test

}  // namespace streamwright::deliver
