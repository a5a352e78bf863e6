// What table formats share: cells as numbers or text, the column of groups, and names that every system takes.
#pragma once

#include "core/deliver/document.h"

#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <vector>

namespace streamwright::deliver {

/// A number in the unit of the column, exact in decimals: metres, Mb/s, watts; none for text and empty cells.
std::optional<std::string> cell_number(const Cell& cell);
/// Number or text; empty for an empty cell.
std::string cell_text(const Cell& cell);

/// Whether the groups say something that no column says.
bool needs_group_column(const TablePart& table);

/// Letters, digits, dot, hyphen, underscore; anything else becomes one hyphen. Never empty, never in `used`, to which
/// it is added.
std::string file_name(std::string_view wanted, std::string_view extension, std::set<std::string>& used);

}  // namespace streamwright::deliver
