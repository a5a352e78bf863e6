// One row a lead that controls a device; a device that asks for control and has none stands with what it asks for.
#include "tests/deliver/small_venue.h"
#include "tests/support/clean_design.h"

#include <gtest/gtest.h>

namespace streamwright::test::control_schedule {

catalogue::PortType serial_port(const std::string& key) {
    auto port = types::make_port(key, catalogue::Signal::control, catalogue::Way::both, catalogue::Connector::terminal);
    port.label = "RS-232";
    port.standards = {"RS-232"};
    return port;
}

/// A screen with serial control hidden in its menu, and a decoder with a serial port.
struct Controlled {
    CleanDesign c = clean_design();
    Controlled() {
        auto screen = types::make_display();
        screen.key = {"test.screen"};
        screen.ports.push_back(serial_port("serial"));
        screen.controlled_by = {catalogue::ControlMethod::serial};
        screen.control_note = "switch serial control on in the service menu";
        auto decoder = types::make_decoder();
        decoder.key = {"test.controls"};
        decoder.ports.push_back(serial_port("serial"));
        for (const auto& type : {screen, decoder}) c.b.embed(std::make_shared<const catalogue::DeviceType>(type));
        c.b.change<model::Device>(c.display, [&](auto& row) { row.type = screen.key; });
        c.b.change<model::Device>(c.decoder, [&](auto& row) { row.type = decoder.key; });
    }
};

TEST(ControlSchedule, namesPortLeadAndWhatIsSetFirst) {
    Controlled room;
    auto lead = *types::speaker_cable();
    lead.key = {"test.serial"};
    lead.signal = catalogue::Signal::control;
    room.c.b.cable(std::make_shared<const catalogue::CableType>(lead), port_of(room.c.decoder, "serial"),
                   port_of(room.c.display, "serial"), base::Length::from_count(3'000'000), "K001");
    const Delivered delivered(room.c.design());
    const auto content = delivered.document("control-schedule");
    const auto& rows = table(content);
    EXPECT_EQ(column(rows, "Device"), (std::vector<std::string>{"DSP-1"}));
    const auto* row = row_with(rows, "Device", "DSP-1");
    ASSERT_NE(row, nullptr);
    EXPECT_EQ(cell(rows, *row, "Controlled over"), "serial");
    EXPECT_EQ(cell(rows, *row, "Controlled by"), "DEC-1 RS-232");
    EXPECT_EQ(cell(rows, *row, "Cables"), "K001");
    EXPECT_EQ(cell(rows, *row, "Wiring"), "RS-232, screw terminal to screw terminal");
    EXPECT_EQ(cell(rows, *row, "Set first"), "switch serial control on in the service menu");
}

TEST(ControlSchedule, aDeviceWithoutALeadStandsWithWhatItAsksFor) {
    Controlled room;
    const Delivered delivered(room.c.design());
    const auto content = delivered.document("control-schedule");
    const auto* row = row_with(table(content), "Device", "DSP-1");
    ASSERT_NE(row, nullptr);
    EXPECT_EQ(cell(table(content), *row, "Controlled over"), "serial");
    EXPECT_EQ(cell(table(content), *row, "Cables"), "");
}

}  // namespace streamwright::test::control_schedule
