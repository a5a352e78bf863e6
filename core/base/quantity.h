// A whole number of one unit. Quantities of one kind add and compare; they never multiply into each other.
#pragma once

#include <compare>
#include <cstdint>

namespace streamwright::base {

template <class Tag>
class Quantity {
public:
    constexpr Quantity() = default;

    /// The count is in the base unit that the tag names (bits per second, micrometres, milliwatts, ...).
    static constexpr Quantity from_count(std::int64_t count) { return Quantity(count); }
    constexpr std::int64_t count() const { return count_; }

    friend constexpr auto operator<=>(Quantity, Quantity) = default;
    friend constexpr Quantity operator+(Quantity a, Quantity b) { return Quantity(a.count_ + b.count_); }
    friend constexpr Quantity operator-(Quantity a, Quantity b) { return Quantity(a.count_ - b.count_); }
    friend constexpr Quantity operator-(Quantity a) { return Quantity(-a.count_); }
    friend constexpr Quantity operator*(Quantity a, std::int64_t times) { return Quantity(a.count_ * times); }
    friend constexpr Quantity operator*(std::int64_t times, Quantity a) { return a * times; }
    friend constexpr Quantity operator/(Quantity a, std::int64_t parts) { return Quantity(a.count_ / parts); }
    constexpr Quantity& operator+=(Quantity other) { return *this = *this + other; }
    constexpr Quantity& operator-=(Quantity other) { return *this = *this - other; }

private:
    explicit constexpr Quantity(std::int64_t count) : count_(count) {}
    std::int64_t count_ = 0;
};

}  // namespace streamwright::base
