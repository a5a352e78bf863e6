// What asks the analysis about a laboratory network stays a translator: few lines, core's public headers only, and no
// walk over networks of its own. Else the laboratory would compare bridges with a model that users do not run.
#include "tests/house/source_tree.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace streamwright::test::lab_sources {

constexpr std::size_t most_lines = 200;

bool is_asker(const SourceFile& file) {
    return file.path.starts_with("tests/lab/lab_") && !file.path.ends_with("_test.cpp");
}

std::vector<SourceFile> askers() {
    auto files = sources_below("tests/lab");
    std::erase_if(files, [](const SourceFile& file) { return !is_asker(file); });
    return files;
}

/// Empty, or what the file includes beyond its own header, core's public headers, JSON and the standard library.
std::string strange_include(const SourceFile& file) {
    for (const auto& line : lines_of(file.text)) {
        if (!line.starts_with("#include ")) continue;
        const bool core = line.find("\"core/") != std::string::npos && line.find("/detail/") == std::string::npos &&
                          line.find(".h\"") != std::string::npos;
        const bool standard = line.find('<') != std::string::npos && line.find('/') == std::string::npos;
        const bool own = line.find("\"tests/lab/lab_predict.h\"") != std::string::npos;
        if (!core && !standard && !own && line.find("<nlohmann/json.hpp>") == std::string::npos) return line;
    }
    return {};
}

/// Empty, or a word by which a computation of paths, trees or floods would show: containers that a search needs, single
/// facts computed past `analyse`, and steps from bridge to bridge.
std::string network_logic(const SourceFile& file) {
    for (const char* word : {"find_spanning_trees", "find_forwarding", "find_link_loads", "find_worst_case",
                             "find_vlan_paths", "build_network", "bridge_after", "bridge_before", "network.links",
                             "<queue>", "<stack>", "<deque>", "while (", "goto ", "visited", "boost", "root_cost"})
        if (file.text.find(word) != std::string::npos) return word;
    return {};
}

TEST(LabSources, StayATranslatorOfFewLines) {
    std::size_t lines = 0;
    bool analyses = false;
    for (const auto& file : askers()) {
        lines += file.path.ends_with(".cpp") ? lines_of(file.text).size() : 0;
        analyses = analyses || file.text.find("analysis::analyse(") != std::string::npos;
        EXPECT_EQ(strange_include(file), "") << file.path;
        EXPECT_EQ(network_logic(file), "") << file.path;
    }
    EXPECT_GT(lines, 100U) << "the test has read too little to mean anything";
    EXPECT_LT(lines, most_lines);
    EXPECT_TRUE(analyses) << "the answer comes from core's public analysis";
}

TEST(LabSources, ATrespassIsSeen) {
    EXPECT_NE(strange_include({"", "#include \"core/graph/detail/x.h\"\n"}), "");
    EXPECT_NE(strange_include({"", "#include <boost/graph/adjacency_list.hpp>\n"}), "");
    EXPECT_NE(strange_include({"", "#include \"tests/support/network_facts.h\"\n"}), "");
    EXPECT_NE(network_logic({"", "while (!open.empty())"}), "");
}

}  // namespace streamwright::test::lab_sources
