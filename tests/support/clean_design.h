// A small design without a single finding, for tests that break one thing and expect exactly that finding; and what
// such tests ask of findings.
#pragma once

#include "core/analysis/analyser.h"
#include "tests/support/design_builder.h"

#include <string>
#include <vector>

namespace streamwright::test {

/// Two switches joined by a trunk of OM3; on each VLAN one source, encoder, decoder and display, across the trunk.
struct CleanDesign {
    DesignBuilder b{7};
    model::VlanId usual, second;  // VLAN 30, untagged on every port; VLAN 50, tagged on the trunk
    model::DeviceId switch_a, switch_b;
    model::DeviceId source, encoder, decoder, display;      // VLAN 30: switch_a port 1, switch_b port 1
    model::DeviceId source2, encoder2, decoder2, display2;  // VLAN 50: switch_a port 2, switch_b port 2
    model::CableId trunk;                                   // 60 m, both ends in cage s1
    model::CableId source_lead, encoder_cable, decoder_cable, display_lead;
    model::CableId encoder2_cable, decoder2_cable;
    model::StreamId stream, stream2;  // 200 Mb/s each, groups 239.192.1.1 and 239.192.1.2
    model::PresetId preset;
    model::SubscriptionId shown, shown2;

    const model::Design& design() const { return b.design; }
};
CleanDesign clean_design();

/// All findings of the design. Every one is checked: its key is its own, its sentence has no place left open, an error
/// or warning says why, a figure beside a limit names its arithmetic, and each remedy is an edit that the design takes.
analysis::Findings analyse_findings(const model::Design& design);
/// The rules of the findings, in order.
std::vector<std::string> rules_found(const model::Design& design);
/// The first finding of the rule; a test failure and an empty one if there is none.
analysis::Finding finding_of(const model::Design& design, std::string_view rule);
std::string english_sentence(const model::Design& design, const analysis::Finding& finding);
/// The finding's arithmetic in words, line by line.
std::vector<std::string> terms_of(const model::Design& design, const analysis::Finding& finding);
/// The design after the finding's first remedy.
model::Design cured(const model::Design& design, const analysis::Finding& finding);

}  // namespace streamwright::test
