// Exact money: whole ten-thousandths of the currency's main unit, so that prices per metre keep their fractions.
#pragma once

#include "core/base/result.h"

#include <cstdint>
#include <string>
#include <string_view>

namespace streamwright::base {

struct Currency {
    std::string code;  // ISO 4217, three capital letters
    friend auto operator<=>(const Currency&, const Currency&) = default;
};

class Money {
public:
    Money(std::int64_t ten_thousandths, Currency currency)
        : ten_thousandths_(ten_thousandths), currency_(std::move(currency)) {}

    std::int64_t ten_thousandths() const { return ten_thousandths_; }
    const Currency& currency() const { return currency_; }

    /// Sum; the currencies must be equal (asserted: converting is a decision, not arithmetic).
    friend Money operator+(const Money& a, const Money& b);
    friend Money operator*(const Money& a, std::int64_t times);
    friend bool operator==(const Money&, const Money&) = default;

    /// Half away from zero to the given number of decimals (0 to 4), the usual commercial rounding.
    Money rounded(int decimals) const;

private:
    std::int64_t ten_thousandths_ = 0;
    Currency currency_;
};

/// "12.50", "1 234,5": at most four decimals; more, or anything else, is refused in words.
Result<Money> parse_money(std::string_view text, const Currency& currency);
std::string print(const Money& money, int decimals, char decimal_mark = '.');

}  // namespace streamwright::base
