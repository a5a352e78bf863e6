// Times a second, exact: frame rates such as 60000/1001 are no decimal numbers, and clocks are made of them.
#pragma once

#include "core/base/rate.h"
#include "core/base/units.h"

#include <compare>
#include <cstdint>
#include <string>

namespace streamwright::standards {

class Hertz {
public:
    constexpr Hertz() = default;
    /// num / den, reduced. num >= 0, den > 0.
    static Hertz ratio(std::int64_t num, std::int64_t den);
    static Hertz whole(std::int64_t per_second) { return ratio(per_second, 1); }

    std::int64_t num() const { return num_; }
    std::int64_t den() const { return den_; }
    bool is_zero() const { return num_ == 0; }

    /// This x over / under, exact; saturates where 64 bits do not hold it (no clock of the trade comes near).
    Hertz times(std::int64_t over, std::int64_t under = 1) const;
    /// So many bits each time: bits a second, exact.
    base::Rate bits(std::int64_t each_time, std::int64_t under = 1) const;
    /// Whole times a second, rounded down.
    std::int64_t floor() const { return num_ / den_; }
    /// How long one takes, rounded to the nearest nanosecond. Not for zero.
    base::Duration period() const;

    friend bool operator==(const Hertz&, const Hertz&) = default;
    friend std::strong_ordering operator<=>(const Hertz& a, const Hertz& b);

private:
    std::int64_t num_ = 0;
    std::int64_t den_ = 1;
};

/// Without unit, at most three decimals, rounded: "59.94", "23.976", "60".
std::string plain_number(const Hertz& rate);

/// "59.94 Hz", "48 kHz", "148.352 MHz", at most three decimals.
std::string print(const Hertz& rate);

}  // namespace streamwright::standards
