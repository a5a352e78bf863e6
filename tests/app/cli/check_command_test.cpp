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

TEST(CheckCommand, RulesPrintsThePageAndExplainOneRuleOfIt) {
    const auto page = run_program({"check", "--rules"});
    EXPECT_EQ(page.exit_code, 0);
    const auto one = run_program({"check", "--explain", "kvm-sides"});
    EXPECT_EQ(one.exit_code, 0) << one.err;
    EXPECT_EQ(one.out.rfind("kvm-sides (error)\n", 0), 0U) << one.out;
    for (const char* part : {"    measured: ", "    says: ", "    remedy: ", "    source: "})
        EXPECT_NE(one.out.find(part), std::string::npos) << part;
    EXPECT_NE(page.out.find(one.out), std::string::npos) << "one text for both";
}

TEST(CheckCommand, ARuleThatIsNotThereGetsASuggestion) {
    const auto near = run_program({"check", "--explain", "coper-too-long"});
    EXPECT_EQ(near.exit_code, 2);
    EXPECT_EQ(near.out, "");
    EXPECT_NE(near.err.find("did you mean 'copper-too-long'?"), std::string::npos) << near.err;
    const auto far = run_program({"check", "--explain", "xyz"});
    EXPECT_EQ(far.exit_code, 2);
    EXPECT_EQ(far.err.find("did you mean"), std::string::npos) << far.err;
    EXPECT_NE(far.err.find("check --rules"), std::string::npos) << far.err;
    EXPECT_EQ(run_program({"check", "--explain"}).exit_code, 2);
}

TEST(CheckCommand, ExplainWithADesignTellsTheNumbersBehindATagAPortAndAFinding) {
    const auto quay = demo("ferrow-quay.streamwright");
    const auto cable = run_program({"check", quay, "--explain", "SW-CR"});
    EXPECT_EQ(cable.exit_code, 0) << cable.err;
    EXPECT_EQ(cable.out.rfind("SW-CR (device:", 0), 0U) << cable.out.substr(0, 200);
    EXPECT_NE(cable.out.find("Power that SW-CR gives"), std::string::npos);
    const auto stream = run_program({"check", quay, "--explain", "S-101"});
    EXPECT_NE(stream.out.find("On the wire"), std::string::npos) << stream.out;
    const auto faulty = demo("faulty.streamwright");
    const auto rule = run_program({"check", faulty, "--explain", "copper-too-long"});
    EXPECT_EQ(rule.exit_code, 0);
    EXPECT_NE(rule.out.find("Length and limit"), std::string::npos) << rule.out;
    const auto top = json::parse(run_program({"check", faulty, "--json"}).out);
    const auto key = top.at("findings").front().at("key").get<std::string>();
    EXPECT_EQ(run_program({"check", faulty, "--explain", key}).exit_code, 0) << key;
    const auto silent = run_program({"check", demo("huddle-room.streamwright"), "--explain", "copper-too-long"});
    EXPECT_NE(silent.out.find("finds nothing"), std::string::npos);
}

TEST(CheckCommand, ExplainOfWhatADesignHasNotGetsOneSentence) {
    const auto ran = run_program({"check", demo("huddle-room.streamwright"), "--explain", "no such thing"});
    EXPECT_EQ(ran.exit_code, 2);
    EXPECT_EQ(ran.out, "");
    EXPECT_EQ(std::count(ran.err.begin(), ran.err.end(), '\n'), 1) << ran.err;
    EXPECT_EQ(run_program({"check", "no-such-file", "--explain", "SW-CR"}).exit_code, 2);
}

TEST(CheckCommand, RulesThatOfferAnEditSayOnTheirPageWhich) {
    const auto top = json::parse(run_program({"check", demo("faulty.streamwright"), "--json"}).out);
    for (const auto& finding : top.at("findings")) {
        if (finding.at("remedies").empty()) continue;
        const auto rule = finding.at("rule").get<std::string>();
        EXPECT_NE(run_program({"check", "--explain", rule}).out.find("    offers: "), std::string::npos) << rule;
    }
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
