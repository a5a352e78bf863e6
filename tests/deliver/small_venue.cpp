// The small venue, and helpers that read tables.
#include "tests/deliver/small_venue.h"

#include <array>
#include <cstdio>
#include <stdexcept>
#include <sys/wait.h>

namespace streamwright::test {

using namespace base::literals;

model::CableId SmallVenue::copper(const std::string& tag, const model::PortRef& a, const model::PortRef& b_end,
                                  int mm) {
    return b.cable(types::cat6a(), a, b_end, mm * 1_mm, tag);
}

model::CableId SmallVenue::hdmi(const std::string& tag, const model::PortRef& a, const model::PortRef& b_end) {
    return b.cable(types::hdmi(), a, b_end, 3_m, tag);
}

SmallVenue::SmallVenue() {
    for (const auto id : {source, encoder_1, encoder_2, decoder_1, decoder_2, display})
        b.change<model::Device>(id, [&](auto& row) { row.room = hall; });
    for (const auto id : {sw, panel}) b.change<model::Device>(id, [&](auto& row) { row.room = comms; });
    const auto preset = b.preset("Lecture");
    b.subscribe(preset, s1, decoder_1);
    b.place(sheet, source, 40_mm, 40_mm);
    b.place(sheet, encoder_1, 95_mm, 40_mm);
    b.place(sheet, encoder_2, 95_mm, 90_mm);
    b.place(sheet, sw, 180_mm, 60_mm);
    b.place(sheet, decoder_1, 265_mm, 40_mm);
    b.place(sheet, display, 330_mm, 40_mm);
    auto settings = b.design.settings();
    settings.title = "Ferrow Quay";
    settings.owner = "Ferrow Quay Conference Centre";
    settings.number = "FQ-AV";
    b.put(settings);
    for (int i = 1; i <= 2; ++i) {
        auto revision = model::Revision::blank(b.fresh<model::RevisionId>());
        revision.number = i;
        revision.letter = std::string(1, static_cast<char>('A' + i));
        revision.date = "2026-11-2" + std::to_string(i);
        revision.what = "change " + std::to_string(i);
        revision.by = "design";
        b.put(revision);
    }
}

Delivered::Delivered(model::Design of) : design(std::move(of)), analysis(analysis::analyse(design)) {}

deliver::Source Delivered::source() const {
    return {design, analysis, analysis::report(design, analysis.findings), analysis::english(design)};
}

deliver::Content Delivered::document(std::string_view name) const {
    for (const auto& kind : deliver::all_documents())
        if (kind.name == name) return kind.make(source());
    throw std::runtime_error("no such document");
}

std::vector<deliver::Content> Delivered::all() const {
    std::vector<deliver::Content> contents;
    for (const auto& kind : deliver::all_documents()) contents.push_back(kind.make(source()));
    return contents;
}

const deliver::TablePart& table(const deliver::Content& content, std::size_t index) {
    return std::get<deliver::TablePart>(content.parts.at(index));
}

namespace {

struct AsText {
    std::string operator()(std::monostate) const { return {}; }
    std::string operator()(const std::string& text) const { return text; }
    std::string operator()(std::int64_t number) const { return std::to_string(number); }
    template <class Tag>
    std::string operator()(base::Quantity<Tag> quantity) const {
        return std::to_string(quantity.count());
    }
};

}  // namespace

std::string cell(const deliver::TablePart& table, const deliver::TableRow& row, std::string_view column) {
    for (std::size_t i = 0; i < table.columns.size(); ++i)
        if (table.columns[i].title == column) return std::visit(AsText{}, row.cells.at(i));
    throw std::runtime_error("no such column: " + std::string(column));
}

std::vector<std::string> column(const deliver::TablePart& table, std::string_view name) {
    std::vector<std::string> texts;
    for (const auto& row : table.rows) texts.push_back(cell(table, row, name));
    return texts;
}

const deliver::TableRow* row_with(const deliver::TablePart& table, std::string_view column, std::string_view text) {
    for (const auto& row : table.rows)
        if (cell(table, row, column) == text) return &row;
    return nullptr;
}

int run_command(const std::string& command, std::string* out) {
    FILE* pipe = popen(command.c_str(), "r");
    if (!pipe) return -1;
    std::array<char, 4096> buffer;
    while (const auto read = fread(buffer.data(), 1, buffer.size(), pipe))
        if (out) out->append(buffer.data(), read);
    const int status = pclose(pipe);
    return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

}  // namespace streamwright::test
