// Worst cases of every link and direction against stored answers of another program (tests/reference/lab/SOURCE.md).
#include "core/analysis/facts/worst_case.h"
#include "tests/lab/lab_predict.h"
#include "tests/support/network_facts.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <fstream>
#include <tuple>

namespace streamwright::lab {
namespace {

using nlohmann::json;

/// The input's limits as a compatibility: each decoder is a kind of its own, and so is each stream.
analysis::Compatibility allowed_by(const json& input, const graph::Wiring& wiring) {
    analysis::Compatibility result;
    std::vector<std::string> streams;
    for (const auto& row : wiring.design.streams) {
        result.stream_kind.push_back(static_cast<int>(streams.size()));
        streams.push_back(row.tag);
    }
    for (std::size_t d = 0; d < wiring.devices.size(); ++d) {
        const auto& tag = wiring.devices[d].row->tag;
        if (!input.at("k").contains(tag)) continue;
        const int kind = static_cast<int>(result.takes.size());
        std::vector<bool> takes(streams.size(), true);
        if (input.contains("allowed") && input.at("allowed").contains(tag))
            for (std::size_t s = 0; s < streams.size(); ++s) {
                const auto& list = input.at("allowed").at(tag);
                takes[s] = std::find(list.begin(), list.end(), streams[s]) != list.end();
            }
        result.takes.push_back(takes);
        for (int i = 0; i < input.at("k").at(tag).get<int>(); ++i)
            result.slots.push_back({static_cast<int>(d), i, kind});
    }
    return result;
}

class StoredWorstCase : public testing::TestWithParam<int> {};

TEST_P(StoredWorstCase, IsReached) {
    std::ifstream in(STREAMWRIGHT_SOURCE_DIR "/tests/reference/lab/worstcase/w0" + std::to_string(GetParam()) +
                     ".json");
    const auto file = json::parse(in);
    auto input = file.at("input");
    for (auto& stream : input.at("streams")) {
        stream["bytes"] = 1000;
        stream["pps"] = input.at("rates").at(stream.at("id").get<std::string>());
    }
    const auto design = lab_design(input);
    const test::NetworkFacts facts(design);
    const auto worst =
        analysis::find_worst_case(facts.wiring, facts.network, facts.paths, facts.trees, facts.forwarding, facts.loads,
                                  allowed_by(input, facts.wiring), std::stop_token{});
    ASSERT_TRUE(worst);
    std::vector<int> rate_of;
    for (const auto& row : design.streams) rate_of.push_back(input.at("rates").at(row.tag).get<int>());
    std::map<std::tuple<std::string, std::string, std::string>, int> answers;
    for (int arc = 0; arc < facts.network.arc_count(); ++arc) {
        const auto ends = graph::arc_ends(facts.wiring, facts.runs, facts.network, arc);
        int sum = 0;
        for (const auto* list : {&worst->arcs[arc].unasked, &worst->arcs[arc].routed})
            for (const int s : *list) sum += rate_of[s];
        answers[{design.cables.find(ends.link)->tag, design.devices.find(ends.from)->tag,
                 design.devices.find(ends.to)->tag}] = sum;
    }
    ASSERT_FALSE(file.at("answers").empty());
    for (const auto& answer : file.at("answers")) {
        const std::string link = answer.at("link"), from = answer.at("from"), to = answer.at("to");
        EXPECT_EQ((answers.at({link, from, to})), answer.at("pull").get<int>()) << link << " from " << from;
    }
}

INSTANTIATE_TEST_SUITE_P(All, StoredWorstCase, testing::Range(1, 9));

}  // namespace
}  // namespace streamwright::lab
