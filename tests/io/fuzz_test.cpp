// Spoilt designs, journals and clippings: read sound or refused in one sentence, whatever is done to them. The runs are
// counted and drawn from fixed numbers; an input that breaks a promise goes into found/.
#include "core/io/clipping_json.h"
#include "core/io/detail/journal_lines.h"
#include "core/io/journal.h"
#include "core/model/clipping.h"
#include "tests/io/expect_total.h"
#include "tests/io/sample_design.h"
#include "tests/support/design_builder.h"
#include "tests/support/mutate.h"
#include "tests/support/random_edit.h"
#include "tests/support/temp_folder.h"

#include <fstream>
#include <iterator>
#include <sstream>
#include <vector>

namespace {

using namespace streamwright;
using namespace streamwright::io;

std::vector<std::string> sound_designs() {
    return {write_design(test::full_design()), write_design(test::random_design(5, 25)),
            write_design(test::random_design(11, 80)), write_design({})};
}

TEST(FuzzFiles, SpoiltDesignsAreReadSoundOrRefusedInOneSentence) {
    std::mt19937_64 random(41);
    int taken = 0, rounds = 0;
    for (const auto& text : sound_designs())
        for (int round = 0; round < 100; ++round, ++rounds) {
            const auto spoilt = test::mutated(text, random);
            taken += test::expect_total(spoilt) ? 1 : 0;
            ASSERT_FALSE(testing::Test::HasFailure()) << "put this into tests/io/found: " << spoilt;
        }
    EXPECT_GT(taken, rounds / 100) << "harms so great that none gets past the parser test little";
    EXPECT_LT(taken, rounds);
}

std::string bytes_in(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

/// A file, its journal of edits, and the design after each.
struct Kept {
    test::TempFolder folder;
    std::filesystem::path path = folder / "some.journal";
    std::string saved, journal;
    std::vector<model::Design> after;

    Kept() {
        const auto library = test::types::all();
        std::mt19937_64 random(19);
        after.push_back(test::random_design(19, 30));
        saved = write_design(after.back());
        auto writer = JournalWriter::start(path, sha256_hex(saved));
        EXPECT_TRUE(writer.ok());
        for (int step = 0; step < 12; ++step) {
            auto design = after.back();
            const auto delta = model::make_edit(design, *test::random_edit(design, library, random)).value();
            model::apply(design, delta);
            EXPECT_TRUE((*writer)->append(delta).ok());
            after.push_back(std::move(design));
        }
        journal = bytes_in(path);
    }

    base::Result<std::optional<Recovery>> recovered_from(const std::string& bytes) const {
        std::ofstream(path, std::ios::binary | std::ios::trunc) << bytes;
        return recover(path, saved, "some.streamwright");
    }
};

TEST(FuzzFiles, OfASpoiltJournalComesBackWhatStandsBeforeTheHarm) {
    const Kept kept;
    std::mt19937_64 random(43);
    int came_back = 0;
    for (int round = 0; round < 200; ++round) {
        const auto spoilt = test::mutated(kept.journal, random);
        const auto recovered = kept.recovered_from(spoilt);
        if (!recovered) {
            test::expect_sentence(recovered.error());
        } else if (recovered->has_value()) {
            ++came_back;
            ASSERT_LT((*recovered)->records, kept.after.size());
            ASSERT_TRUE((*recovered)->design == kept.after[(*recovered)->records]) << spoilt;
        }
        ASSERT_FALSE(testing::Test::HasFailure()) << "put this into tests/io/found: " << spoilt;
    }
    EXPECT_GT(came_back, 50);
}

/// The lines of a journal with the text after their checksums spoilt and the checksums made right again: damage never
/// looks so, forgery does.
std::string forged(const std::string& journal, std::mt19937_64& random) {
    std::istringstream lines(journal);
    std::string out, chain;
    for (std::string line; std::getline(lines, line);) {
        auto payload = line.substr(checksum_length + 1);
        if (random() % 8 == 0) payload = test::mutated(payload, random);
        std::erase(payload, '\n');
        chain = line_checksum(chain, payload);
        out += chain + ' ' + payload + '\n';
    }
    return out;
}

TEST(FuzzFiles, AForgedJournalIsReplayedSoundOrRefusedInOneSentence) {
    const Kept kept;
    std::mt19937_64 random(47);
    int came_back = 0;
    for (int round = 0; round < 150; ++round) {
        const auto spoilt = forged(kept.journal, random);
        const auto recovered = kept.recovered_from(spoilt);
        if (!recovered) {
            test::expect_sentence(recovered.error());
        } else if (recovered->has_value()) {
            ++came_back;
            test::expect_sound((*recovered)->design);
        }
        ASSERT_FALSE(testing::Test::HasFailure()) << "put this into tests/io/found: " << spoilt;
    }
    EXPECT_GT(came_back, 15);
}

TEST(FuzzFiles, ASpoiltClippingIsTakenSoundOrRefusedInTheOneSentence) {
    const auto design = test::full_design();
    std::vector<model::DeviceId> ids;
    for (const auto& row : design.devices) ids.push_back(row.id);
    const auto text = write_clipping(model::copied(design, ids, design.sheets.begin()->id));
    std::mt19937_64 random(53);
    int taken = 0;
    for (int round = 0; round < 200; ++round) {
        const auto spoilt = test::mutated(text, random);
        const auto read = read_clipping(spoilt);
        if (read) {
            ++taken;
            EXPECT_FALSE(read->devices.empty());
            test::expect_sound(*read);
        } else {
            EXPECT_EQ(read.error().english(), "The clipboard holds no devices to paste; copy some on a sheet first.");
        }
        ASSERT_FALSE(testing::Test::HasFailure()) << "put this into tests/io/found: " << spoilt;
    }
    EXPECT_GT(taken, 0);  // few: what is copied is short, so most spoils hit what matters
}

}  // namespace
