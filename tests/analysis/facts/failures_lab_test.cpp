// Cuts measured on real bridges (tests/reference/lab, cases 21 to 24) against what the failure of the same cable says:
// the tree's time and the longest gap of each picture that came back lie within its bounds. Timers as measured there:
// hello 1 s, message age 6 s, forward delay 2 s, queries every 2 s, answers within 1 s; the tree is classic.
#include "core/analysis/facts/failures.h"
#include "tests/lab/lab_predict.h"
#include "tests/support/network_facts.h"

#include <gtest/gtest.h>

#include <fstream>
#include <map>

namespace streamwright::test::failures_lab_test {

using nlohmann::json;

model::Design timed_design(const json& input) {
    auto design = lab::lab_design(input);
    auto settings = design.settings();
    settings.query_interval_s = 2;
    settings.query_response_s = 1;
    design.settings_table.put(settings);
    for (const auto& each : model::Design(design).devices) {
        auto row = each;
        row.bridging.hello_s = 1;
        row.bridging.max_age_s = 6;
        row.bridging.forward_delay_s = 2;  // less than the standard allows; the kernel takes it
        design.devices.put(row);
    }
    for (const auto& each : model::Design(design).device_types) {
        auto type = *each.type;
        if (type.bridging) type.bridging->rapid_tree = false;
        design.device_types.put({std::make_shared<const catalogue::DeviceType>(type)});
    }
    return design;
}

double seconds(base::Duration time) { return static_cast<double>(time.count()) / 1e9; }

class MeasuredCut : public testing::TestWithParam<const char*> {};

TEST_P(MeasuredCut, LiesWithinTheBoundsSaid) {
    std::ifstream in(std::string(STREAMWRIGHT_SOURCE_DIR "/tests/reference/lab/cases/") + GetParam());
    const auto file = json::parse(in);
    const NetworkFacts f(timed_design(file.at("input")));
    const analysis::WholeNetwork whole{f.wiring, f.runs, f.network, f.capacity, f.paths, f.trees, f.forwarding};
    auto failing = analysis::list_failing(f.wiring, f.runs, f.network, {});
    std::erase_if(failing, [&](const auto& each) {
        return each.cable < 0 ||
               f.wiring.cables[static_cast<std::size_t>(each.cable)].row->tag != file["input"]["cut"][0];
    });
    ASSERT_EQ(failing.size(), 1u);
    analysis::LostState state(whole);
    state.apply(failing[0].lost);
    const auto tree = analysis::tree_change(whole, state, 0);
    const auto outcome = analysis::find_outcomes(whole, f.loads, failing, {})->outcomes.at(0);
    EXPECT_TRUE(outcome.lost.empty());

    const auto& measured = file["measured"]["phases"][1]["transition"];
    const double stable = measured["stp_stable_after_s"];
    constexpr double sampled = 0.4;  // the laboratory looks that often
    ASSERT_TRUE(tree.takes);
    EXPECT_GE(stable, seconds(tree.takes->from));
    EXPECT_LE(stable, seconds(tree.takes->to) + sampled + 0.1);
    std::map<std::pair<std::string, std::string>, bool> moved;
    int index = -1;
    for (const auto& row : f.wiring.design.subscriptions) {
        ++index;
        moved[{f.tag(row.decoder), f.wiring.design.streams.find(row.stream)->tag}] =
            std::any_of(outcome.moved.begin(), outcome.moved.end(),
                        [&](const auto& each) { return each.picture.subscription == index; });
    }
    for (const auto& [receiver, streams] : measured["receivers"].items())
        for (const auto& [stream, gaps] : streams.items()) {
            const double gap = gaps["longest_gap_s"];
            if (moved.at({receiver, stream})) {
                EXPECT_GE(gap, seconds(outcome.back->from)) << receiver << ' ' << stream;
                EXPECT_LE(gap, seconds(outcome.back->to)) << receiver << ' ' << stream;
            } else if (std::string(GetParam()).starts_with("21") && receiver == "E2" && stream == "V2") {
                // Its way stays and yet it stopped for 1.4 s when S3 heard the querier from elsewhere: not predicted.
                EXPECT_LT(gap, 1.5);
            } else {
                EXPECT_LT(gap, 0.1) << receiver << ' ' << stream;
            }
        }
    RecordProperty("bounds", outcome.back ? std::to_string(seconds(outcome.back->from)) + " to " +
                                                std::to_string(seconds(outcome.back->to))
                                          : "nothing moves");
}

INSTANTIATE_TEST_SUITE_P(FailuresLab, MeasuredCut,
                         testing::Values("21-ring4-cut-S1-S2.json", "22-ring4-cut-S2-S3.json",
                                         "23-ring4-cut-S3-S4.json", "24-ring4-cut-S4-S1.json"));

}  // namespace streamwright::test::failures_lab_test
