// Worst cases of every link and direction against stored answers of another program (tests/reference/lab/SOURCE.md),
// and each routing named against the loads that the analysis finds for it.
#include "core/analysis/facts/link_load.h"
#include "tests/lab/lab_predict.h"
#include "tests/support/network_facts.h"

#include <gtest/gtest.h>

#include <fstream>
#include <map>
#include <tuple>

namespace streamwright::lab {
namespace {

using nlohmann::json;
using LinkDirection = std::tuple<std::string, std::string, std::string>;

LinkDirection direction_of(const json& row) { return {row.at("link"), row.at("from"), row.at("to")}; }

class StoredWorstCase : public testing::TestWithParam<int> {
protected:
    static json file() {
        std::ifstream in(STREAMWRIGHT_SOURCE_DIR "/tests/reference/lab/worstcase/w0" + std::to_string(GetParam()) +
                         ".json");
        return json::parse(in);
    }
};

TEST_P(StoredWorstCase, IsReached) {
    const auto stored = file();
    std::map<LinkDirection, json> answers;
    const auto told = predict_worst(stored.at("input"));
    for (const auto& row : told.at("answers")) answers[direction_of(row)] = row;
    ASSERT_FALSE(stored.at("answers").empty());
    for (const auto& row : stored.at("answers")) {
        const auto& answer = answers.at(direction_of(row));
        EXPECT_EQ(answer.at("pull"), row.at("pull")) << row;
        EXPECT_EQ(answer.at("ideal"), row.at("ideal")) << row;
    }
}

/// The load that the subscriptions bring, in Mbit/s of "rates".
double load_of(json input, const json& row) {
    input["subscriptions"] = json::array();
    for (const auto& [decoder, streams] : row.at("witness").items())
        for (const auto& stream : streams)
            input["subscriptions"].push_back({{"stream", stream}, {"receiver", decoder}});
    const auto predicted = predict(input);
    double sum = 0;
    for (const auto& load : predicted.at("phases").at(0).at("loads"))
        if (direction_of(load) == direction_of(row))
            for (const auto& [stream, nothing] : load.at("streams").items())
                sum += input.at("rates").at(stream).get<double>();
    return sum;
}

/// `pull` by the load analysis.
TEST_P(StoredWorstCase, TheWitnessReachesItsLoad) {
    const auto input = file().at("input");
    const auto told = predict_worst(input);
    ASSERT_FALSE(told.at("answers").empty());
    for (const auto& row : told.at("answers")) {
        EXPECT_EQ(load_of(input, row), row.at("pull").get<double>()) << row;
        for (const auto& [decoder, streams] : row.at("witness").items()) {
            EXPECT_LE(static_cast<int>(streams.size()), input.at("k").at(decoder).get<int>()) << row;
            if (!input.contains("allowed")) continue;
            for (const auto& stream : streams)
                EXPECT_NE(std::ranges::count(input.at("allowed").at(decoder), stream), 0) << row;
        }
    }
}

/// Witness streams are told apart, so that their rates add up to `ideal`.
TEST_P(StoredWorstCase, TheWitnessReachesTheIdeal) {
    const auto input = file().at("input");
    const auto told = predict_worst(input);
    ASSERT_FALSE(told.at("answers").empty());
    for (const auto& row : told.at("answers")) {
        double sum = 0;
        for (const auto& [decoder, streams] : row.at("witness").items())
            for (const auto& stream : streams) sum += input.at("rates").at(stream).get<double>();
        EXPECT_EQ(sum, row.at("ideal").get<double>()) << row;
    }
}

INSTANTIATE_TEST_SUITE_P(All, StoredWorstCase, testing::Range(1, 9));

}  // namespace
}  // namespace streamwright::lab
