// Atomic writes: whole or not at all, whatever fails.
#include "core/io/atomic_write.h"

#include "tests/support/temp_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <csignal>
#include <fstream>
#include <functional>
#include <iterator>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

namespace {

using namespace streamwright::io;
namespace fs = std::filesystem;
using streamwright::test::TempFolder;

std::string content(const fs::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

std::size_t files_in(const fs::path& folder) {
    return static_cast<std::size_t>(std::distance(fs::directory_iterator(folder), fs::directory_iterator()));
}

/// Runs a check in a child process, so that it may give up rights or limits; true if it returned true.
bool in_child(const std::function<bool()>& check) {
    const auto child = fork();
    if (child == 0) _exit(check() ? 0 : 1);
    int status = 1;
    waitpid(child, &status, 0);
    return WIFEXITED(status) && WEXITSTATUS(status) == 0;
}

TEST(AtomicWrite, WritesAndReplaces) {
    TempFolder folder;
    const auto path = folder / "a.streamwright";
    ASSERT_TRUE(write_atomically(path, "one").ok());
    EXPECT_EQ(content(path), "one");
    ASSERT_TRUE(write_atomically(path, std::string(3000000, 'x')).ok());
    EXPECT_EQ(content(path).size(), 3000000U);
    EXPECT_EQ(files_in(folder.path()), 1U);
}

TEST(AtomicWrite, KeepsPermissionsAndFollowsLinks) {
    TempFolder folder;
    const auto path = folder / "a";
    ASSERT_TRUE(write_atomically(path, "one").ok());
    ASSERT_EQ(chmod(path.c_str(), 0640), 0);
    fs::create_symlink("a", folder / "link");
    ASSERT_TRUE(write_atomically(folder / "link", "two").ok());
    EXPECT_TRUE(fs::is_symlink(folder / "link"));
    EXPECT_EQ(content(path), "two");
    EXPECT_EQ(static_cast<unsigned>(fs::status(path).permissions()), 0640U);
    fs::create_symlink("fresh", folder / "dangling");
    ASSERT_TRUE(write_atomically(folder / "dangling", "three").ok());
    EXPECT_EQ(content(folder / "fresh"), "three");
}

TEST(AtomicWrite, AFolderThatIsNotThere) {
    TempFolder folder;
    const auto result = write_atomically(folder / "none/a", "x");
    ASSERT_FALSE(result.ok());
    EXPECT_THAT(result.error().english(), testing::HasSubstr("Make the folder first"));
    EXPECT_FALSE(write_atomically(folder.path(), "x").ok()) << "a folder is never replaced";
}

TEST(AtomicWrite, AFolderThatMayNotBeWritten) {
    TempFolder folder;
    const auto path = folder / "a";
    ASSERT_TRUE(write_atomically(path, "old").ok());
    ASSERT_EQ(chmod(folder.path().c_str(), 0555), 0);
    EXPECT_TRUE(in_child([&] {
        if (geteuid() == 0 && seteuid(65534) != 0) return false;  // the superuser may write anywhere
        const auto result = write_atomically(path, "new");
        return !result.ok() && result.error().english().find("ask for leave") != std::string::npos;
    }));
    EXPECT_EQ(content(path), "old");
    chmod(folder.path().c_str(), 0755);
    EXPECT_EQ(files_in(folder.path()), 1U);
}

TEST(AtomicWrite, ADiskThatFillsUpLeavesTheOldFile) {
    TempFolder folder;
    const auto path = folder / "a";
    ASSERT_TRUE(write_atomically(path, "old").ok());
    EXPECT_TRUE(in_child([&] {
        signal(SIGXFSZ, SIG_IGN);
        const rlimit limit{5000, 5000};
        if (setrlimit(RLIMIT_FSIZE, &limit) != 0) return false;
        const auto result = write_atomically(path, std::string(100000, 'x'));
        return !result.ok() && result.error().english().find("Make room") != std::string::npos;
    }));
    EXPECT_EQ(content(path), "old");
    EXPECT_EQ(files_in(folder.path()), 1U) << "the temporary file stayed";
}

TEST(AtomicWrite, KilledAtAnyMomentTheFileIsWhole) {
    TempFolder folder;
    const auto path = folder / "a";
    const std::string one(200000, '1'), two(200000, '2');
    ASSERT_TRUE(write_atomically(path, one).ok());
    for (int round = 0; round < 25; ++round) {
        const auto child = fork();
        if (child == 0)
            while (true) (void)(write_atomically(path, two).ok() && write_atomically(path, one).ok());
        usleep(static_cast<useconds_t>(500 + 700 * round));
        kill(child, SIGKILL);
        waitpid(child, nullptr, 0);
        const auto now = content(path);
        ASSERT_TRUE(now == one || now == two) << round;
    }
}

}  // namespace
