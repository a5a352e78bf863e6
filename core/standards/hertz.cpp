#include "core/standards/hertz.h"

#include <cassert>
#include <limits>
#include <numeric>

namespace streamwright::standards {

namespace hertz_detail {

__extension__ using Wide = __int128;

Wide gcd(Wide a, Wide b) {
    while (b != 0) {
        const Wide rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

/// value / by, halves up; value >= 0.
std::int64_t nearest(Wide value, Wide by) { return static_cast<std::int64_t>((value + by / 2) / by); }

constexpr Wide greatest = std::numeric_limits<std::int64_t>::max();

}  // namespace hertz_detail

Hertz Hertz::ratio(std::int64_t num, std::int64_t den) {
    assert(num >= 0 && den > 0);
    const auto common = std::gcd(num, den);
    Hertz made;
    made.num_ = num / common;
    made.den_ = den / common;
    return made;
}

Hertz Hertz::times(std::int64_t over, std::int64_t under) const {
    assert(over >= 0 && under > 0);
    using hertz_detail::Wide;
    Wide num = Wide{num_} * over, den = Wide{den_} * under;
    const Wide common = hertz_detail::gcd(num, den);
    num /= common;
    den /= common;
    if (num > hertz_detail::greatest || den > hertz_detail::greatest) {
        num = num / den;
        den = 1;
    }
    if (num > hertz_detail::greatest) num = hertz_detail::greatest;
    return ratio(static_cast<std::int64_t>(num), static_cast<std::int64_t>(den));
}

base::Rate Hertz::bits(std::int64_t each_time, std::int64_t under) const {
    const Hertz product = times(each_time, under);
    return base::Rate::scaled(base::BitRate::from_count(product.num_), 1, product.den_);
}

base::Duration Hertz::period() const {
    assert(num_ > 0);
    constexpr hertz_detail::Wide nanoseconds = 1'000'000'000;
    return base::Duration::from_count(hertz_detail::nearest(nanoseconds * den_, num_));
}

std::strong_ordering operator<=>(const Hertz& a, const Hertz& b) {
    const auto left = hertz_detail::Wide{a.num_} * b.den_, right = hertz_detail::Wide{b.num_} * a.den_;
    return left < right ? std::strong_ordering::less
                        : (left > right ? std::strong_ordering::greater : std::strong_ordering::equal);
}

std::string plain_number(const Hertz& rate) {
    return base::print_decimal(hertz_detail::nearest(hertz_detail::Wide{rate.num()} * 1000, rate.den()), 3);
}

std::string print(const Hertz& rate) {
    if (rate >= Hertz::whole(1'000'000)) return plain_number(rate.times(1, 1'000'000)) + " MHz";
    if (rate >= Hertz::whole(1'000)) return plain_number(rate.times(1, 1'000)) + " kHz";
    return plain_number(rate) + " Hz";
}

}  // namespace streamwright::standards
