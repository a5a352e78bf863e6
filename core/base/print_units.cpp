#include "core/base/units.h"

#include <array>

namespace streamwright::base {

namespace print_units_detail {

constexpr std::int64_t power_of_ten(int exponent) {
    std::int64_t power = 1;
    for (int i = 0; i < exponent; ++i) power *= 10;
    return power;
}

/// count / 10^decimals with at most three decimals, half away from zero.
std::string rounded(std::int64_t count, int decimals, char mark) {
    if (decimals <= 3) return print_decimal(count, decimals, mark);
    const std::int64_t step = power_of_ten(decimals - 3);
    const std::int64_t half = count < 0 ? -step / 2 : step / 2;
    const std::int64_t whole = count / step;
    const bool up = count < 0 ? count % step <= half : count % step >= half;
    return print_decimal(whole + (up && count % step != 0 ? (count < 0 ? -1 : 1) : 0), 3, mark);
}

struct Scale {
    int decimals;
    const char* unit;
};

/// The largest scale that the count reaches, else the smallest.
template <std::size_t N>
std::string scaled(std::int64_t count, const std::array<Scale, N>& scales, char mark) {
    for (const auto& scale : scales) {
        const auto least = power_of_ten(scale.decimals);
        if (count >= least || count <= -least) return rounded(count, scale.decimals, mark) + " " + scale.unit;
    }
    return rounded(count, scales.back().decimals, mark) + " " + scales.back().unit;
}

}  // namespace print_units_detail

std::string print_decimal(std::int64_t count, int decimals, char decimal_mark) {
    const bool negative = count < 0;
    // Unsigned, so that the smallest number has a size.
    auto size = negative ? ~static_cast<std::uint64_t>(count) + 1 : static_cast<std::uint64_t>(count);
    std::string fraction;
    for (int i = 0; i < decimals; ++i) {
        fraction.insert(fraction.begin(), static_cast<char>('0' + size % 10));
        size /= 10;
    }
    while (!fraction.empty() && fraction.back() == '0') fraction.pop_back();
    const std::string whole = (negative ? "-" : "") + std::to_string(size);
    return fraction.empty() ? whole : whole + decimal_mark + fraction;
}

std::string print(BitRate rate, const NumberStyle& style) {
    using print_units_detail::Scale;
    static constexpr std::array scales{Scale{9, "Gb/s"}, Scale{6, "Mb/s"}, Scale{3, "kb/s"}, Scale{0, "b/s"}};
    return print_units_detail::scaled(rate.count(), scales, style.decimal_mark);
}

std::string print(Length length, const NumberStyle& style) {
    using print_units_detail::Scale;
    if (style.system == UnitSystem::imperial) {
        // 1 ft = 304 800 um exactly; shown in tenths of a foot, half away from zero.
        const std::int64_t step = 30480;
        const std::int64_t half = length.count() < 0 ? -step / 2 : step / 2;
        return print_decimal((length.count() + half) / step, 1, style.decimal_mark) + " ft";
    }
    static constexpr std::array scales{Scale{6, "m"}, Scale{3, "mm"}};
    return print_units_detail::scaled(length.count(), scales, style.decimal_mark);
}

std::string print(Power power, const NumberStyle& style) {
    return print_units_detail::rounded(power.count(), 3, style.decimal_mark) + " W";
}
std::string print(ApparentPower power, const NumberStyle& style) {
    return print_units_detail::rounded(power.count(), 3, style.decimal_mark) + " VA";
}
std::string print(DataSize size, const NumberStyle& style) {
    return print_decimal(size.count(), 0, style.decimal_mark) + " octets";
}
std::string print(Temperature temperature, const NumberStyle& style) {
    return print_units_detail::rounded(temperature.count(), 3, style.decimal_mark) + " °C";
}
std::string print(Duration duration, const NumberStyle& style) {
    using print_units_detail::Scale;
    static constexpr std::array scales{Scale{9, "s"}, Scale{6, "ms"}, Scale{3, "µs"}, Scale{0, "ns"}};
    return print_units_detail::scaled(duration.count(), scales, style.decimal_mark);
}
std::string print(Mass mass, const NumberStyle& style) {
    using print_units_detail::Scale;
    static constexpr std::array scales{Scale{3, "kg"}, Scale{0, "g"}};
    return print_units_detail::scaled(mass.count(), scales, style.decimal_mark);
}
std::string print(Loss loss, const NumberStyle& style) {
    return print_units_detail::rounded(loss.count(), 3, style.decimal_mark) + " dB";
}

}  // namespace streamwright::base
