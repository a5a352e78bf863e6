// The files in demo/ are the demo designs: made by ordinary edits, sound, as large as the scenario says, and found
// faultless or faulty as they are meant to be.
#include "core/analysis/analyser.h"
#include "core/analysis/report.h"
#include "core/analysis/rule.h"
#include "core/deliver/sheet_size.h"
#include "core/io/design_file.h"
#include "core/io/design_json.h"
#include "core/layout/plate.h"
#include "core/model/integrity.h"
#include "tests/support/demo_designs.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <functional>
#include <map>
#include <string>

namespace streamwright::test {

namespace demo_test {

struct DemoCase {
    std::string file;
    Demo (*make)();
};

class Demos : public testing::TestWithParam<DemoCase> {};

TEST_P(Demos, FileIsTheDesignThatItsEditsMake) {
    const auto path = std::string(STREAMWRIGHT_SOURCE_DIR "/demo/") + GetParam().file + ".streamwright";
    const auto opened = io::open_design(path);
    ASSERT_TRUE(opened.ok()) << opened.error().english();
    const auto made = GetParam().make().design;
    EXPECT_EQ(io::write_design(opened->design), io::write_design(made))
        << "run write_demos demo after changing a demo's edits or the catalogue";
}

TEST_P(Demos, EditsApplyFromNothingAndUndoToNothing) {
    const auto demo = GetParam().make();
    model::Design design;
    std::vector<model::Delta> deltas;
    for (const auto& edit : demo.edits) {
        auto delta = model::make_edit(design, edit);
        ASSERT_TRUE(delta.ok()) << delta.error().english();
        model::apply(design, *delta);
        deltas.push_back(std::move(*delta));
    }
    EXPECT_EQ(design, demo.design);
    for (auto delta = deltas.rbegin(); delta != deltas.rend(); ++delta) model::apply(design, delta->inverse());
    EXPECT_EQ(design, model::Design{});
}

TEST_P(Demos, IsSound) {
    const auto demo = GetParam().make();
    for (const auto& bond : model::broken_bonds(demo.design)) ADD_FAILURE() << bond.english();
}

TEST_P(Demos, EveryPlateStandsInItsDrawingFrame) {
    const auto design = GetParam().make().design;
    for (const auto& place : design.places) {
        const auto& device = *design.devices.find(place.on.device);
        const auto frame = deliver::sheet_size(design.sheets.find(place.on.sheet)->paper).frame;
        const auto body = layout::plate_of(design.type_of(device), device.roles, place).body;
        EXPECT_TRUE(frame.holds(body.at) && frame.holds({body.at.x + body.width, body.at.y + body.height}))
            << device.tag << " runs off its sheet";
    }
}

INSTANTIATE_TEST_SUITE_P(All, Demos,
                         testing::Values(DemoCase{"huddle-room", huddle_room}, DemoCase{"ferrow-quay", ferrow_quay},
                                         DemoCase{"faulty", faulty}),
                         [](const auto& each) {
                             auto name = each.param.file;
                             name.erase(std::remove(name.begin(), name.end(), '-'), name.end());
                             return name;
                         });

/// One line a finding, for the message of a failed test.
std::string listed(const model::Design& design, const std::vector<analysis::Reported>& reported) {
    std::string text;
    for (const auto& each : reported)
        text += std::string(base::enum_text(each.finding.severity)) + " " + std::string(each.finding.rule) + ": " +
                analysis::sentence(each.finding, analysis::english(design)) + "\n";
    return text;
}

std::vector<analysis::Reported> reported(const model::Design& design) {
    return analysis::report(design, analysis::analyse(design).findings);
}

TEST(HuddleRoom, HasNothingToReport) {
    const auto design = huddle_room().design;
    const auto all = reported(design);
    EXPECT_TRUE(all.empty()) << listed(design, all);
}

TEST(FerrowQuay, IsAsLargeAsTheScenarioSays) {
    const auto design = ferrow_quay().design;
    int encoders = 0, decoders = 0, switches = 0;
    for (const auto& device : design.devices) {
        const auto& type = *design.type_of(device);
        const auto acts = [&](catalogue::Role role) {
            return device.roles.empty() ? type.can(role)
                                        : std::count(device.roles.begin(), device.roles.end(), role) > 0;
        };
        // The scenario counts pictures; interfaces of network audio have none.
        const bool pictures =
            std::ranges::any_of(type.ports, [](const auto& port) { return port.signal == catalogue::Signal::video; });
        encoders += pictures && acts(catalogue::Role::encoder);
        decoders += pictures && acts(catalogue::Role::decoder);
        switches += type.kind == catalogue::DeviceKind::network_switch;
    }
    EXPECT_EQ(encoders, 34);
    EXPECT_EQ(decoders, 58);
    EXPECT_EQ(switches, 9);
    EXPECT_EQ(design.racks.size(), 4U);
}

TEST(FerrowQuay, HasNoErrorAndAFewHonestWarnings) {
    const auto design = ferrow_quay().design;
    const auto all = reported(design);
    const auto counts = analysis::count(all);
    EXPECT_EQ(counts.error, 0) << listed(design, all);
    EXPECT_GE(counts.warning, 2) << listed(design, all);
    EXPECT_LE(counts.warning, 8) << listed(design, all);
}

TEST(Faulty, EveryRuleFindsOneThing) {
    const auto design = faulty().design;
    const auto all = reported(design);
    std::map<std::string_view, int> fired;
    for (const auto& each : all) ++fired[each.finding.rule];
    for (const auto& rule : analysis::all_rules()) EXPECT_EQ(fired[rule.words.id], 1) << rule.words.id;
    EXPECT_EQ(all.size(), analysis::all_rules().size()) << listed(design, all);
}

TEST(Faulty, FiguresHeldAgainstALimitNameTheirArithmetic) {
    const auto design = faulty().design;
    int figures = 0;
    for (const auto& [finding, waiver, outdated] : reported(design)) {
        if (!finding.measured || !finding.limit) continue;
        ++figures;
        EXPECT_FALSE(finding.terms.empty()) << finding.rule;
    }
    EXPECT_GE(figures, 10);
}

}  // namespace demo_test

}  // namespace streamwright::test
