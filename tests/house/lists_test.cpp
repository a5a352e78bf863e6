// Lists are explicit: each rule, document, format, edit and verb is in its table, in order, and has its file and test.
#include "core/analysis/rule.h"
#include "core/deliver/document.h"
#include "core/deliver/format.h"
#include "core/model/edits/all_edits.h"
#include "tests/house/source_tree.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace streamwright::test::lists {

std::string file_name(std::string_view id) {
    std::string name(id);
    std::ranges::replace(name, '-', '_');
    return name;
}

bool exists(const std::string& path) { return std::filesystem::exists(source_root() / path); }

template <class Names>
void expect_sorted(const Names& names) {
    EXPECT_TRUE(std::ranges::is_sorted(names)) << ::testing::PrintToString(names);
    EXPECT_EQ(std::ranges::adjacent_find(names), names.end());
}

TEST(Lists, EachRuleHasItsFileItsTestAndASource) {
    std::vector<std::string> ids;
    for (const auto& rule : analysis::all_rules()) {
        const auto& words = rule.words;
        ids.push_back(file_name(words.id));
        EXPECT_TRUE(exists("core/analysis/rules/" + ids.back() + ".cpp")) << words.id;
        EXPECT_TRUE(exists("tests/analysis/rules/" + ids.back() + "_test.cpp")) << words.id;
        EXPECT_NE(words.sources.empty(), words.no_source.empty()) << words.id << ": a source, or why there is none";
        EXPECT_FALSE(words.title.empty() || words.meaning.empty() || words.patterns.empty()) << words.id;
    }
    expect_sorted(ids);
    auto files = stems_in("core/analysis/rules", ".cpp");
    std::erase_if(files, [&](const std::string& stem) {
        return stem == "all_rules" || std::ranges::find(ids, stem) != ids.end() ||
               exists("core/analysis/rules/" + stem + ".h");  // helpers shared by rules have a header
    });
    EXPECT_TRUE(files.empty()) << "files of no rule in the table: " << ::testing::PrintToString(files);
}

TEST(Lists, EachEditIsInTheTableAndTested) {
    std::vector<std::string> names;
    for (const auto name : model::edit_names()) names.push_back(file_name(name));
    expect_sorted(names);
    auto files = stems_in("core/model/edits", ".h");
    std::erase_if(files, [](const std::string& stem) {
        return stem == "all_edits" || !exists("core/model/edits/" + stem + ".cpp") || stem.ends_with("_checks");
    });
    EXPECT_EQ(files, names);
    for (const auto& name : names) EXPECT_TRUE(exists("tests/model/edits/" + name + "_test.cpp")) << name;
}

TEST(Lists, EachDocumentHasItsFileAndTest) {
    std::vector<std::string> names;
    for (const auto& kind : deliver::all_documents()) {
        names.push_back(file_name(kind.name));
        EXPECT_TRUE(exists("core/deliver/documents/" + names.back() + ".cpp")) << kind.name;
        EXPECT_TRUE(exists("tests/deliver/documents/" + names.back() + "_test.cpp")) << kind.name;
    }
    expect_sorted(names);
}

TEST(Lists, EachFormatHasItsFileAndTest) {
    std::vector<std::string> names;
    for (const auto& format : deliver::core_formats()) {
        names.push_back(format.name);
        EXPECT_TRUE(exists("core/deliver/formats/" + format.name + ".cpp")) << format.name;
        EXPECT_TRUE(exists("tests/deliver/formats/" + format.name + "_test.cpp")) << format.name;
    }
    expect_sorted(names);
}

TEST(Lists, EachVerbHasItsFileAndTest) {
    auto files = stems_in("app/cli", ".cpp");
    std::erase_if(files, [](const std::string& stem) { return !stem.ends_with("_command"); });
    EXPECT_EQ(files, (std::vector<std::string>{"check_command", "deliver_command", "loads_command"}));
    for (const auto& stem : files) EXPECT_TRUE(exists("tests/app/cli/" + stem + "_test.cpp")) << stem;
}

TEST(Lists, EachStandardIsTested) {
    for (const auto& stem : stems_in("core/standards", ".cpp"))
        EXPECT_TRUE(exists("tests/standards/" + stem + "_test.cpp")) << stem;
}

TEST(Lists, EachFactIsTested) {
    std::string set;
    for (const auto& file : sources_below("core/analysis"))
        if (file.path == "core/analysis/facts_set.h") set = file.text;
    ASSERT_FALSE(set.empty());
    for (const auto& stem : stems_in("core/analysis/facts", ".h")) {
        // A header that the set of facts does not list is a helper of facts, tested through them.
        if (set.find("facts/" + stem + ".h") == std::string::npos) continue;
        EXPECT_TRUE(exists("tests/analysis/facts/" + stem + "_test.cpp")) << stem;
    }
}

}  // namespace streamwright::test::lists
