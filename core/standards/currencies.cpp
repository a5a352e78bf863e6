#include "core/standards/currencies.h"

#include <algorithm>
#include <array>

namespace streamwright::standards {

namespace currency_table {

constexpr std::array rows{
    CurrencyRow{"AED", 2}, CurrencyRow{"AUD", 2}, CurrencyRow{"BHD", 3}, CurrencyRow{"BRL", 2}, CurrencyRow{"CAD", 2},
    CurrencyRow{"CHF", 2}, CurrencyRow{"CLP", 0}, CurrencyRow{"CNY", 2}, CurrencyRow{"CZK", 2}, CurrencyRow{"DKK", 2},
    CurrencyRow{"EUR", 2}, CurrencyRow{"GBP", 2}, CurrencyRow{"HUF", 2}, CurrencyRow{"INR", 2}, CurrencyRow{"ISK", 0},
    CurrencyRow{"JOD", 3}, CurrencyRow{"JPY", 0}, CurrencyRow{"KRW", 0}, CurrencyRow{"KWD", 3}, CurrencyRow{"NOK", 2},
    CurrencyRow{"NZD", 2}, CurrencyRow{"OMR", 3}, CurrencyRow{"PLN", 2}, CurrencyRow{"RON", 2}, CurrencyRow{"SAR", 2},
    CurrencyRow{"SEK", 2}, CurrencyRow{"SGD", 2}, CurrencyRow{"TND", 3}, CurrencyRow{"TRY", 2}, CurrencyRow{"USD", 2},
    CurrencyRow{"VND", 0}, CurrencyRow{"XOF", 0}, CurrencyRow{"ZAR", 2},
};

}  // namespace currency_table

std::span<const CurrencyRow> currencies() { return currency_table::rows; }

std::optional<int> minor_digits(std::string_view code) {
    const auto& rows = currency_table::rows;
    const auto found = std::find_if(rows.begin(), rows.end(), [&](const CurrencyRow& row) { return row.code == code; });
    return found == rows.end() ? std::nullopt : std::optional(found->decimals);
}

}  // namespace streamwright::standards
