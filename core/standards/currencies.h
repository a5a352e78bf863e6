// How many decimals a currency's amounts are written with.
#pragma once

#include "core/base/money.h"
#include "core/standards/citation.h"

#include <optional>
#include <span>
#include <string_view>

namespace streamwright::standards {

struct CurrencyRow {
    std::string_view code;
    int decimals;
};

std::span<const CurrencyRow> currencies();

/// Nothing for a code that the table does not hold: ask, do not assume two.
std::optional<int> minor_digits(std::string_view code);

inline constexpr Citation currency_source{"ISO", "4217", "minor units"};

}  // namespace streamwright::standards
