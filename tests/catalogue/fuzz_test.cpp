// Spoilt files of types: read sound or refused in one sentence, whatever is done to them. The runs are counted and
// drawn from fixed numbers; an input that breaks a promise goes into found/.
#include "core/catalogue/judge_types.h"
#include "tests/catalogue/expect_total.h"
#include "tests/support/mutate.h"
#include "tests/support/temp_folder.h"

#include <filesystem>
#include <fstream>
#include <iterator>
#include <vector>

namespace streamwright::catalogue {

namespace fuzz_test {

std::vector<std::string> shipped(const std::string& part) {
    std::vector<std::filesystem::path> paths;
    for (const auto& entry : std::filesystem::directory_iterator(STREAMWRIGHT_SOURCE_DIR "/resources/types/" + part))
        paths.push_back(entry.path());
    std::sort(paths.begin(), paths.end());
    std::vector<std::string> texts;
    for (const auto& path : paths) {
        std::ifstream file(path, std::ios::binary);
        texts.emplace_back(std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>());
    }
    return texts;
}

TEST(FuzzTypes, SpoiltTypesAreReadSoundOrRefusedInOneSentence) {
    std::mt19937_64 random(2026);
    int taken = 0, rounds = 0;
    for (const char* part : {"devices", "cables"})
        for (const auto& text : shipped(part))
            for (int round = 0; round < 12; ++round, ++rounds) {
                const auto spoilt = test::mutated(text, random);
                taken += expect_total(spoilt) ? 1 : 0;
                ASSERT_FALSE(testing::Test::HasFailure()) << "put this into tests/catalogue/found: " << spoilt;
            }
    EXPECT_GT(rounds, 1000);
    EXPECT_GT(taken, rounds / 50) << "harms so great that none gets past the parser test little";
    EXPECT_LT(taken, rounds);
}

TEST(FuzzTypes, AFolderOfSpoiltTypesIsJudgedToTheEnd) {
    const test::TempFolder folder;
    std::mt19937_64 random(7);
    const auto texts = shipped("devices");
    for (std::size_t at = 0; at < texts.size(); ++at)
        std::ofstream(folder / ("t" + std::to_string(at) + ".json"), std::ios::binary)
            << test::mutated(texts[at], random);
    const auto files = judge_types(folder.path());
    ASSERT_TRUE(files.ok()) << files.error().english();
    EXPECT_EQ(files->size(), texts.size());
    for (const auto& file : *files) {
        ASSERT_TRUE(file.fault) << "no key is the name of its file";
        expect_sentence(*file.fault, file.path.string());
    }
}

}  // namespace fuzz_test

}  // namespace streamwright::catalogue
