// Two hundred megabytes of nonsense under a design's name, a journal's and a type's: refused unread, in one sentence.
#include "tests/app/cli/run_program.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <random>
#include <sys/resource.h>

namespace streamwright::test::bad_files {

constexpr std::size_t nonsense_octets = 200'000'000;

void write_nonsense(const std::filesystem::path& path) {
    std::mt19937_64 random(5);
    std::string block(std::size_t{1} << 16, '\0');
    for (auto& c : block) c = static_cast<char>(random());
    std::ofstream file(path, std::ios::binary);
    for (std::size_t written = 0; written < nonsense_octets; written += block.size())
        file.write(block.data(), static_cast<std::streamsize>(block.size()));
}

/// The most that any program run so far has held in memory.
std::size_t most_memory_of_children() {
    rusage use{};
    getrusage(RUSAGE_CHILDREN, &use);
    return static_cast<std::size_t>(use.ru_maxrss) * 1024;
}

TEST(BadFiles, TwoHundredMegabytesAreRefusedUnread) {
    const TempFolder folder;
    const auto file = (folder / "huge.streamwright").string();
    write_nonsense(file);
    std::filesystem::create_directory(folder / "types");
    std::filesystem::create_hard_link(file, folder / "types" / "huge.json");
    for (const auto& words : std::vector<std::vector<std::string>>{
             {"check", file}, {"loads", file}, {"deliver", file, "--to", (folder / "set").string()}}) {
        const auto ran = run_program(words);
        EXPECT_EQ(ran.exit_code, 2);
        EXPECT_EQ(ran.out, "");
        EXPECT_EQ(std::count(ran.err.begin(), ran.err.end(), '\n'), 1) << ran.err;
        EXPECT_NE(ran.err.find("huge.streamwright is larger than 64 MiB"), std::string::npos) << ran.err;
    }
    const auto types = run_program({"check", "--types", (folder / "types").string()});
    EXPECT_EQ(types.exit_code, 1);
    EXPECT_NE(types.out.find("huge.json is over the limit of 1 MiB"), std::string::npos) << types.out;
    EXPECT_FALSE(std::filesystem::exists(folder / "set"));
    EXPECT_LT(most_memory_of_children(), nonsense_octets) << "no program has held the file";
}

}  // namespace streamwright::test::bad_files
