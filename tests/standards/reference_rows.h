// Published values and worked examples, copied with their sources into tests/reference: what the tables are held
// against.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace streamwright::test {

struct ReferenceRow {
    std::string id, quantity, condition, value, unit, source, status;
};

struct ReferenceExample {
    std::string id, inputs, expected, source;
};

/// Every row whose id begins so ("FIB-"); fails the test where there is none.
std::vector<ReferenceRow> reference_rows(std::string_view prefix);
const ReferenceRow& reference_row(std::string_view id);
const ReferenceExample& reference_example(std::string_view id);

/// A number inside the expected text of an example, found after `label` (digit groups by comma allowed), in units of
/// 10^-decimals. "I A 0.3500" after "I A" with 4 decimals is 3500.
std::int64_t example_number(std::string_view id, std::string_view label, int decimals);

/// The value column of a row as a number in units of 10^-decimals.
std::int64_t row_number(std::string_view id, int decimals);

/// Rows that were only remembered by who made the table must be remembered in the code as well.
bool was_read(std::string_view id);

}  // namespace streamwright::test
