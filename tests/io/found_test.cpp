// Inputs that readers of files once did not bear, or might not: each file in found/ is replayed as a design, as a
// journal and as a clipping. A new one is added by putting the bytes there.
#include "core/io/clipping_json.h"
#include "core/io/detail/journal_lines.h"
#include "core/io/journal.h"
#include "tests/io/expect_total.h"
#include "tests/support/temp_folder.h"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <sys/resource.h>

namespace {

namespace found_files {

using namespace streamwright;
using namespace streamwright::io;

std::string slurp(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

void expect_total_journal(const std::filesystem::path& path) {
    const auto recovered = recover(path, "", "some.streamwright");
    if (!recovered)
        test::expect_sentence(recovered.error());
    else if (recovered->has_value())
        test::expect_sound((*recovered)->design);
}

TEST(FoundFiles, EachIsReadSoundOrRefusedInOneSentence) {
    int files = 0;
    for (const auto& entry : std::filesystem::directory_iterator(STREAMWRIGHT_SOURCE_DIR "/tests/io/found")) {
        SCOPED_TRACE(entry.path().filename().string());
        const auto bytes = slurp(entry.path());
        test::expect_total(bytes);
        expect_total_journal(entry.path());
        if (const auto clipping = read_clipping(bytes); !clipping) test::expect_sentence(clipping.error());
        ++files;
    }
    EXPECT_GE(files, 8);
}

/// A journal of one edit with that record, its checksums right.
std::string journal_with(const std::string& record) {
    const std::string header = R"({"format":"streamwright-journal","version":1,"digest":""})";
    const auto edit = R"([{"table":"rooms","id":"000000000001","record":)" + record + "}]";
    const auto first = line_checksum("", header);
    return first + ' ' + header + '\n' + line_checksum(first, edit) + ' ' + edit + '\n';
}

TEST(FoundFiles, AJournalThatNestsDeeplyStopsBeforeTheLine) {
    const test::TempFolder folder;
    const auto path = folder / "some.journal";
    const auto deep = std::string(100000, '[') + std::string(100000, ']');
    for (const auto& record :
         {R"({"id":"000000000001","new":)" + deep + "}", deep, R"({"id":1e999})" + std::string()}) {
        std::ofstream(path, std::ios::binary | std::ios::trunc) << journal_with(record);
        const auto recovered = recover(path, "", "some.streamwright");
        ASSERT_TRUE(recovered.ok() && recovered->has_value());
        EXPECT_TRUE((*recovered)->cut_short);
        EXPECT_EQ((*recovered)->records, 0U);
    }
    std::ofstream(path, std::ios::binary | std::ios::trunc) << journal_with(R"({"id":"000000000001"})");
    EXPECT_EQ((*recover(path, "", "some.streamwright"))->records, 1U) << "the same line without the harm is read";
}

long most_memory_kib() {
    rusage use{};
    getrusage(RUSAGE_SELF, &use);
    return use.ru_maxrss;
}

TEST(FoundFiles, AJournalOfNonsenseIsRefusedByItsFirstBytes) {
    const test::TempFolder folder;
    const auto path = folder / "some.journal";
    std::ofstream(path) << std::string(10000, 'x');
    std::filesystem::resize_file(path, std::uintmax_t{1} << 32);  // 4 GiB: only what is asked for is read
    const auto before = most_memory_kib();
    const auto recovered = recover(path, "", "some.streamwright");
    ASSERT_FALSE(recovered.ok());
    EXPECT_NE(recovered.error().english().find("damaged in its first line"), std::string::npos);
    EXPECT_LT(most_memory_kib() - before, 64 * 1024);
}

}  // namespace found_files

}  // namespace
