// Holds every #include to the table of floors: no upward include, no ring between folders of a floor, no Qt in core,
// heavy libraries only in .cpp files.
#include "tests/house/source_tree.h"

#include <gtest/gtest.h>

#include <functional>
#include <map>
#include <set>

namespace streamwright::test::include_floors {

using Names = std::set<std::string>;

const std::map<std::string, Names>& may_include() {
    static const std::map<std::string, Names> table{
        {"core/base", {}},
        {"core/standards", {"core/base"}},
        {"core/catalogue", {"core/base", "core/standards"}},
        {"core/model", {"core/base", "core/standards", "core/catalogue"}},
        {"core/io", {"core/base", "core/standards", "core/catalogue", "core/model"}},
        {"core/graph", {"core/base", "core/standards", "core/catalogue", "core/model"}},
        {"core/analysis", {"core/base", "core/standards", "core/catalogue", "core/model", "core/graph"}},
        {"core/layout", {"core/base", "core/standards", "core/catalogue", "core/model", "core/graph"}},
        {"core/deliver",
         {"core/base", "core/standards", "core/catalogue", "core/model", "core/graph", "core/analysis", "core/layout"}},
        {"core/size",
         {"core/base", "core/standards", "core/catalogue", "core/model", "core/graph", "core/analysis", "core/layout"}},
    };
    return table;
}

std::string folder_of(const std::string& path) { return path.substr(0, path.rfind('/')); }
std::string floor_of(const std::string& path) { return path.substr(0, path.find('/', path.find('/') + 1)); }

/// The words between quotes or angle brackets of every include line.
std::vector<std::string> includes(const SourceFile& file) {
    std::vector<std::string> found;
    for (const auto& line : lines_of(file.text)) {
        if (!line.starts_with("#include ")) continue;
        const auto open = line.find_first_of("<\"");
        const auto close = line.find_first_of(">\"", open + 1);
        found.push_back(line.substr(open + 1, close - open - 1));
    }
    return found;
}

TEST(IncludeFloors, NoFloorIncludesOneAbove) {
    int seen = 0;
    for (const auto& file : sources_below("core")) {
        const auto floor = floor_of(file.path);
        ASSERT_TRUE(may_include().contains(floor)) << file.path << " is on no floor";
        for (const auto& name : includes(file)) {
            if (!name.starts_with("core/") && !name.starts_with("app/") && !name.starts_with("tests/")) continue;
            ++seen;
            const auto target = floor_of(name);
            EXPECT_TRUE(target == floor || may_include().at(floor).contains(target))
                << file.path << " includes " << name;
        }
    }
    EXPECT_GT(seen, 100) << "the test has read too little to mean anything";
}

TEST(IncludeFloors, CoreKnowsNoQt) {
    for (const auto& file : sources_below("core"))
        for (const auto& name : includes(file))
            EXPECT_FALSE(name.starts_with("Q") || name.starts_with("qt")) << file.path << " includes " << name;
}

TEST(IncludeFloors, HeavyLibrariesStayOutOfHeaders) {
    for (const auto& file : sources_below("core")) {
        if (file.path.ends_with(".cpp") || file.path.find("/detail/") != std::string::npos) continue;
        for (const auto& name : includes(file))
            EXPECT_FALSE(name.starts_with("boost/") || name == "nlohmann/json.hpp")
                << file.path << " includes " << name;
    }
}

TEST(IncludeFloors, NobodyIncludesTests) {
    for (const char* top : {"core", "app"})
        for (const auto& file : sources_below(top))
            for (const auto& name : includes(file)) EXPECT_FALSE(name.starts_with("tests/")) << file.path;
}

/// Nothing, or the folders of a ring.
std::vector<std::string> ring(const std::map<std::string, Names>& edges) {
    std::map<std::string, int> state;
    std::vector<std::string> path;
    const std::function<bool(const std::string&)> visit = [&](const std::string& at) {
        state[at] = 1;
        path.push_back(at);
        if (const auto found = edges.find(at); found != edges.end())
            for (const auto& next : found->second) {
                if (state[next] == 1) {
                    path.push_back(next);
                    return true;
                }
                if (state[next] == 0 && visit(next)) return true;
            }
        path.pop_back();
        state[at] = 2;
        return false;
    };
    for (const auto& [folder, targets] : edges)
        if (state[folder] == 0 && visit(folder)) return path;
    return {};
}

TEST(IncludeFloors, NoRingOfHeaders) {
    for (const char* top : {"core", "app"}) {
        std::map<std::string, Names> edges;
        for (const auto& file : sources_below(top))
            for (const auto& name : includes(file))
                if (name.starts_with("core/") || name.starts_with("app/")) edges[file.path].insert(name);
        EXPECT_TRUE(ring(edges).empty()) << "files include each other: " << ::testing::PrintToString(ring(edges));
    }
}

TEST(IncludeFloors, RingIsFoundWhereThereIsOne) {
    EXPECT_FALSE(ring({{"a", {"b"}}, {"b", {"c"}}, {"c", {"a"}}}).empty());
    EXPECT_TRUE(ring({{"a", {"b", "c"}}, {"b", {"c"}}}).empty());
}

}  // namespace streamwright::test::include_floors
