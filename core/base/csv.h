// Comma-separated values by RFC 4180, with the guard against cells that spreadsheets would run as formulas.
#pragma once

#include "core/base/result.h"

#include <string>
#include <string_view>
#include <vector>

namespace streamwright::base {

using CsvRow = std::vector<std::string>;

/// Quoted where needed, CRLF line ends. A text that starts with = + - @ tab, CR or LF gets a leading apostrophe
/// (common practice against formula injection); a cell that is a plain number is left alone.
std::string write_csv(const std::vector<CsvRow>& rows);

/// Reads comma or semicolon separated text (the separator is the one the first line uses more often), UTF-8 with or
/// without BOM; an unclosed quote is refused with its line.
Result<std::vector<CsvRow>> read_csv(std::string_view text);

}  // namespace streamwright::base
