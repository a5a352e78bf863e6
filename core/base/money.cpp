#include "core/base/money.h"

#include "core/base/number_text.h"
#include "core/base/text.h"
#include "core/base/units.h"

#include <cassert>

namespace streamwright::base {

namespace money_detail {

constexpr int kept_decimals = 4;

std::int64_t power_of_ten(int exponent) {
    std::int64_t power = 1;
    while (exponent-- > 0) power *= 10;
    return power;
}

Error refuse(std::string_view pattern, std::string_view text) { return {std::string(pattern), {std::string(text)}}; }

}  // namespace money_detail

Money operator+(const Money& a, const Money& b) {
    assert(a.currency_ == b.currency_);
    return {a.ten_thousandths_ + b.ten_thousandths_, a.currency_};
}

Money operator*(const Money& a, std::int64_t times) { return {a.ten_thousandths_ * times, a.currency_}; }

Money Money::rounded(int decimals) const {
    assert(decimals >= 0 && decimals <= money_detail::kept_decimals);
    const auto unit = money_detail::power_of_ten(money_detail::kept_decimals - decimals);
    const auto rest = ten_thousandths_ % unit;
    auto value = ten_thousandths_ - rest;
    if (rest * 2 >= unit) value += unit;
    if (rest * 2 <= -unit) value -= unit;
    return {value, currency_};
}

Result<Money> parse_money(std::string_view text, const Currency& currency) {
    using money_detail::refuse;
    const auto number = read_number(text);
    if (!number || (!number->rest.empty() && number->rest != currency.code))
        return refuse(STREAMWRIGHT_TEXT("\"%1\" is not an amount of money. Write it like 12.50."), text);
    if (number->comma_of_three)
        return refuse(STREAMWRIGHT_TEXT("\"%1\" can be read in two ways: a comma may mark decimals or thousands. "
                                        "Write 1.5 or 1500."),
                      text);
    if (number->decimals > money_detail::kept_decimals)
        return refuse(STREAMWRIGHT_TEXT("\"%1\" has more than four decimals. Write at most four."), text);
    const auto count = scale_number(*number, money_detail::power_of_ten(money_detail::kept_decimals), 1);
    if (!count) return refuse(STREAMWRIGHT_TEXT("\"%1\" is too large an amount. Write a smaller one."), text);
    return Money(*count, currency);
}

std::string print(const Money& money, int decimals, char decimal_mark) {
    const auto value = money.rounded(decimals).ten_thousandths();
    auto text = print_decimal(value, money_detail::kept_decimals, decimal_mark);
    if (decimals > 0) {
        auto mark = text.find(decimal_mark);
        if (mark == std::string::npos) {
            mark = text.size();
            text += decimal_mark;
        }
        text.resize(mark + 1 + static_cast<std::size_t>(decimals), '0');
    }
    return text + " " + money.currency().code;
}

}  // namespace streamwright::base
