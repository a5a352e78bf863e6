// A small venue for the tests of documents: two rooms, a rack, two encoders, two decoders and a switch, a patch panel
// in between, two presets, two revisions, one sheet.
#pragma once

#include "core/deliver/document.h"
#include "core/deliver/format.h"
#include "tests/support/design_builder.h"

#include <memory>
#include <string>
#include <vector>

namespace streamwright::test {

struct SmallVenue {
    DesignBuilder b;
    model::RoomId hall = b.room("2.04", "Seminar 2"), comms = b.room("0.11", "Comms South");
    model::DeviceId source = b.device(types::source(), "SRC-001");
    model::DeviceId encoder_1 = b.device(types::encoder(), "ENC-001");
    model::DeviceId encoder_2 = b.device(types::encoder(), "ENC-002");
    model::DeviceId sw = b.device(types::switch_24(), "SW-S2");
    model::DeviceId panel = b.device(types::patch_panel(), "PP-1");
    model::DeviceId decoder_1 = b.device(types::decoder(), "DEC-001");
    model::DeviceId decoder_2 = b.device(types::decoder(), "DEC-002");
    model::DeviceId display = b.device(types::display(), "DSP-001");
    model::CableId n1 = copper("N211", port_of(encoder_1, "net"), port_of(sw, "1"), 38'000);
    model::CableId n2 = copper("N212", port_of(encoder_2, "net"), port_of(sw, "2"), 41'000);
    model::CableId n3 = copper("N217", port_of(sw, "9"), port_of(decoder_1, "net"), 46'500);
    model::CableId lead = b.cable(types::cat6a_lead(), port_of(sw, "10"), port_of(panel, "f1"), {}, "N300");
    model::CableId n4 = copper("N218", port_of(panel, "r1"), port_of(decoder_2, "net"), 50'000);
    model::CableId v1 = hdmi("V201", port_of(source, "out"), port_of(encoder_1, "in"));
    model::CableId v2 = hdmi("V211", port_of(decoder_1, "out"), port_of(display, "in"));
    model::CableId open = b.open_cable(types::cat6a(), port_of(sw, "12"));
    model::StreamId s1 = b.stream(encoder_1, base::BitRate::from_count(800'000'000), "239.1.1.1");
    model::SheetId sheet = b.sheet(4);
    SmallVenue();

private:
    model::CableId copper(const std::string& tag, const model::PortRef& a, const model::PortRef& b_end, int mm);
    model::CableId hdmi(const std::string& tag, const model::PortRef& a, const model::PortRef& b_end);
};

/// The venue with every fact derived; keeps its design alive.
struct Delivered {
    model::Design design;
    analysis::Analysis analysis;
    explicit Delivered(model::Design of);
    deliver::Source source() const;
    deliver::Content document(std::string_view name) const;
    std::vector<deliver::Content> all() const;
};

const deliver::TablePart& table(const deliver::Content& content, std::size_t index = 0);
/// Cells as text; empty where empty; quantities in their base unit.
std::string cell(const deliver::TablePart& table, const deliver::TableRow& row, std::string_view column);
std::vector<std::string> column(const deliver::TablePart& table, std::string_view name);
const deliver::TableRow* row_with(const deliver::TablePart& table, std::string_view column, std::string_view text);

/// Runs a command and returns its exit status; its output is appended to `out`.
int run_command(const std::string& command, std::string* out = nullptr);

}  // namespace streamwright::test
