// Exact wire rates. A stream's wire rate is payload rate x wire octets / payload octets, seldom a whole number;
// sums stay exact rationals and are rounded up to whole bits once, at the end.
#pragma once

#include "core/base/units.h"

#include <compare>
#include <string>

namespace streamwright::base {

class Rate {
public:
    constexpr Rate() = default;
    Rate(BitRate whole);  // NOLINT: a whole rate is a rate

    /// rate x over / under, exact. over >= 0, under > 0.
    static Rate scaled(BitRate rate, std::int64_t over, std::int64_t under);

    /// Rounded up to whole bits per second; saturates at the largest BitRate.
    BitRate ceil() const;
    bool is_zero() const { return num_ == 0; }

    friend Rate operator+(const Rate& a, const Rate& b);
    friend Rate operator-(const Rate& a, const Rate& b);
    friend Rate operator*(const Rate& a, std::int64_t times);
    Rate& operator+=(const Rate& other) { return *this = *this + other; }

    friend bool operator==(const Rate& a, const Rate& b) { return (a <=> b) == 0; }
    friend std::strong_ordering operator<=>(const Rate& a, const Rate& b);

private:
    __extension__ using Wide = __int128;
    Rate(Wide num, Wide den);  // reduces; where 128 bits would not do, rounds up to a millionth of a bit
    Wide num_ = 0;
    Wide den_ = 1;
};

/// load / capacity in tenths of a percent, rounded up, so that just over 100 % never reads as 100.0 %.
std::int64_t percent_tenths(const Rate& load, BitRate capacity);

}  // namespace streamwright::base
