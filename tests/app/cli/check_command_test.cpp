// check: exit codes, the JSON form, one sentence for what cannot be read, nothing that steers a terminal.
#include "tests/app/cli/run_program.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <fstream>
#include <set>

namespace streamwright::test::check_command {

using nlohmann::json;

TEST(CheckCommand, HuddleRoomIsClean) {
    const auto ran = run_program({"check", demo("huddle-room.streamwright"), "--json"});
    EXPECT_EQ(ran.exit_code, 0) << ran.err;
    EXPECT_EQ(ran.err, "");
    const auto top = json::parse(ran.out);
    EXPECT_EQ(top.at("counts").at("error"), 0);
    EXPECT_TRUE(top.at("findings").is_array());
    EXPECT_TRUE(top.at("design").is_string());
}

TEST(CheckCommand, FerrowQuayHasNoErrorButHonestWarnings) {
    const auto ran = run_program({"check", demo("ferrow-quay.streamwright"), "--json"});
    EXPECT_EQ(ran.exit_code, 0) << ran.out.substr(0, 2000);
    const auto top = json::parse(ran.out);
    EXPECT_EQ(top.at("counts").at("error"), 0);
    EXPECT_GT(top.at("counts").at("warning"), 0);
    EXPECT_LT(top.at("counts").at("warning"), 12) << "a few, not a crowd";
}

TEST(CheckCommand, FaultyDesignTriggersEveryRule) {
    const auto ran = run_program({"check", demo("faulty.streamwright"), "--json"});
    EXPECT_EQ(ran.exit_code, 1);
    const auto top = json::parse(ran.out);
    std::set<std::string> found;
    for (const auto& finding : top.at("findings")) {
        found.insert(finding.at("rule").get<std::string>());
        for (const char* key : {"severity", "subjects", "message", "measured", "limit", "source", "remedies", "waived"})
            EXPECT_TRUE(finding.contains(key)) << key;
        const bool plan = finding.at("rule").get<std::string>().starts_with("plan-");
        EXPECT_EQ(finding.at("subjects").empty(), plan) << "only questions of the plan are about the whole design";
        EXPECT_EQ(finding.at("message").get<std::string>().find('%' + std::string("1")), std::string::npos);
    }
    const auto page = run_program({"check", "--rules"});
    EXPECT_EQ(page.exit_code, 0);
    std::istringstream lines(page.out);
    int rules = 0;
    for (std::string line; std::getline(lines, line);) {
        if (line.empty() || line.front() == ' ') continue;
        ++rules;
        EXPECT_TRUE(found.contains(line.substr(0, line.find(' ')))) << line;
    }
    EXPECT_GT(rules, 20);
}

TEST(CheckCommand, TextNamesSourceAndCounts) {
    const auto ran = run_program({"check", demo("faulty.streamwright")});
    EXPECT_EQ(ran.exit_code, 1);
    EXPECT_NE(ran.out.find("source: "), std::string::npos);
    EXPECT_NE(ran.out.find(" errors, "), std::string::npos);
}

void expect_one_sentence(const Ran& ran) {
    EXPECT_EQ(ran.exit_code, 2);
    EXPECT_EQ(ran.out, "");
    EXPECT_GT(ran.err.size(), 20U);
    EXPECT_EQ(std::count(ran.err.begin(), ran.err.end(), '\n'), 1) << ran.err;
}

TEST(CheckCommand, WhatCannotBeReadGetsOneSentence) {
    const TempFolder folder;
    const auto bad = folder / "bad.streamwright";
    for (const std::string text : {"", "{", "not json", "[]", "{\"format\":\"other\"}",
                                   "{\"format\":\"streamwright\",\"version\":99}", "\x1b[31mred", "\xff\xfe"}) {
        std::ofstream(bad, std::ios::binary) << text;
        const auto ran = run_program({"check", bad.string()});
        expect_one_sentence(ran);
        EXPECT_NE(ran.err.find("bad.streamwright"), std::string::npos) << ran.err;
        EXPECT_EQ(ran.err.find('\x1b'), std::string::npos);
    }
    expect_one_sentence(run_program({"check", (folder / "missing.streamwright").string()}));
    expect_one_sentence(run_program({"check", folder.path().string()}));
    expect_one_sentence(run_program({"check"}));
}

}  // namespace streamwright::test::check_command
