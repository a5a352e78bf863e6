// check --types: one sentence per bad file, the count, exit codes, the JSON form.
#include "tests/app/cli/run_program.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <fstream>

namespace streamwright::test::types_report {

using nlohmann::json;

TEST(CheckTypes, TheShippedLibraryIsGood) {
    const auto ran = run_program({"check", "--types", std::string(STREAMWRIGHT_SOURCE_DIR) + "/resources/types"});
    EXPECT_EQ(ran.exit_code, 0) << ran.out;
    EXPECT_EQ(ran.err, "");
    EXPECT_EQ(std::count(ran.out.begin(), ran.out.end(), '\n'), 1) << ran.out;
    EXPECT_TRUE(ran.out.ends_with(" cable types: 0 bad\n")) << ran.out;
}

TEST(CheckTypes, EachBadFileGetsOneSentenceAndTheGoodNone) {
    const TempFolder folder;
    std::ofstream(folder / "good.json") << R"({"key":"good","name":"Good","maker":"Generic"})";
    std::ofstream(folder / "zero.json")
        << R"({"key":"zero","name":"Zero","maker":"Generic","ports":[{"key":"a","signal":"copper","way":"both",)"
        << R"("connector":"rj45","rates_bps":[0]}]})";
    std::ofstream(folder / "lead.json") << R"({"key":"lead","name":"Lead","maker":"Generic","plugs":["hdmi","hdmi"]})";
    const auto ran = run_program({"check", "--types", folder.path().string()});
    EXPECT_EQ(ran.exit_code, 1);
    EXPECT_EQ(std::count(ran.out.begin(), ran.out.end(), '\n'), 3) << ran.out;
    EXPECT_EQ(ran.out.find("good.json"), std::string::npos);
    EXPECT_NE(ran.out.find("zero.json: ports[a].rates_bps: must be above zero and rise; correct it.\n"),
              std::string::npos)
        << ran.out;
    EXPECT_NE(ran.out.find("lead.json: plugs: name a connector twice; correct it.\n"), std::string::npos) << ran.out;
    EXPECT_TRUE(ran.out.ends_with("\n2 device types, 1 cable types: 2 bad\n")) << ran.out;
}

TEST(CheckTypes, JsonHasThePromisedForm) {
    const TempFolder folder;
    std::ofstream(folder / "good.json") << R"({"key":"good","name":"Good","maker":"Generic","colour":"red"})";
    std::ofstream(folder / "bad.json") << "{";
    const auto ran = run_program({"check", "--types", folder.path().string(), "--json"});
    EXPECT_EQ(ran.exit_code, 1);
    const auto top = json::parse(ran.out);
    EXPECT_EQ(top.at("folder"), folder.path().string());
    EXPECT_EQ(top.at("counts"), (json{{"files", 2}, {"good", 1}, {"bad", 1}}));
    ASSERT_EQ(top.at("files").size(), 2U);
    EXPECT_TRUE(top.at("files")[0].at("fault").is_string());
    EXPECT_EQ(top.at("files")[0].at("kind"), "device");
    EXPECT_TRUE(top.at("files")[1].at("fault").is_null());
    EXPECT_TRUE(top.at("files")[1].at("remark").is_string());
}

TEST(CheckTypes, AFolderThatCannotBeReadIsOneSentence) {
    const TempFolder folder;
    for (const auto& path : {(folder / "none").string(), folder.path().string()}) {
        const auto ran = run_program({"check", "--types", path});
        EXPECT_EQ(ran.exit_code, 2);
        EXPECT_EQ(ran.out, "");
        EXPECT_EQ(std::count(ran.err.begin(), ran.err.end(), '\n'), 1) << ran.err;
        EXPECT_NE(ran.err.find(path), std::string::npos) << ran.err;
    }
}

}  // namespace streamwright::test::types_report
