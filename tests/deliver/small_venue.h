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
    model::RoomId hall, comms;
    model::DeviceId source, encoder_1, encoder_2, sw, panel, decoder_1, decoder_2, display;
    model::CableId n1, n2, n3, n4, lead, v1, v2, open;
    model::SheetId sheet;
    model::StreamId s1;
    SmallVenue();
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
