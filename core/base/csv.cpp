#include "core/base/csv.h"

#include "core/base/text.h"

namespace streamwright::base {

namespace csv_detail {

/// Sign, digits, one decimal mark: what a spreadsheet reads as a number and nothing else.
bool is_plain_number(std::string_view cell) {
    if (cell.starts_with('-') || cell.starts_with('+')) cell.remove_prefix(1);
    std::size_t digits = 0, marks = 0;
    for (const char c : cell) {
        if (c >= '0' && c <= '9')
            ++digits;
        else if (c == '.' || c == ',')
            ++marks;
        else
            return false;
    }
    return digits > 0 && marks <= 1;
}

bool runs_as_formula(std::string_view cell) {
    constexpr std::string_view starts = "=+-@\t\r\n";
    return !cell.empty() && starts.find(cell[0]) != std::string_view::npos && !is_plain_number(cell);
}

void append_cell(std::string& out, std::string_view cell) {
    const std::string guarded = (runs_as_formula(cell) ? "'" : "") + std::string(cell);
    const bool edge_space = !guarded.empty() && (guarded.front() == ' ' || guarded.back() == ' ');
    if (!edge_space && guarded.find_first_of(",;\"\r\n") == std::string::npos) {
        out += guarded;
        return;
    }
    out += '"';
    for (const char c : guarded) {
        if (c == '"') out += '"';
        out += c;
    }
    out += '"';
}

/// The separator that the first line uses more often outside quotes.
char separator_of(std::string_view text) {
    bool quoted = false;
    int commas = 0, semicolons = 0;
    for (const char c : text) {
        if (c == '"') quoted = !quoted;
        if (quoted) continue;
        if (c == '\n' || c == '\r') break;
        commas += c == ',' ? 1 : 0;
        semicolons += c == ';' ? 1 : 0;
    }
    return semicolons > commas ? ';' : ',';
}

/// Walks the text cell by cell, counting lines for its refusals.
struct Reader {
    std::string_view text;
    char separator;
    std::size_t at = 0;
    int line = 1;

    bool ended() const { return at >= text.size(); }
    bool at_line_end() const { return ended() || text[at] == '\n' || text[at] == '\r'; }

    void skip_line_end() {
        if (ended()) return;
        if (text[at] == '\r' && at + 1 < text.size() && text[at + 1] == '\n') ++at;
        ++at;
        ++line;
    }

    std::string plain_cell() {
        const auto start = at;
        while (!at_line_end() && text[at] != separator) ++at;
        return std::string(text.substr(start, at - start));
    }

    Result<std::string> quoted_cell() {
        const int opened = line;
        std::string cell;
        for (++at; !ended(); ++at) {
            if (text[at] == '\n') ++line;
            if (text[at] != '"') {
                cell += text[at];
            } else if (at + 1 < text.size() && text[at + 1] == '"') {
                cell += '"';
                ++at;
            } else {
                ++at;
                if (at_line_end() || text[at] == separator) return cell;
                return Error{STREAMWRIGHT_TEXT("Line %1: text follows a closing quote. Double the quotes inside a "
                                               "quoted cell."),
                             {std::to_string(line)}};
            }
        }
        return Error{STREAMWRIGHT_TEXT("Line %1: a quote is opened and never closed. Close it, or double it if it is "
                                       "part of the text."),
                     {std::to_string(opened)}};
    }

    Result<CsvRow> row() {
        CsvRow cells;
        while (true) {
            if (!ended() && text[at] == '"') {
                auto cell = quoted_cell();
                if (!cell) return cell.error();
                cells.push_back(std::move(*cell));
            } else {
                cells.push_back(plain_cell());
            }
            if (at_line_end()) break;
            ++at;
        }
        skip_line_end();
        return cells;
    }
};

}  // namespace csv_detail

std::string write_csv(const std::vector<CsvRow>& rows) {
    std::string out;
    for (const auto& row : rows) {
        // A lone empty cell is quoted: an empty line would be no row.
        if (row.size() == 1 && row[0].empty()) out += "\"\"";
        for (std::size_t i = 0; i < row.size(); ++i) {
            if (i > 0) out += ',';
            csv_detail::append_cell(out, row[i]);
        }
        out += "\r\n";
    }
    return out;
}

Result<std::vector<CsvRow>> read_csv(std::string_view text) {
    constexpr std::string_view byte_order_mark = "\xEF\xBB\xBF";
    if (text.starts_with(byte_order_mark)) text.remove_prefix(byte_order_mark.size());
    csv_detail::Reader reader{text, csv_detail::separator_of(text)};
    std::vector<CsvRow> rows;
    while (!reader.ended()) {
        if (reader.at_line_end()) {
            reader.skip_line_end();
            continue;
        }
        auto row = reader.row();
        if (!row) return row.error();
        rows.push_back(std::move(*row));
    }
    return rows;
}

}  // namespace streamwright::base
