// The command line as a whole: help, version, refusals of wrong use and of what a later version brings.
#include "tests/app/cli/run_program.h"

#include <gtest/gtest.h>

#include <algorithm>

namespace streamwright::test::command_line {

TEST(CommandLine, HelpNamesTheVerbsThatAreHere) {
    const auto ran = run_program({"--help"});
    EXPECT_EQ(ran.exit_code, 0);
    for (const char* verb : {"check", "deliver", "loads"}) EXPECT_NE(ran.out.find(verb), std::string::npos) << verb;
    for (const char* later : {"merge", "compare", "--copy", "--language"}) {
        EXPECT_EQ(ran.out.find(later), std::string::npos) << later;
        for (const char* verb : {"check", "deliver", "loads"})
            EXPECT_EQ(run_program({verb, "--help"}).out.find(later), std::string::npos) << verb << later;
    }
}

TEST(CommandLine, WhatComesLaterIsRefusedInOneSentence) {
    const std::vector<std::vector<std::string>> asked{{"size", "rooms.csv"},
                                                      {"compare", "a", "b"},
                                                      {"merge", "a", "b", "c"},
                                                      {"deliver", "a", "--copy", "client"},
                                                      {"deliver", "a", "--language=de"}};
    for (const auto& words : asked) {
        const auto ran = run_program(words);
        EXPECT_EQ(ran.exit_code, 2) << words[0];
        EXPECT_NE(ran.err.find("not part of this version"), std::string::npos) << ran.err;
        EXPECT_EQ(std::count(ran.err.begin(), ran.err.end(), '\n'), 1);
    }
}

TEST(CommandLine, WrongUseExitsTwo) {
    EXPECT_EQ(run_program({"check", "--nonsense"}).exit_code, 2);
    EXPECT_EQ(run_program({"loads"}).exit_code, 2);
    EXPECT_EQ(run_program({"loads", "--worst", "--preset", "x", "y"}).exit_code, 2);
    EXPECT_EQ(run_program({"deliver", demo("huddle-room.streamwright")}).exit_code, 2);
}

}  // namespace streamwright::test::command_line
