#include "core/base/units.h"

#include <array>
#include <cstdlib>
#include <span>

namespace streamwright::base {

namespace print_detail {

__extension__ using Wide = __int128;

constexpr int shown_decimals = 3;

/// One step of a unit's ladder: `size_num / size_den` base units make one of this name.
struct Step {
    std::string_view name;
    std::int64_t size_num;
    std::int64_t size_den = 1;
};

/// Thousandths of the step's unit, halves away from zero.
Wide thousandths(std::int64_t count, const Step& step) {
    const Wide scaled = Wide{count} * 1000 * step.size_den;
    const Wide half = step.size_num / 2;
    const Wide magnitude = ((scaled < 0 ? -scaled : scaled) + half) / step.size_num;
    return scaled < 0 ? -magnitude : magnitude;
}

/// Takes the largest step that still shows at least one whole unit, steps ordered from large to small; the first of
/// them for zero is the one given as `rest`.
std::string climb(std::int64_t count, std::span<const Step> steps, std::string_view rest, char decimal_mark) {
    for (const auto& step : steps) {
        const auto shown = thousandths(count, step);
        const auto magnitude = shown < 0 ? -shown : shown;
        const bool smallest = &step == &steps.back();
        if (count != 0 && magnitude < 1000 && !smallest) continue;
        if (count == 0 && step.name != rest) continue;
        return print_decimal(static_cast<std::int64_t>(shown), shown_decimals, decimal_mark) + " " +
               std::string(step.name);
    }
    return "0 " + std::string(rest);
}

}  // namespace print_detail

std::string print_decimal(std::int64_t count, int decimals, char decimal_mark) {
    const bool negative = count < 0;
    auto digits = std::to_string(negative ? 0 - static_cast<std::uint64_t>(count) : static_cast<std::uint64_t>(count));
    const auto places = static_cast<std::size_t>(decimals);
    if (digits.size() <= places) digits.insert(0, places + 1 - digits.size(), '0');
    auto whole = digits.substr(0, digits.size() - places);
    auto fraction = digits.substr(digits.size() - places);
    while (!fraction.empty() && fraction.back() == '0') fraction.pop_back();
    return (negative ? "-" : "") + whole + (fraction.empty() ? "" : decimal_mark + fraction);
}

std::string print(BitRate rate, const NumberStyle& style) {
    static constexpr std::array steps{print_detail::Step{"Tb/s", 1'000'000'000'000},
                                      print_detail::Step{"Gb/s", 1'000'000'000}, print_detail::Step{"Mb/s", 1'000'000},
                                      print_detail::Step{"kb/s", 1'000}, print_detail::Step{"b/s", 1}};
    return print_detail::climb(rate.count(), steps, "b/s", style.decimal_mark);
}

std::string print(Length length, const NumberStyle& style) {
    static constexpr std::array metric{print_detail::Step{"m", 1'000'000}, print_detail::Step{"mm", 1'000}};
    static constexpr std::array far{print_detail::Step{"km", 1'000'000'000}};
    if (style.system == UnitSystem::imperial) {
        // Tenths of a foot are finer than anyone pulls a cable; thousandths would only look exact.
        static constexpr print_detail::Step tenth_of_a_foot{"", 30'480'000};
        const auto tenths = print_detail::thousandths(length.count(), tenth_of_a_foot);
        return print_decimal(static_cast<std::int64_t>(tenths), 1, style.decimal_mark) + " ft";
    }
    // Cable runs read in metres even beyond a kilometre; only reaches of many kilometres turn to km.
    constexpr std::int64_t far_from = 10'000'000'000;
    if (length.count() >= far_from || length.count() <= -far_from)
        return print_detail::climb(length.count(), far, "km", style.decimal_mark);
    return print_detail::climb(length.count(), metric, "m", style.decimal_mark);
}

std::string print(Power power, const NumberStyle& style) {
    static constexpr std::array steps{print_detail::Step{"W", 1'000}, print_detail::Step{"mW", 1}};
    return print_detail::climb(power.count(), steps, "W", style.decimal_mark);
}

std::string print(ApparentPower power, const NumberStyle& style) {
    static constexpr std::array steps{print_detail::Step{"VA", 1'000}, print_detail::Step{"mVA", 1}};
    return print_detail::climb(power.count(), steps, "VA", style.decimal_mark);
}

std::string print(DataSize size, const NumberStyle& style) {
    return print_decimal(size.count(), 0, style.decimal_mark) + " octets";
}

std::string print(Temperature temperature, const NumberStyle& style) {
    if (style.system == UnitSystem::metric)
        return print_decimal(temperature.count(), 3, style.decimal_mark) + " \u00B0C";
    const auto ninths = print_detail::Wide{temperature.count()} * 9 + 160'000;  // fifths of a thousandth of a degree F
    const auto magnitude = ((ninths < 0 ? -ninths : ninths) * 2 + 5) / 10;
    return print_decimal(static_cast<std::int64_t>(ninths < 0 ? -magnitude : magnitude), 3, style.decimal_mark) +
           " \u00B0F";
}

std::string print(Duration duration, const NumberStyle& style) {
    static constexpr std::array steps{print_detail::Step{"s", 1'000'000'000}, print_detail::Step{"ms", 1'000'000},
                                      print_detail::Step{"\u00B5s", 1'000}, print_detail::Step{"ns", 1}};
    return print_detail::climb(duration.count(), steps, "s", style.decimal_mark);
}

std::string print(Mass mass, const NumberStyle& style) {
    static constexpr std::array metric{print_detail::Step{"kg", 1'000}, print_detail::Step{"g", 1}};
    static constexpr std::array imperial{print_detail::Step{"lb", 45'359'237, 100'000},
                                         print_detail::Step{"oz", 45'359'237, 1'600'000}};
    if (style.system == UnitSystem::imperial)
        return print_detail::climb(mass.count(), imperial, "lb", style.decimal_mark);
    return print_detail::climb(mass.count(), metric, "kg", style.decimal_mark);
}

std::string print(Loss loss, const NumberStyle& style) {
    return print_decimal(loss.count(), 3, style.decimal_mark) + " dB";
}

}  // namespace streamwright::base
