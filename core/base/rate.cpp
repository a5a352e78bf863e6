#include "core/base/rate.h"

#include <cassert>
#include <limits>
#include <numeric>

namespace streamwright::base {

namespace rate_detail {

__extension__ using Wide = __int128;

Wide common(Wide a, Wide b) {
    while (b != 0) {
        const Wide rest = a % b;
        a = b;
        b = rest;
    }
    return a < 0 ? -a : a;
}

/// Where exact sums would not fit: millionths of a bit per second, rounded up, so that a load is never told too small.
constexpr std::int64_t coarse = 1000000;

/// ceil(num x coarse / den) without overflow for any num below 2^100.
Wide coarse_up(Wide num, Wide den) {
    const Wide whole = num / den;
    const Wide rest = num % den;
    Wide part = 0;
    Wide scaled = 0;
    if (__builtin_mul_overflow(rest, Wide{coarse}, &scaled))
        part = coarse;  // den is huge: up to the next whole bit
    else
        part = scaled / den + (scaled % den > 0 ? 1 : 0);
    return whole * coarse + part;
}

struct Sum {
    Wide num = 0, den = 1;
};

/// a + sign x b; exact where 128 bits do.
Sum add(Wide an, Wide ad, Wide bn, Wide bd, int sign) {
    const Wide shared = common(ad, bd);
    Wide left = 0;
    Wide right = 0;
    Wide num = 0;
    Wide den = 0;
    const bool wide =
        __builtin_mul_overflow(an, bd / shared, &left) || __builtin_mul_overflow(bn, ad / shared, &right) ||
        __builtin_mul_overflow(ad / shared, bd, &den) ||
        (sign > 0 ? __builtin_add_overflow(left, right, &num) : __builtin_sub_overflow(left, right, &num));
    if (!wide) return {num, den};
    return {coarse_up(an, ad) + sign * coarse_up(bn, bd), coarse};
}

}  // namespace rate_detail

Rate::Rate(BitRate whole) : num_(whole.count()) {}

Rate::Rate(Wide num, Wide den) : num_(num), den_(den) {
    if (num_ == 0) {
        den_ = 1;
        return;
    }
    const Wide shared = rate_detail::common(num_, den_);
    num_ /= shared;
    den_ /= shared;
}

Rate Rate::scaled(BitRate rate, std::int64_t over, std::int64_t under) {
    assert(over >= 0 && under > 0);
    return {static_cast<Wide>(rate.count()) * over, under};
}

BitRate Rate::ceil() const {
    const Wide up = num_ / den_ + (num_ % den_ > 0 ? 1 : 0);
    constexpr Wide most = std::numeric_limits<std::int64_t>::max();
    return BitRate::from_count(static_cast<std::int64_t>(up > most ? most : up));
}

Rate operator+(const Rate& a, const Rate& b) {
    if (b.num_ == 0) return a;
    if (a.num_ == 0) return b;
    const auto sum = rate_detail::add(a.num_, a.den_, b.num_, b.den_, 1);
    return {sum.num, sum.den};
}

Rate operator-(const Rate& a, const Rate& b) {
    if (b.num_ == 0) return a;
    const auto sum = rate_detail::add(a.num_, a.den_, b.num_, b.den_, -1);
    return {sum.num, sum.den};
}

Rate operator*(const Rate& a, std::int64_t times) {
    Rate::Wide num = 0;
    if (!__builtin_mul_overflow(a.num_, Rate::Wide{times}, &num)) return {num, a.den_};
    return {rate_detail::coarse_up(a.num_, a.den_) * times, rate_detail::coarse};
}

std::strong_ordering operator<=>(const Rate& a, const Rate& b) {
    Rate::Wide left = 0;
    Rate::Wide right = 0;
    if (!__builtin_mul_overflow(a.num_, b.den_, &left) && !__builtin_mul_overflow(b.num_, a.den_, &right))
        return left <=> right;
    // Whole parts decide, then the fractions turned over.
    const auto whole_a = a.num_ / a.den_;
    const auto whole_b = b.num_ / b.den_;
    if (whole_a != whole_b) return whole_a <=> whole_b;
    const auto rest_a = a.num_ % a.den_;
    const auto rest_b = b.num_ % b.den_;
    if (rest_a == 0 || rest_b == 0) return rest_a <=> rest_b;
    return Rate(b.den_, rest_b) <=> Rate(a.den_, rest_a);
}

std::int64_t percent_tenths(const Rate& load, BitRate capacity) {
    if (capacity.count() <= 0) return load.is_zero() ? 0 : std::numeric_limits<std::int64_t>::max();
    const Rate thousandfold = load * 1000;
    // The least n with n x capacity >= 1000 x load: found from the whole bits, then corrected by one.
    std::int64_t n = thousandfold.ceil().count() / capacity.count();
    while (n > 0 && Rate(capacity) * (n - 1) >= thousandfold) --n;
    while (Rate(capacity) * n < thousandfold) ++n;
    return n;
}

}  // namespace streamwright::base
