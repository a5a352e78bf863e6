#include "core/standards/currencies.h"

#include <array>

namespace streamwright::standards {

std::optional<int> minor_unit_decimals(std::string_view code) {
    struct Row {
        std::string_view code;
        int decimals;
    };
    static constexpr std::array rows{Row{"AUD", 2}, Row{"BHD", 3}, Row{"CAD", 2}, Row{"CHF", 2}, Row{"CZK", 2},
                                     Row{"DKK", 2}, Row{"EUR", 2}, Row{"GBP", 2}, Row{"JPY", 0}, Row{"KRW", 0},
                                     Row{"KWD", 3}, Row{"NOK", 2}, Row{"PLN", 2}, Row{"SEK", 2}, Row{"SGD", 2},
                                     Row{"TND", 3}, Row{"USD", 2}, Row{"ZAR", 2}};
    for (const auto& row : rows)
        if (row.code == code) return row.decimals;
    return std::nullopt;
}

}  // namespace streamwright::standards
