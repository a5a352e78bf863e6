#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::control_port_missing_test {

using analysis::Severity;
using catalogue::Connector;
using catalogue::ControlMethod;
using catalogue::Signal;
using catalogue::Way;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;
using namespace base::literals;

catalogue::PortType control_port(const std::string& key, const std::string& standard, Way way) {
    auto port = types::make_port(key, Signal::control, way, Connector::terminal);
    port.standards = {standard};
    return port;
}

types::CablePtr control_lead() {
    auto type = *types::speaker_cable();
    type.key = {"control-lead"};
    type.signal = Signal::control;
    return std::make_shared<const catalogue::CableType>(type);
}

/// The clean design, whose first source is controlled by these methods and whose first encoder has these ports.
CleanDesign controlled(std::vector<ControlMethod> methods, const std::vector<catalogue::PortType>& own,
                       const std::vector<catalogue::PortType>& at_encoder) {
    auto c = clean_design();
    auto source = types::make_source();
    source.key = {"controlled"};
    source.controlled_by = std::move(methods);
    source.ports.insert(source.ports.end(), own.begin(), own.end());
    auto encoder = types::make_encoder();
    encoder.key = {"controls"};
    encoder.ports.insert(encoder.ports.end(), at_encoder.begin(), at_encoder.end());
    c.b.embed(std::make_shared<const catalogue::DeviceType>(source));
    c.b.embed(std::make_shared<const catalogue::DeviceType>(encoder));
    c.b.change<model::Device>(c.source, [](auto& row) { row.type = {"controlled"}; });
    c.b.change<model::Device>(c.encoder, [](auto& row) { row.type = {"controls"}; });
    return c;
}

const auto ir_out = control_port("ir", "IR", Way::out), ir_in = control_port("ir", "IR", Way::in),
           serial = control_port("rs232", "RS-232", Way::both);

// Field case F45: control = IR, location = encoder, encoder.IR = 0: error.
TEST(ControlPortMissing, firesWhereTheEncoderHasNoPortForIt) {
    const auto c = controlled({ControlMethod::ir}, {ir_in}, {serial});
    EXPECT_THAT(rules_found(c.design()), ElementsAre("control-port-missing"));
    const auto finding = finding_of(c.design(), "control-port-missing");
    EXPECT_EQ(finding.severity, Severity::error);
    EXPECT_THAT(english_sentence(c.design(), finding), HasSubstr("needs IR control, and none reaches it"));
}

TEST(ControlPortMissing, advisesWhereAPortIsFreeAndNoLeadIsDrawn) {
    auto c = controlled({ControlMethod::ir}, {ir_in}, {ir_out});
    EXPECT_THAT(rules_found(c.design()), ElementsAre("control-port-missing"));
    EXPECT_EQ(finding_of(c.design(), "control-port-missing").severity, Severity::advice);
    c.b.cable(control_lead(), port_of(c.encoder, "ir"), port_of(c.source, "ir"), 2_m);
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

TEST(ControlPortMissing, takesAProcessorOfTheSameRoom) {
    auto c = controlled({ControlMethod::serial}, {serial}, {});
    catalogue::DeviceType processor;
    processor.key = {"processor"}, processor.name = "Control processor", processor.maker = "Generic";
    processor.kind = catalogue::DeviceKind::control_processor;
    processor.ports = {serial};
    const auto there = c.b.device(processor, "CP-1");
    const auto room = c.b.room("1.01", "Studio"), other = c.b.room("1.02", "Next door");
    c.b.change<model::Device>(c.source, [&](auto& row) { row.room = room; });
    c.b.change<model::Device>(there, [&](auto& row) { row.room = other; });
    EXPECT_EQ(finding_of(c.design(), "control-port-missing").variant, 0);
    c.b.change<model::Device>(there, [&](auto& row) { row.room = room; });
    EXPECT_EQ(finding_of(c.design(), "control-port-missing").variant, 2);
    c.b.cable(control_lead(), port_of(there, "rs232"), port_of(c.source, "rs232"), 2_m);
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

TEST(ControlPortMissing, isContentWithAnyOneOfTheMethods) {
    auto c = controlled({ControlMethod::network, ControlMethod::serial},
                        {serial, types::make_network_port("lan", {1_Gbps})}, {});
    EXPECT_EQ(finding_of(c.design(), "control-port-missing").severity, Severity::warning);
    c.b.cable(types::cat6a(), port_of(c.source, "lan"), port_of(c.switch_a, "9"), 20_m);
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

TEST(ControlPortMissing, followsWhatIsAskedForHere) {
    auto c = controlled({}, {ir_in}, {ir_out});
    EXPECT_THAT(rules_found(c.design()), IsEmpty()) << "a type that needs no control";
    c.b.change<model::Device>(c.source, [](auto& row) { row.control = ControlMethod::contact; });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("control-port-missing"));
    EXPECT_EQ(finding_of(c.design(), "control-port-missing").variant, 1);
}

}  // namespace streamwright::test::control_port_missing_test
