#include "tests/support/clean_design.h"

#include "core/analysis/report.h"
#include "core/model/edits/all_edits.h"

#include <gtest/gtest.h>

#include <set>

namespace streamwright::test {

namespace clean_design_detail {

using namespace base::literals;

void add_trunk(CleanDesign& c) {
    auto& b = c.b;
    const auto a_end = port_of(c.switch_a, "s1"), b_end = port_of(c.switch_b, "s1");
    b.embed(types::module_sr());
    for (const auto& end : {a_end, b_end})
        b.port(end, [&](model::PortOverride& row) {
            row.module = types::module_sr()->key;
            row.tagged = {c.second};
        });
    c.trunk = b.cable(types::om3(), a_end, b_end, 60_m);
}

void add_switches(CleanDesign& c) {
    auto& b = c.b;
    c.usual = b.vlan(30, "AV media", "10.30.0.0/24");
    c.second = b.vlan(50, "AV second", "10.50.0.0/24");
    b.usual_vlan(c.usual);
    c.switch_a = b.device(types::switch_24(), "SW-A");
    c.switch_b = b.device(types::switch_24(), "SW-B");
    b.address(c.switch_a, "10.30.0.1", c.usual);
    b.address(c.switch_a, "10.50.0.1", c.second);
    b.querier(c.switch_a, c.usual, "10.30.0.1");
    b.querier(c.switch_a, c.second, "10.50.0.1");
    b.change<model::Device>(c.switch_a, [](model::Device& row) { row.bridging.priority = 4096; });
    add_trunk(c);
}

void add_first_pair(CleanDesign& c) {
    auto& b = c.b;
    c.source = b.device(types::source(), "SRC-1");
    c.encoder = b.device(types::encoder(), "ENC-1");
    c.decoder = b.device(types::decoder(), "DEC-1");
    c.display = b.device(types::display(), "DSP-1");
    c.source_lead = b.cable(types::hdmi(), port_of(c.source, "out"), port_of(c.encoder, "in"), 2_m);
    c.encoder_cable = b.cable(types::cat6a(), port_of(c.encoder, "net"), port_of(c.switch_a, "1"), 30_m);
    c.decoder_cable = b.cable(types::cat6a(), port_of(c.decoder, "net"), port_of(c.switch_b, "1"), 30_m);
    c.display_lead = b.cable(types::hdmi(), port_of(c.decoder, "out"), port_of(c.display, "in"), 2_m);
    b.address(c.encoder, "10.30.0.11");
    b.address(c.decoder, "10.30.0.21");
    c.stream = b.stream(c.encoder, 200_Mbps, "239.192.1.1");
    c.shown = b.subscribe(c.preset, c.stream, c.decoder);
}

void add_second_pair(CleanDesign& c) {
    auto& b = c.b;
    c.source2 = b.device(types::source(), "SRC-2");
    c.encoder2 = b.device(types::encoder(), "ENC-2");
    c.decoder2 = b.device(types::decoder(), "DEC-2");
    c.display2 = b.device(types::display(), "DSP-2");
    b.cable(types::hdmi(), port_of(c.source2, "out"), port_of(c.encoder2, "in"), 2_m);
    c.encoder2_cable = b.cable(types::cat6a(), port_of(c.encoder2, "net"), port_of(c.switch_a, "2"), 30_m);
    c.decoder2_cable = b.cable(types::cat6a(), port_of(c.decoder2, "net"), port_of(c.switch_b, "2"), 30_m);
    b.cable(types::hdmi(), port_of(c.decoder2, "out"), port_of(c.display2, "in"), 2_m);
    for (const auto& port : {port_of(c.switch_a, "2"), port_of(c.switch_b, "2")})
        b.port(port, [&](model::PortOverride& row) { row.untagged = c.second; });
    b.address(c.encoder2, "10.50.0.11");
    b.address(c.decoder2, "10.50.0.21");
    c.stream2 = b.stream(c.encoder2, 200_Mbps, "239.192.1.2");
    c.shown2 = b.subscribe(c.preset, c.stream2, c.decoder2);
}

bool has_open_place(const std::string& sentence) {
    for (std::size_t i = 0; i + 1 < sentence.size(); ++i)
        if (sentence[i] == '%' && sentence[i + 1] >= '1' && sentence[i + 1] <= '9') return true;
    return false;
}

void hold_well_formed(const model::Design& design, const analysis::Finding& finding) {
    const auto words = english_sentence(design, finding);
    EXPECT_FALSE(has_open_place(words)) << words;
    EXPECT_NE(words, std::string(finding.rule)) << "no pattern for its variant";
    // Only questions of the plan are about the whole design.
    EXPECT_TRUE(!finding.subjects.empty() || finding.rule.starts_with("plan-")) << words;
    EXPECT_TRUE(!finding.measured || !finding.limit || !finding.terms.empty()) << words << "\nnames no arithmetic";
    for (const auto& term : finding.terms)
        EXPECT_FALSE(has_open_place(base::fill(term, analysis::english(design)))) << words;
    for (const auto& remedy : finding.remedies) {
        EXPECT_FALSE(has_open_place(base::fill(remedy.label, analysis::english(design)))) << words;
        const auto delta = model::make_edit(design, remedy.edit);
        EXPECT_TRUE(delta.ok() && !delta->empty()) << words << "\nremedy: " << (delta ? "" : delta.error().english());
    }
}

}  // namespace clean_design_detail

CleanDesign clean_design() {
    using model::VlanId;
    const model::DeviceId none(0);
    const model::CableId no_cable(0);
    CleanDesign c{DesignBuilder{7},
                  VlanId(0),
                  VlanId(0),
                  none,
                  none,
                  none,
                  none,
                  none,
                  none,
                  none,
                  none,
                  none,
                  none,
                  no_cable,
                  no_cable,
                  no_cable,
                  no_cable,
                  no_cable,
                  no_cable,
                  no_cable,
                  model::StreamId(0),
                  model::StreamId(0),
                  model::PresetId(0),
                  model::SubscriptionId(0),
                  model::SubscriptionId(0)};
    c.preset = c.b.preset("Lecture");
    clean_design_detail::add_switches(c);
    clean_design_detail::add_first_pair(c);
    clean_design_detail::add_second_pair(c);
    return c;
}

analysis::Findings analyse_findings(const model::Design& design) {
    auto findings = analysis::analyse(design).findings;
    std::set<std::string> keys;
    for (const auto& finding : findings) {
        EXPECT_TRUE(keys.insert(finding.key()).second) << finding.key();
        clean_design_detail::hold_well_formed(design, finding);
    }
    return findings;
}

std::vector<std::string> rules_found(const model::Design& design) {
    std::vector<std::string> rules;
    for (const auto& finding : analyse_findings(design)) rules.emplace_back(finding.rule);
    return rules;
}

analysis::Finding finding_of(const model::Design& design, std::string_view rule) {
    for (const auto& finding : analyse_findings(design))
        if (finding.rule == rule) return finding;
    ADD_FAILURE() << "no finding of " << rule;
    return {};
}

std::string english_sentence(const model::Design& design, const analysis::Finding& finding) {
    return analysis::sentence(finding, analysis::english(design));
}

std::vector<std::string> terms_of(const model::Design& design, const analysis::Finding& finding) {
    std::vector<std::string> lines;
    for (const auto& term : finding.terms) lines.push_back(base::fill(term, analysis::english(design)));
    return lines;
}

model::Design cured(const model::Design& design, const analysis::Finding& finding) {
    auto after = design;
    if (finding.remedies.empty()) {
        ADD_FAILURE() << "no remedy: " << english_sentence(design, finding);
        return after;
    }
    const auto delta = model::make_edit(design, finding.remedies.front().edit);
    if (delta)
        model::apply(after, *delta);
    else
        ADD_FAILURE() << delta.error().english();
    return after;
}

}  // namespace streamwright::test
