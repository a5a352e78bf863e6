#include "core/base/money.h"

#include "core/base/text.h"
#include "core/base/units.h"

#include <cassert>
#include <cctype>

namespace streamwright::base {

Money operator+(const Money& a, const Money& b) {
    assert(a.currency_ == b.currency_);
    return {a.ten_thousandths_ + b.ten_thousandths_, a.currency_};
}

Money operator*(const Money& a, std::int64_t times) { return {a.ten_thousandths_ * times, a.currency_}; }

Money Money::rounded(int decimals) const {
    assert(decimals >= 0 && decimals <= 4);
    std::int64_t step = 1;
    for (int i = decimals; i < 4; ++i) step *= 10;
    const std::int64_t half = ten_thousandths_ < 0 ? -(step / 2) : step / 2;
    return {(ten_thousandths_ + half) / step * step, currency_};
}

Result<Money> parse_money(std::string_view text, const Currency& currency) {
    const Error refused{
        STREAMWRIGHT_TEXT("'%1' is not an amount; write digits with at most four decimals, such as 12.50."),
        {printable(text.substr(0, 64))}};
    std::int64_t amount = 0;
    int decimals = -1;
    bool digits = false;
    std::string_view rest = text;
    const bool negative = rest.starts_with('-');
    if (negative) rest.remove_prefix(1);
    for (const char c : rest) {
        if (std::isdigit(static_cast<unsigned char>(c))) {
            if (__builtin_mul_overflow(amount, 10, &amount) || __builtin_add_overflow(amount, c - '0', &amount))
                return refused;
            digits = true;
            if (decimals >= 0 && ++decimals > 4) return refused;
        } else if ((c == '.' || c == ',') && decimals < 0 && digits) {
            decimals = 0;
        } else if (c != ' ' || decimals >= 0) {
            return refused;
        }
    }
    if (!digits || decimals == 0) return refused;
    for (int i = decimals < 0 ? 0 : decimals; i < 4; ++i)
        if (__builtin_mul_overflow(amount, 10, &amount)) return refused;
    return Money(negative ? -amount : amount, currency);
}

std::string print(const Money& money, int decimals, char decimal_mark) {
    std::string text = print_decimal(money.rounded(decimals).ten_thousandths(), 4, decimal_mark);
    auto mark = text.find(decimal_mark);
    if (decimals > 0 && mark == std::string::npos) {
        mark = text.size();
        text += decimal_mark;
    }
    while (decimals > 0 && text.size() - mark - 1 < static_cast<std::size_t>(decimals)) text += '0';
    return text + " " + money.currency().code;
}

}  // namespace streamwright::base
