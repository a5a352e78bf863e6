// A folder of types is judged file by file: every bad one is named, the good ones beside it are counted.
#include "core/catalogue/judge_types.h"

#include "tests/catalogue/expect_total.h"
#include "tests/support/temp_folder.h"

#include <fstream>

namespace streamwright::catalogue {

namespace judge_types_test {

void put(const std::filesystem::path& path, const std::string& text) {
    std::filesystem::create_directories(path.parent_path());
    std::ofstream(path, std::ios::binary) << text;
}

std::string device(const std::string& key, const std::string& more = "") {
    return R"({"key":")" + key + R"(","name":"The )" + key + R"(","maker":"Generic")" + more + "}";
}

/// The words about one file; empty if it is good.
std::string words_about(const std::vector<JudgedFile>& files, const std::string& name) {
    for (const auto& file : files)
        if (file.path.filename() == name) return file.fault ? file.fault->english() : std::string();
    ADD_FAILURE() << name << " was not judged";
    return {};
}

TEST(JudgeTypes, TheShippedLibraryIsGood) {
    const auto files = judge_types(STREAMWRIGHT_SOURCE_DIR "/resources/types");
    ASSERT_TRUE(files.ok()) << files.error().english();
    EXPECT_GT(files->size(), 100U);
    for (const auto& file : *files) {
        EXPECT_FALSE(file.fault) << file.fault->english();
        EXPECT_FALSE(file.remark) << file.remark->english();
        EXPECT_EQ(file.cable, file.path.parent_path().filename() == "cables");
    }
}

TEST(JudgeTypes, EveryBadFileIsToldAndTheGoodOnesAreNot) {
    const test::TempFolder folder;
    const auto devices = folder / "devices";
    put(devices / "good.json", device("good"));
    put(devices / "broken.json", "{");
    put(devices / "empty.json", "");
    put(devices / "misnamed.json", device("other"));
    put(devices / "contradiction.json", device("contradiction", R"(,"kind":"switch")"));
    put(devices / "inconsistent.json", device("inconsistent", R"(,"size":{"full_depth":true})"));
    put(devices / "huge.json", std::string(std::size_t{2} << 20, ' '));
    put(devices / "notes.txt", "no type");
    put(folder / "cables" / "lead.json", device("lead", R"(,"plugs":["rj45"])"));
    put(folder / "cables" / "bare.json", device("bare"));
    std::filesystem::create_directories(devices / "folder.json");
    const auto files = judge_types(folder.path());
    ASSERT_TRUE(files.ok()) << files.error().english();
    EXPECT_EQ(files->size(), 10U);
    EXPECT_EQ(words_about(*files, "good.json"), "");
    EXPECT_EQ(words_about(*files, "lead.json"), "");
    EXPECT_NE(words_about(*files, "broken.json").find("is not JSON"), std::string::npos);
    EXPECT_NE(words_about(*files, "empty.json").find("is not JSON"), std::string::npos);
    EXPECT_NE(words_about(*files, "misnamed.json").find("rename one"), std::string::npos);
    EXPECT_NE(words_about(*files, "contradiction.json").find("bridging"), std::string::npos);
    EXPECT_NE(words_about(*files, "inconsistent.json").find("size.full_depth"), std::string::npos);
    EXPECT_NE(words_about(*files, "huge.json").find("over the limit of 1 MiB"), std::string::npos);
    EXPECT_NE(words_about(*files, "bare.json").find("plugs"), std::string::npos);
    EXPECT_NE(words_about(*files, "folder.json").find("cannot be read"), std::string::npos);
    for (const auto& file : *files)
        if (file.fault) expect_sentence(*file.fault, file.path.string());
}

TEST(JudgeTypes, AFlatFolderHoldsBothKinds) {
    const test::TempFolder folder;
    put(folder / "box.json", device("box"));
    put(folder / "lead.json", device("lead", R"(,"plugs":["rj45"])"));
    const auto files = judge_types(folder.path());
    ASSERT_TRUE(files.ok()) << files.error().english();
    ASSERT_EQ(files->size(), 2U);
    EXPECT_FALSE((*files)[0].cable || (*files)[0].fault);
    EXPECT_TRUE((*files)[1].cable);
    EXPECT_FALSE((*files)[1].fault);
}

TEST(JudgeTypes, FilesAreHeldAgainstEachOther) {
    const test::TempFolder folder;
    put(folder / "devices" / "card.json", device("card", R"(,"kind":"card","card_form":"wide")"));
    put(folder / "devices" / "fitting.json", device("fitting", R"(,"kind":"card","card_form":"slim")"));
    put(folder / "devices" / "frame.json",
        device("frame", R"(,"kind":"chassis","chassis":{"slots":2,"takes":"slim"})"));
    put(folder / "devices" / "twin.json", R"({"key":"twin","name":"The frame","maker":"Generic"})");
    put(folder / "frame.json", device("frame"));
    const auto files = judge_types(folder.path());
    ASSERT_TRUE(files.ok()) << files.error().english();
    EXPECT_NE(words_about(*files, "card.json").find("no chassis here takes \"wide\""), std::string::npos);
    EXPECT_EQ(words_about(*files, "fitting.json"), "");
    EXPECT_NE(words_about(*files, "twin.json").find("has it too"), std::string::npos);
    EXPECT_TRUE((*files)[2].fault || (*files)[4].fault) << "one key in two files";
}

TEST(JudgeTypes, WhatNothingReadsIsRemarkedUpon) {
    const test::TempFolder folder;
    put(folder / "box.json", device("box", R"(,"colour":"red","size":{"girth_um":7})"));
    const auto files = judge_types(folder.path());
    ASSERT_TRUE(files.ok());
    EXPECT_FALSE((*files)[0].fault);
    ASSERT_TRUE((*files)[0].remark);
    EXPECT_NE((*files)[0].remark->english().find("/size/girth_um, colour"), std::string::npos);
}

TEST(JudgeTypes, AFolderThatIsNoneIsRefused) {
    const test::TempFolder folder;
    for (const auto& path : {folder / "none", folder.path()}) {
        const auto files = judge_types(path);
        ASSERT_FALSE(files.ok());
        expect_sentence(files.error(), path.string());
    }
}

}  // namespace judge_types_test

}  // namespace streamwright::catalogue
