#include "tests/standards/reference_rows.h"

#include "core/base/csv.h"

#include <gtest/gtest.h>

#include <fstream>
#include <map>
#include <set>
#include <sstream>

namespace streamwright::test {

namespace {

std::vector<base::CsvRow> read_rows(const std::string& name) {
    std::ifstream in(std::string(STREAMWRIGHT_SOURCE_DIR) + "/tests/reference/" + name, std::ios::binary);
    std::stringstream text;
    text << in.rdbuf();
    auto rows = base::read_csv(text.str());
    if (!rows || rows->size() < 2) throw std::runtime_error("cannot read tests/reference/" + name);
    rows->erase(rows->begin());
    return *rows;
}

const std::map<std::string, ReferenceRow, std::less<>>& all_rows() {
    static const auto rows = [] {
        std::map<std::string, ReferenceRow, std::less<>> made;
        for (const char* file : {"network-values.csv", "signal-values.csv"})
            for (const auto& r : read_rows(file))
                made[r.at(0)] = {r.at(0), r.at(1), r.at(2), r.at(3),
                                 r.at(4), r.at(5), r.at(6), r.size() > 7 ? r[7] : ""};
        return made;
    }();
    return rows;
}

const std::map<std::string, ReferenceExample, std::less<>>& all_examples() {
    static const auto rows = [] {
        std::map<std::string, ReferenceExample, std::less<>> made;
        for (const auto& r : read_rows("network-examples.csv")) made[r.at(0)] = {r.at(0), r.at(1), r.at(2), r.at(3)};
        return made;
    }();
    return rows;
}

const std::map<std::string, SignalExample, std::less<>>& all_signal_examples() {
    static const auto rows = [] {
        std::map<std::string, SignalExample, std::less<>> made;
        for (const auto& r : read_rows("signal-examples.csv"))
            made[r.at(0)] = {r.at(0), r.at(1), r.at(2), r.at(3), r.at(4), r.at(5), r.at(6), r.at(7)};
        return made;
    }();
    return rows;
}

std::set<std::string, std::less<>>& claimed() {
    static std::set<std::string, std::less<>> ids;
    return ids;
}

/// The first number in the text, commas as digit groups, scaled by 10^decimals.
std::int64_t first_number(std::string_view text, int decimals) {
    const auto start = text.find_first_of("0123456789");
    if (start == std::string_view::npos) throw std::runtime_error("no number in: " + std::string(text));
    std::int64_t value = 0;
    int seen = -1;
    for (const char c : text.substr(start)) {
        if (c == ',') continue;
        if (c == '.' && seen < 0) {
            seen = 0;
            continue;
        }
        if (c < '0' || c > '9') break;
        if (seen == decimals) throw std::runtime_error("more decimals than asked for: " + std::string(text));
        value = value * 10 + (c - '0');
        if (seen >= 0) ++seen;
    }
    for (int i = std::max(seen, 0); i < decimals; ++i) value *= 10;
    const bool negative = start > 0 && text[start - 1] == '-' && (start == 1 || text[start - 2] == ' ');
    return negative ? -value : value;
}

}  // namespace

std::vector<ReferenceRow> reference_rows(std::string_view prefix) {
    std::vector<ReferenceRow> found;
    for (const auto& [id, row] : all_rows())
        if (id.starts_with(prefix)) found.push_back(row);
    EXPECT_FALSE(found.empty()) << prefix;
    return found;
}

const ReferenceRow& reference_row(std::string_view id) {
    const auto found = all_rows().find(id);
    if (found == all_rows().end()) throw std::runtime_error("no reference row " + std::string(id));
    claimed().insert(found->first);
    return found->second;
}

const ReferenceExample& reference_example(std::string_view id) {
    const auto found = all_examples().find(id);
    if (found == all_examples().end()) throw std::runtime_error("no reference example " + std::string(id));
    return found->second;
}

std::int64_t example_number(std::string_view id, std::string_view label, int decimals) {
    const std::string_view expected = reference_example(id).expected;
    const auto at = expected.find(label);
    if (at == std::string_view::npos) throw std::runtime_error(std::string(id) + " has no " + std::string(label));
    return first_number(expected.substr(at + label.size()), decimals);
}

std::int64_t row_number(std::string_view id, int decimals) { return first_number(reference_row(id).value, decimals); }

const SignalExample& signal_example(std::string_view id) {
    const auto found = all_signal_examples().find(id);
    if (found == all_signal_examples().end()) throw std::runtime_error("no signal example " + std::string(id));
    claimed().insert(found->first);
    return found->second;
}

std::int64_t signal_number(std::string_view id, int decimals) {
    return first_number(signal_example(id).number, decimals);
}

std::int64_t number_after(std::string_view text, std::string_view label, int decimals) {
    const auto at = text.find(label);
    if (at == std::string_view::npos) throw std::runtime_error(std::string(label) + " is not in: " + std::string(text));
    return first_number(text.substr(at + label.size()), decimals);
}

std::vector<std::string> signal_rows_not_claimed() {
    std::vector<std::string> left;
    for (const auto& row : read_rows("signal-values.csv"))
        if (!claimed().contains(row.at(0))) left.push_back(row.at(0));
    for (const auto& row : read_rows("signal-examples.csv"))
        if (!claimed().contains(row.at(0))) left.push_back(row.at(0));
    return left;
}

bool was_read(std::string_view id) { return reference_row(id).status.starts_with("read"); }

}  // namespace streamwright::test
