// Sizes and habits of house style: files stay about one thing, open with what they are for; no singletons in core.
#include "tests/house/source_tree.h"

#include <gtest/gtest.h>

namespace streamwright::test::sizes {

constexpr std::size_t file_failure = 800;
constexpr std::size_t file_question = 400;

bool is_data(const std::string& path) { return path.ends_with("_advances.cpp"); }  // generated table of the face

TEST(Sizes, FilesStayAboutOneThing) {
    for (const char* top : {"core", "app", "tests"})
        for (const auto& file : sources_below(top)) {
            if (is_data(file.path)) continue;
            const auto lines = lines_of(file.text).size();
            EXPECT_LT(lines, file_failure) << file.path;
            if (lines > file_question) std::printf("question: %s has %zu lines\n", file.path.c_str(), lines);
        }
}

TEST(Sizes, HeadersOpenWithWhatTheyAreFor) {
    for (const char* top : {"core", "app"})
        for (const auto& file : sources_below(top))
            if (file.path.ends_with(".h")) {
                EXPECT_TRUE(file.text.starts_with("// ")) << file.path;
                EXPECT_NE(file.text.find("#pragma once"), std::string::npos) << file.path;
            }
}

TEST(Sizes, NoSingletonsInCore) {
    for (const auto& file : sources_below("core"))
        EXPECT_EQ(file.text.find(" instance()"), std::string::npos) << file.path;
}

TEST(Sizes, NoRegexAndNoUsingNamespaceInHeaders) {
    for (const char* top : {"core", "app"})
        for (const auto& file : sources_below(top)) {
            EXPECT_EQ(file.text.find("<regex>"), std::string::npos) << file.path;
            if (file.path.ends_with(".h")) {
                for (const auto& line : lines_of(file.text))
                    EXPECT_FALSE(line.starts_with("using namespace") && line.find("literals") == std::string::npos)
                        << file.path << ": " << line;
            }
        }
}

}  // namespace streamwright::test::sizes
