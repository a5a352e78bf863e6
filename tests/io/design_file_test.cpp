// Opening, saving and locking design files.
#include "core/io/design_file.h"

#include "core/io/design_json.h"
#include "tests/io/sample_design.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <csignal>
#include <fstream>
#include <sys/wait.h>
#include <unistd.h>

namespace {

using namespace streamwright;
using namespace streamwright::io;

TEST(DesignFile, SavesAndOpensWithTheDigestOfItsBytes) {
    test::TempFolder folder;
    const auto path = folder / "room.streamwright";
    const auto design = test::full_design();
    const auto digest = save_design(path, design);
    ASSERT_TRUE(digest.ok());
    EXPECT_EQ(*digest, sha256_hex(write_design(design)));
    const auto opened = open_design(path);
    ASSERT_TRUE(opened.ok());
    EXPECT_TRUE(opened->design == design);
    EXPECT_EQ(opened->digest, *digest);
}

TEST(DesignFile, ARefusedFileIsNotTouched) {
    test::TempFolder folder;
    const auto path = folder / "bad.streamwright";
    std::ofstream(path) << "{\"format\":\"streamwright\",\"version\":9}";
    const auto before = std::filesystem::last_write_time(path);
    EXPECT_FALSE(open_design(path).ok());
    EXPECT_EQ(std::filesystem::last_write_time(path), before);
    EXPECT_EQ(std::filesystem::file_size(path), 37U);
}

TEST(FileLock, ASecondHolderIsToldAndAReleasedLockIsFree) {
    test::TempFolder folder;
    const auto path = folder / "room.streamwright";
    auto lock = FileLock::take(path);
    ASSERT_TRUE(lock);
    EXPECT_FALSE(FileLock::take(path));
    EXPECT_TRUE(FileLock::take(folder / "other.streamwright"));
    ASSERT_TRUE(save_design(path, {}).ok());
    EXPECT_FALSE(FileLock::take(path)) << "a save must not open the lock";
    std::filesystem::create_symlink("room.streamwright", folder / "link.streamwright");
    EXPECT_FALSE(FileLock::take(folder / "link.streamwright"));
    lock.reset();
    EXPECT_TRUE(FileLock::take(path));
}

TEST(FileLock, IsFreeWhenItsHolderDies) {
    test::TempFolder folder;
    const auto path = folder / "room.streamwright";
    int ready[2];
    ASSERT_EQ(pipe(ready), 0);
    const auto child = fork();
    if (child == 0) {
        const auto lock = FileLock::take(path);
        const char told = lock ? 'y' : 'n';
        if (write(ready[1], &told, 1) != 1) _exit(1);
        pause();
    }
    char told = 'n';
    ASSERT_EQ(read(ready[0], &told, 1), 1);
    EXPECT_EQ(told, 'y');
    EXPECT_FALSE(FileLock::take(path));
    kill(child, SIGKILL);
    waitpid(child, nullptr, 0);
    EXPECT_TRUE(FileLock::take(path));
    close(ready[0]);
    close(ready[1]);
}

}  // namespace
