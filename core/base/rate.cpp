#include "core/base/rate.h"

#include <cassert>
#include <limits>

namespace streamwright::base {

namespace rate_detail {

__extension__ using Int = __int128;
__extension__ using Unsigned = unsigned __int128;

constexpr Int millionths = 1'000'000;
constexpr Int largest = static_cast<Int>(~Unsigned{0} >> 1U);

Int gcd(Int a, Int b) {
    while (b != 0) {
        const Int rest = a % b;
        a = b;
        b = rest;
    }
    return a < 0 ? -a : a;
}

/// Quotient rounded down and the rest, which is never negative.
struct Division {
    Int quotient;
    Int rest;
};
Division divide(Int num, Int den) {
    Division d{num / den, num % den};
    if (d.rest < 0) {
        d.rest += den;
        --d.quotient;
    }
    return d;
}

/// rest x 1,000,000 / den for 0 <= rest < den, by doubling, so that nothing overflows.
Division millionths_of(Int rest, Int den) {
    Unsigned quotient = 0, left = 0;
    const auto part = static_cast<Unsigned>(rest), whole = static_cast<Unsigned>(den);
    for (unsigned bit = 20; bit-- > 0;) {
        quotient *= 2;
        left *= 2;
        if (left >= whole) {
            left -= whole;
            ++quotient;
        }
        if (((static_cast<Unsigned>(millionths) >> bit) & 1U) == 0) continue;
        left += part;
        if (left >= whole) {
            left -= whole;
            ++quotient;
        }
    }
    return {static_cast<Int>(quotient), static_cast<Int>(left)};
}

/// The rate in millionths of a bit, rounded up or down; saturates.
Int in_millionths(Int num, Int den, bool up) {
    const auto whole = divide(num, den);
    const auto part = millionths_of(whole.rest, den);
    Int sum = 0;
    if (__builtin_mul_overflow(whole.quotient, millionths, &sum)) return num < 0 ? -largest : largest;
    if (__builtin_add_overflow(sum, part.quotient + (up && part.rest != 0 ? 1 : 0), &sum)) return largest;
    return sum;
}

bool sum_exact(Int a_num, Int a_den, Int b_num, Int b_den, Int& num, Int& den) {
    const Int common = gcd(a_den, b_den);
    Int left = 0, right = 0;
    return !__builtin_mul_overflow(a_num, b_den / common, &left) &&
           !__builtin_mul_overflow(b_num, a_den / common, &right) && !__builtin_add_overflow(left, right, &num) &&
           !__builtin_mul_overflow(a_den / common, b_den, &den);
}

Int sum_saturated(Int a, Int b) {
    Int sum = 0;
    if (__builtin_add_overflow(a, b, &sum)) return a < 0 ? -largest : largest;
    return sum;
}

}  // namespace rate_detail

Rate::Rate(BitRate whole) : num_(whole.count()) {}

Rate::Rate(Wide num, Wide den) : num_(num), den_(den) {
    const Wide common = rate_detail::gcd(num, den);
    if (common > 1) {
        num_ /= common;
        den_ /= common;
    }
}

Rate Rate::scaled(BitRate rate, std::int64_t over, std::int64_t under) {
    assert(over >= 0 && under > 0);
    return {Wide{rate.count()} * over, under};
}

BitRate Rate::ceil() const {
    const auto whole = rate_detail::divide(num_, den_);
    const Wide up = whole.quotient + (whole.rest != 0 ? 1 : 0);
    constexpr Wide most = std::numeric_limits<std::int64_t>::max();
    const Wide bounded = up > most ? most : up < -most ? -most : up;
    return BitRate::from_count(static_cast<std::int64_t>(bounded));
}

Rate operator+(const Rate& a, const Rate& b) {
    Rate::Wide num = 0, den = 1;
    if (rate_detail::sum_exact(a.num_, a.den_, b.num_, b.den_, num, den)) return {num, den};
    return {rate_detail::sum_saturated(rate_detail::in_millionths(a.num_, a.den_, true),
                                       rate_detail::in_millionths(b.num_, b.den_, true)),
            rate_detail::millionths};
}

Rate operator-(const Rate& a, const Rate& b) {
    Rate::Wide num = 0, den = 1;
    if (rate_detail::sum_exact(a.num_, a.den_, -b.num_, b.den_, num, den)) return {num, den};
    return {rate_detail::sum_saturated(rate_detail::in_millionths(a.num_, a.den_, true),
                                       -rate_detail::in_millionths(b.num_, b.den_, false)),
            rate_detail::millionths};
}

Rate operator*(const Rate& a, std::int64_t times) {
    const Rate::Wide common = rate_detail::gcd(a.den_, times);
    Rate::Wide num = 0;
    if (!__builtin_mul_overflow(a.num_, Rate::Wide{times} / common, &num)) return {num, a.den_ / common};
    // Rounded toward whichever side keeps the product at or above the truth.
    const Rate::Wide each = rate_detail::in_millionths(a.num_, a.den_, times >= 0);
    if (__builtin_mul_overflow(each, Rate::Wide{times}, &num))
        num = (each < 0) == (times < 0) ? rate_detail::largest : -rate_detail::largest;
    return {num, rate_detail::millionths};
}

std::strong_ordering operator<=>(const Rate& a, const Rate& b) {
    // Euclid's steps on both fractions at once compare exactly without a product.
    Rate::Wide a_num = a.num_, a_den = a.den_, b_num = b.num_, b_den = b.den_;
    for (bool swapped = false;; swapped = !swapped) {
        const auto left = rate_detail::divide(a_num, a_den), right = rate_detail::divide(b_num, b_den);
        auto order = left.quotient <=> right.quotient;
        const bool done = order != std::strong_ordering::equal || left.rest == 0 || right.rest == 0;
        if (order == std::strong_ordering::equal) order = (left.rest != 0) <=> (right.rest != 0);
        if (done) return swapped ? 0 <=> order : order;
        a_num = a_den;
        a_den = left.rest;
        b_num = b_den;
        b_den = right.rest;
    }
}

std::int64_t percent_tenths(const Rate& load, BitRate capacity) {
    if (load.is_zero()) return 0;
    if (capacity.count() <= 0) return std::numeric_limits<std::int64_t>::max();
    // Rounding up to whole bits first changes nothing: the capacity is whole.
    const auto thousandfold = (load * 1000).ceil().count();
    return thousandfold / capacity.count() + (thousandfold % capacity.count() > 0 ? 1 : 0);
}

}  // namespace streamwright::base
