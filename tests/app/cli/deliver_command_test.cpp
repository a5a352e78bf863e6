// deliver: the set in every format, the same bytes each time, refusals before anything is written.
#include "tests/app/cli/run_program.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <fstream>
#include <iterator>
#include <map>
#include <sstream>

namespace streamwright::test::deliver_command {

std::map<std::string, std::string> files_in(const std::filesystem::path& folder) {
    std::map<std::string, std::string> files;
    for (const auto& entry : std::filesystem::directory_iterator(folder)) {
        std::ifstream in(entry.path(), std::ios::binary);
        files[entry.path().filename().string()] = {std::istreambuf_iterator<char>(in), {}};
    }
    return files;
}

TEST(DeliverCommand, WritesTheSetWithoutADisplayAndTheSameBytesTwice) {
    const TempFolder one;
    const TempFolder two;
    const auto ran = run_program({"deliver", demo("ferrow-quay.streamwright"), "--to", one.path().string()});
    ASSERT_EQ(ran.exit_code, 0) << ran.err;
    ASSERT_EQ(run_program({"deliver", demo("ferrow-quay.streamwright"), "--to", two.path().string()}).exit_code, 0);
    const auto files = files_in(one.path());
    std::map<std::string, int> endings;
    for (const auto& [name, bytes] : files) {
        ++endings[std::filesystem::path(name).extension().string()];
        EXPECT_GT(bytes.size(), 100U) << name;
        EXPECT_TRUE(files_in(two.path()).at(name) == bytes) << name << " differs between two runs";
    }
    EXPECT_EQ(endings.size(), 4U);
    EXPECT_EQ(endings[".xlsx"], 1) << "one workbook for all tables";
    EXPECT_GT(endings[".csv"], 2);
    EXPECT_GT(endings[".pdf"], 0);
    EXPECT_GT(endings[".svg"], 0);
    std::istringstream lines(ran.out);
    std::size_t named = 0;
    for (std::string line; std::getline(lines, line);) named += std::filesystem::exists(line) ? 1 : 0;
    EXPECT_EQ(named, files.size());
}

TEST(DeliverCommand, OnlyAndFormatNarrowTheSet) {
    const TempFolder folder;
    const auto ran = run_program({"deliver", demo("huddle-room.streamwright"), "--to", folder.path().string(), "--only",
                                  "cable-schedule", "--format", "csv"});
    ASSERT_EQ(ran.exit_code, 0) << ran.err;
    for (const auto& [name, bytes] : files_in(folder.path())) EXPECT_TRUE(name.ends_with(".csv")) << name;
    EXPECT_FALSE(files_in(folder.path()).empty());
}

TEST(DeliverCommand, UnknownNamesAreRefusedBeforeWriting) {
    const TempFolder folder;
    for (const auto& extra : std::vector<std::vector<std::string>>{{"--only", "poem"}, {"--format", "clay"}}) {
        std::vector<std::string> words{"deliver", demo("huddle-room.streamwright"), "--to", (folder / "to").string()};
        words.insert(words.end(), extra.begin(), extra.end());
        const auto ran = run_program(words);
        EXPECT_EQ(ran.exit_code, 2);
        EXPECT_NE(ran.err.find("there are:"), std::string::npos) << ran.err;
        EXPECT_FALSE(std::filesystem::exists(folder / "to"));
    }
}

TEST(DeliverCommand, ListNamesDocumentsAndFormats) {
    const auto ran = run_program({"deliver", "--list"});
    EXPECT_EQ(ran.exit_code, 0);
    for (const char* name : {"bill-of-materials", "cable-schedule", "port-schedule", "csv", "pdf", "svg", "xlsx"})
        EXPECT_NE(ran.out.find(name), std::string::npos) << name;
}

TEST(DeliverCommand, AFolderThatCannotBeMadeIsOneSentence) {
    const TempFolder folder;
    std::ofstream(folder / "file") << "in the way";
    const auto ran =
        run_program({"deliver", demo("huddle-room.streamwright"), "--to", (folder / "file").string() + "/below"});
    EXPECT_EQ(ran.exit_code, 2);
    EXPECT_EQ(std::count(ran.err.begin(), ran.err.end(), '\n'), 1) << ran.err;
}

}  // namespace streamwright::test::deliver_command
