// The journal: what was synced comes back, whatever happens to the file's tail or to the process.
#include "core/io/journal.h"

#include "core/io/design_file.h"
#include "core/io/design_json.h"
#include "tests/io/sample_design.h"
#include "tests/support/design_builder.h"
#include "tests/support/random_edit.h"
#include "tests/support/temp_folder.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <csignal>
#include <fstream>
#include <iterator>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

namespace {

using namespace streamwright;
using namespace streamwright::io;
namespace fs = std::filesystem;

std::string journal_bytes(const fs::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

void write_bytes(const fs::path& path, const std::string& bytes) {
    std::ofstream(path, std::ios::binary | std::ios::trunc) << bytes;
}

/// A saved design, and a journal of edits after it with the design after each.
struct Journalled {
    test::TempFolder folder;
    std::string saved;
    std::vector<model::Design> after;
    fs::path journal = folder / "room.streamwright.journal";

    explicit Journalled(int edits, std::uint64_t seed = 3) {
        const auto library = test::types::all();
        std::mt19937_64 random(seed);
        after.push_back(test::random_design(seed, 60));
        saved = write_design(after.back());
        auto writer = JournalWriter::start(journal, sha256_hex(saved));
        EXPECT_TRUE(writer.ok());
        for (int step = 0; step < edits; ++step) {
            auto design = after.back();
            const auto edit = test::random_edit(design, library, random);
            const auto delta = model::make_edit(design, *edit).value();
            model::apply(design, delta);
            EXPECT_TRUE((*writer)->append(delta).ok());
            after.push_back(std::move(design));
        }
        EXPECT_TRUE((*writer)->sync().ok());
    }
};

TEST(Journal, ReplaysEveryEdit) {
    for (const std::uint64_t seed : {3U, 4U, 5U}) {
        Journalled j(120, seed);
        const auto recovered = recover(j.journal, j.saved, "room.streamwright");
        ASSERT_TRUE(recovered.ok()) << recovered.error().english();
        ASSERT_TRUE(recovered->has_value());
        EXPECT_TRUE((*recovered)->design == j.after.back());
        EXPECT_EQ((*recovered)->records, 120U);
        EXPECT_FALSE((*recovered)->cut_short || (*recovered)->other_file);
    }
}

TEST(Journal, IsIdempotent) {
    Journalled j(40);
    const auto again = recover(j.journal, write_design(j.after.back()), "room.streamwright");
    ASSERT_TRUE(again.ok() && again->has_value());
    EXPECT_TRUE((*again)->design == j.after.back());
    EXPECT_TRUE((*again)->other_file) << "the file was saved after the journal began";
}

TEST(Journal, ADesignNeverSavedComesBack) {
    test::TempFolder folder;
    const auto design = test::full_design();
    auto writer = JournalWriter::start(folder / "j", "");
    ASSERT_TRUE(writer.ok());
    ASSERT_TRUE((*writer)->append(model::difference({}, design)).ok());
    const auto recovered = recover(folder / "j", "", "Untitled");
    ASSERT_TRUE(recovered.ok() && recovered->has_value());
    EXPECT_TRUE((*recovered)->design == design);
    EXPECT_FALSE((*recovered)->other_file);
}

TEST(Journal, NoneOrEmptyIsNothing) {
    test::TempFolder folder;
    EXPECT_FALSE(recover(folder / "none", "", "f")->has_value());
    write_bytes(folder / "empty", "");
    EXPECT_FALSE(recover(folder / "empty", "", "f")->has_value());
    ASSERT_TRUE(JournalWriter::start(folder / "fresh", "").ok());
    EXPECT_FALSE(recover(folder / "fresh", "", "f")->has_value());
    EXPECT_EQ(journal_path("a/room.streamwright"), fs::path("a/room.streamwright.journal"));
}

TEST(Journal, DamagedAtEachByteItStopsBeforeTheDamage) {
    Journalled j(6);
    const auto whole = journal_bytes(j.journal);
    const auto header_end = whole.find('\n') + 1;
    for (std::size_t at = 0; at < whole.size(); ++at) {
        auto damaged = whole;
        damaged[at] = static_cast<char>(damaged[at] ^ 0x04);
        write_bytes(j.journal, damaged);
        const auto recovered = recover(j.journal, j.saved, "f");
        if (at < header_end) {
            ASSERT_TRUE(!recovered.ok() || !recovered->has_value()) << at;
            continue;
        }
        const auto sound = static_cast<std::size_t>(
            std::count(whole.begin(), whole.begin() + static_cast<std::ptrdiff_t>(at), '\n') - 1);
        ASSERT_TRUE(recovered.ok()) << at << recovered.error().english();
        if (sound == 0) {
            ASSERT_FALSE(recovered->has_value()) << at;
            continue;
        }
        ASSERT_TRUE((*recovered)->cut_short) << at;
        ASSERT_EQ((*recovered)->records, sound) << at;
        ASSERT_TRUE((*recovered)->design == j.after[sound]) << at;
    }
}

TEST(Journal, CutAtEachByteWholeEditsComeBack) {
    Journalled j(6);
    const auto whole = journal_bytes(j.journal);
    for (std::size_t length = whole.find('\n') + 1; length <= whole.size(); ++length) {
        write_bytes(j.journal, whole.substr(0, length));
        const auto recovered = recover(j.journal, j.saved, "f");
        ASSERT_TRUE(recovered.ok()) << length;
        const auto sound = static_cast<std::size_t>(
            std::count(whole.begin(), whole.begin() + static_cast<std::ptrdiff_t>(length), '\n') - 1);
        ASSERT_EQ(recovered->has_value(), sound > 0) << length;
        if (sound > 0) {
            ASSERT_TRUE((*recovered)->design == j.after[sound]) << length;
        }
    }
}

TEST(Journal, ALineLostFromTheMiddleIsSeen) {
    Journalled j(6);
    auto lines = journal_bytes(j.journal);
    const auto second = lines.find('\n', lines.find('\n') + 1) + 1;
    lines.erase(second, lines.find('\n', second) + 1 - second);
    write_bytes(j.journal, lines);
    const auto recovered = recover(j.journal, j.saved, "f");
    ASSERT_TRUE(recovered.ok() && recovered->has_value());
    EXPECT_EQ((*recovered)->records, 1U);
    EXPECT_TRUE((*recovered)->cut_short);
}

TEST(Journal, OfANewerProgramIsRefusedInWords) {
    test::TempFolder folder;
    const std::string payload = "{\"format\":\"streamwright-journal\",\"version\":2,\"digest\":\"\"}";
    const auto line = sha256_hex(payload).substr(0, 16) + ' ' + payload + '\n';
    write_bytes(folder / "j", line);
    const auto recovered = recover(folder / "j", "", "f");
    ASSERT_FALSE(recovered.ok());
    EXPECT_THAT(recovered.error().english(), testing::HasSubstr("newer version of the program"));
}

TEST(Journal, AFullDiskIsToldAndWhatWasWrittenStaysReadable) {
    test::TempFolder folder;
    const auto child = fork();
    if (child == 0) {
        signal(SIGXFSZ, SIG_IGN);
        auto writer = JournalWriter::start(folder / "j", "");
        model::Design one, big;
        one.presets.put({model::PresetId(1), 1, "A", {}, {}});
        bool good = writer.ok() && (*writer)->append(model::difference({}, one)).ok();
        const rlimit limit{4000, 4000};
        good = good && setrlimit(RLIMIT_FSIZE, &limit) == 0;
        big.presets.put({model::PresetId(2), 1, std::string(9000, 'x'), {}, {}});
        good = good && !(*writer)->append(model::difference({}, big)).ok();
        model::Design small;
        small.presets.put({model::PresetId(3), 1, "C", {}, {}});
        good = good && (*writer)->append(model::difference({}, small)).ok() && (*writer)->sync().ok();
        _exit(good ? 0 : 1);
    }
    int status = 1;
    waitpid(child, &status, 0);
    ASSERT_EQ(status, 0);
    const auto recovered = recover(folder / "j", "", "f");
    ASSERT_TRUE(recovered.ok() && recovered->has_value());
    EXPECT_EQ((*recovered)->design.presets.size(), 2U);
    EXPECT_FALSE((*recovered)->cut_short);
}

TEST(Journal, KilledWhileJournallingEveryConfirmedEditComesBack) {
    for (int round = 0; round < 12; ++round) {
        test::TempFolder folder;
        int confirmed[2];
        ASSERT_EQ(pipe(confirmed), 0);
        const auto child = fork();
        if (child == 0) {
            auto writer = JournalWriter::start(folder / "j", "");
            model::Design design;
            for (int number = 1;; ++number) {
                auto next = design;
                next.presets.put({model::PresetId(static_cast<std::uint64_t>(number)), number, "P", {}, {}});
                if (!(*writer)->append(model::difference(design, next)).ok() || !(*writer)->sync().ok()) _exit(1);
                design = next;
                if (write(confirmed[1], &number, sizeof number) != sizeof number) _exit(1);
            }
        }
        usleep(static_cast<useconds_t>(20000 + 3000 * round));
        kill(child, SIGKILL);
        waitpid(child, nullptr, 0);
        close(confirmed[1]);
        int last = 0;
        for (int number = 0; read(confirmed[0], &number, sizeof number) == sizeof number;) last = number;
        close(confirmed[0]);
        const auto recovered = recover(folder / "j", "", "f");
        ASSERT_TRUE(recovered.ok());
        const auto back = recovered->has_value() ? (*recovered)->design.presets.size() : 0U;
        ASSERT_GE(back, static_cast<std::size_t>(last)) << round;
        ASSERT_LE(back, static_cast<std::size_t>(last) + 1) << round;
    }
}

}  // namespace
