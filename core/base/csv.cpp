#include "core/base/csv.h"

#include "core/base/text.h"

#include <algorithm>
#include <cctype>

namespace streamwright::base {

namespace csv_detail {

bool plain_number(std::string_view text) {
    if (text.starts_with('-') || text.starts_with('+')) text.remove_prefix(1);
    const auto digit = [](char c) { return std::isdigit(static_cast<unsigned char>(c)) != 0; };
    return !text.empty() && digit(text.front()) && std::count(text.begin(), text.end(), '.') <= 1 &&
           std::ranges::all_of(text, [&](char c) { return digit(c) || c == '.'; });
}

std::string guarded(const std::string& cell) {
    const bool starts_formula =
        !cell.empty() && std::string_view("=+-@\t\r\n").find(cell.front()) != std::string_view::npos;
    return starts_formula && !plain_number(cell) ? "'" + cell : cell;
}

std::string quoted(const std::string& cell) {
    if (cell.find_first_of(",;\"\r\n") == std::string::npos && !cell.starts_with(' ') && !cell.ends_with(' '))
        return cell;
    std::string text = "\"";
    for (const char c : cell) text += c == '"' ? std::string("\"\"") : std::string(1, c);
    return text + "\"";
}

char separator_of(std::string_view text) {
    std::size_t commas = 0;
    std::size_t semicolons = 0;
    bool inside = false;
    for (const char c : text) {
        if (c == '"') inside = !inside;
        if (inside) continue;
        if (c == '\n') break;
        commas += c == ',' ? 1 : 0;
        semicolons += c == ';' ? 1 : 0;
    }
    return semicolons > commas ? ';' : ',';
}

/// Reads cell by cell; knows the line for messages.
class Reader {
public:
    explicit Reader(std::string_view text) : text_(text), separator_(separator_of(text)) {}

    Result<std::vector<CsvRow>> rows() {
        std::vector<CsvRow> all;
        while (at_ < text_.size()) {
            CsvRow row;
            do {
                auto cell = next_cell();
                if (!cell) return cell.error();
                row.push_back(std::move(*cell));
            } while (take(separator_));
            take('\r');
            take('\n');
            all.push_back(std::move(row));
        }
        return all;
    }

private:
    bool take(char c) {
        if (at_ >= text_.size() || text_[at_] != c) return false;
        if (c == '\n') ++line_;
        ++at_;
        return true;
    }
    bool at_end_of_cell() const {
        return at_ >= text_.size() || text_[at_] == separator_ || text_[at_] == '\n' ||
               (text_[at_] == '\r' && (at_ + 1 == text_.size() || text_[at_ + 1] == '\n'));
    }
    Result<std::string> next_cell() {
        std::string cell;
        if (!take('"')) {
            while (!at_end_of_cell()) cell += text_[at_++];
            return cell;
        }
        const int opened = line_;
        for (;;) {
            if (at_ >= text_.size())
                return Error{STREAMWRIGHT_TEXT("The quotation mark opened in line %1 is never closed; close it."),
                             {std::to_string(opened)}};
            if (take('"')) {
                if (!take('"')) break;
                cell += '"';
                continue;
            }
            if (text_[at_] == '\n') ++line_;
            cell += text_[at_++];
        }
        while (!at_end_of_cell()) cell += text_[at_++];
        return cell;
    }

    std::string_view text_;
    char separator_;
    std::size_t at_ = 0;
    int line_ = 1;
};

}  // namespace csv_detail

std::string write_csv(const std::vector<CsvRow>& rows) {
    std::string text;
    for (const auto& row : rows) {
        for (std::size_t i = 0; i < row.size(); ++i)
            text += (i ? "," : "") + csv_detail::quoted(csv_detail::guarded(row[i]));
        text += "\r\n";
    }
    return text;
}

Result<std::vector<CsvRow>> read_csv(std::string_view text) {
    if (text.starts_with("\xEF\xBB\xBF")) text.remove_prefix(3);
    return csv_detail::Reader(text).rows();
}

}  // namespace streamwright::base
