// Every stored measurement of real bridges against the prediction: the same streams on every link and direction, the
// same blocked ports, before and after cuts. Expected values: tests/reference/lab, measured (see SOURCE.md there).
#include "tests/lab/lab_predict.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <tuple>

namespace streamwright::lab {
namespace {

using nlohmann::json;

std::vector<std::string> files_below(const std::string& folder) {
    std::vector<std::string> files;
    for (const auto& entry :
         std::filesystem::directory_iterator(STREAMWRIGHT_SOURCE_DIR "/tests/reference/lab/" + folder))
        files.push_back(folder + "/" + entry.path().filename().string());
    std::sort(files.begin(), files.end());
    return files;
}

json read(const std::string& file) {
    std::ifstream in(STREAMWRIGHT_SOURCE_DIR "/tests/reference/lab/" + file);
    return json::parse(in);
}

using Direction = std::tuple<std::string, std::string, std::string, std::string>;  // kind, link, from, to

std::map<Direction, std::vector<std::string>> streams_by_direction(const json& phase) {
    std::map<Direction, std::vector<std::string>> all;
    for (const auto& load : phase.at("loads")) {
        auto& names = all[{load.at("kind"), load.at("link"), load.at("from"), load.at("to")}];
        for (const auto& [name, counts] : load.at("streams").items()) names.push_back(name);
    }
    return all;
}

class MeasuredNetwork : public testing::TestWithParam<std::string> {};

TEST_P(MeasuredNetwork, IsPredicted) {
    const auto file = read(GetParam());
    const auto predicted = predict(file.at("input")).at("phases");
    const auto& measured = file.at("measured").at("phases");
    ASSERT_EQ(predicted.size(), measured.size());
    for (std::size_t i = 0; i < measured.size(); ++i) {
        EXPECT_EQ(predicted[i].at("blocked"), measured[i].at("blocked")) << "phase " << i;
        EXPECT_EQ(predicted[i].at("root"), measured[i].at("root")) << "phase " << i;
        const auto expected = streams_by_direction(measured[i]);
        const auto answer = streams_by_direction(predicted[i]);
        ASSERT_EQ(answer.size(), expected.size());
        for (const auto& [direction, names] : expected)
            EXPECT_EQ(answer.at(direction), names)
                << "phase " << i << ": " << std::get<1>(direction) << " from " << std::get<2>(direction);
    }
}

std::string test_name(const testing::TestParamInfo<std::string>& info) {
    auto name = info.param;
    std::replace_if(
        name.begin(), name.end(), [](unsigned char c) { return std::isalnum(c) == 0; }, '_');
    return name;
}

INSTANTIATE_TEST_SUITE_P(Chosen, MeasuredNetwork, testing::ValuesIn(files_below("cases")), test_name);
INSTANTIATE_TEST_SUITE_P(Random, MeasuredNetwork, testing::ValuesIn(files_below("random")), test_name);

}  // namespace
}  // namespace streamwright::lab
