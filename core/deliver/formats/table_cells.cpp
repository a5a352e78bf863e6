// Cells and names of table formats.
#include "core/deliver/formats/table_cells.h"

#include <algorithm>
#include <cctype>

namespace streamwright::deliver {

namespace cells_detail {

struct ToNumber {
    std::optional<std::string> operator()(std::monostate) const { return std::nullopt; }
    std::optional<std::string> operator()(const std::string&) const { return std::nullopt; }
    std::optional<std::string> operator()(std::int64_t number) const { return std::to_string(number); }
    std::optional<std::string> operator()(base::Length length) const { return base::print_decimal(length.count(), 6); }
    std::optional<std::string> operator()(base::BitRate rate) const { return base::print_decimal(rate.count(), 6); }
    std::optional<std::string> operator()(base::Power power) const { return base::print_decimal(power.count(), 3); }
};

bool is_plain(char c) { return std::isalnum(static_cast<unsigned char>(c)) != 0 || c == '.' || c == '-' || c == '_'; }

std::string lower(std::string_view text) {
    std::string result(text);
    for (char& c : result) c = static_cast<char>(std::tolower(static_cast<unsigned char>(c)));
    return result;
}

}  // namespace cells_detail

std::optional<std::string> cell_number(const Cell& cell) { return std::visit(cells_detail::ToNumber{}, cell); }

std::string cell_text(const Cell& cell) {
    if (const auto* text = std::get_if<std::string>(&cell)) return *text;
    return cell_number(cell).value_or(std::string{});
}

bool needs_group_column(const TablePart& table) {
    if (std::ranges::all_of(table.rows, [](const TableRow& row) { return row.group.empty(); })) return false;
    for (std::size_t column = 0; column < table.columns.size(); ++column)
        if (std::ranges::all_of(table.rows,
                                [&](const TableRow& row) { return cell_text(row.cells[column]) == row.group; }))
            return false;
    return true;
}

std::string file_name(std::string_view wanted, std::string_view extension, std::set<std::string>& used) {
    std::string stem;
    for (const char c : wanted) {
        if (cells_detail::is_plain(c))
            stem += c;
        else if (!stem.empty() && stem.back() != '-')
            stem += '-';
    }
    while (!stem.empty() && (stem.back() == '-' || stem.back() == '.')) stem.pop_back();
    while (!stem.empty() && stem.front() == '.') stem.erase(0, 1);
    if (stem.empty()) stem = "document";
    auto name = stem;
    for (int next = 2; !used.insert(cells_detail::lower(name)).second; ++next) name = stem + "-" + std::to_string(next);
    return name + std::string(extension);
}

}  // namespace streamwright::deliver
