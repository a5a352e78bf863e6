// Published values and worked examples, copied with their sources into tests/reference: what the tables are held
// against.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace streamwright::test {

struct ReferenceRow {
    std::string id, quantity, condition, value, unit, source, status;
    std::string note;  // figures that stand beside the value; signal rows alone
};

struct ReferenceExample {
    std::string id, inputs, expected, source;
};

struct SignalExample {
    std::string id, inputs, formula, expected, number, tolerance, source, row;
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

/// A worked example of signals, and its number in units of 10^-decimals.
const SignalExample& signal_example(std::string_view id);
std::int64_t signal_number(std::string_view id, int decimals);

/// The number that stands behind `label` in a text of a row.
std::int64_t number_after(std::string_view text, std::string_view label, int decimals);

/// Rows and examples of signals that no test has asked for by id so far: none may be left at the end of a run.
std::vector<std::string> signal_rows_not_claimed();

/// Rows that were only remembered by who made the table must be remembered in the code as well.
bool was_read(std::string_view id);

}  // namespace streamwright::test
