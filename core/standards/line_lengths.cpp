#include "core/standards/line_lengths.h"

#include <algorithm>
#include <array>
#include <cassert>
#include <cmath>
#include <numbers>

namespace streamwright::standards {

namespace line_lengths_detail {

__extension__ using Wide = __int128;
using base::Loss;

constexpr Wide micrometres = 1'000'000;

struct SdiRow {
    std::string_view link;
    Loss from, to;
    Citation source;
};
constexpr std::array sdi_rows{
    SdiRow{"SD-SDI", Loss::from_count(20'000), Loss::from_count(30'000), {"SMPTE", "ST 259", "receiver"}},
    SdiRow{"HD-SDI", Loss::from_count(0), Loss::from_count(20'000), {"SMPTE", "ST 292-1:2018", "8.1.10"}},
    SdiRow{"3G-SDI", Loss::from_count(0), Loss::from_count(30'000), {"SMPTE", "ST 424:2012", "receiver"}},
    SdiRow{"6G-SDI", Loss::from_count(0), Loss::from_count(40'000), {"SMPTE", "ST 2081-1", "", Standing::memory}},
    SdiRow{"12G-SDI", Loss::from_count(0), Loss::from_count(40'000), {"SMPTE", "ST 2082-1", "receiver"}},
};

double ratio(std::int64_t over, std::int64_t under) { return static_cast<double>(over) / static_cast<double>(under); }

}  // namespace line_lengths_detail

base::Length rs232_length(Capacitance per_metre) {
    assert(per_metre.count() > 0);
    using namespace line_lengths_detail;
    return base::Length::from_count(static_cast<std::int64_t>(micrometres * rs232_load.count() / per_metre.count()));
}

base::Length balanced_serial_length_at(base::BitRate rate) {
    using namespace line_lengths_detail;
    constexpr Wide bit_metres_a_second = 100'000'000;
    constexpr std::int64_t flat_until = 100'000;
    if (rate.count() <= flat_until) return balanced_serial_length;
    const auto length = static_cast<std::int64_t>(bit_metres_a_second * micrometres / rate.count());
    return std::min(balanced_serial_length, base::Length::from_count(length));
}

Hertz half_power_frequency(Resistance source, Capacitance per_metre, base::Length length) {
    assert(source.count() > 0 && per_metre.count() > 0 && length.count() > 0);
    const double ohms = static_cast<double>(source.count()) / 1e3;
    const double farads = static_cast<double>(per_metre.count()) * 1e-12 * static_cast<double>(length.count()) / 1e6;
    return Hertz::whole(static_cast<std::int64_t>(1.0 / (2.0 * std::numbers::pi * ohms * farads)));
}

std::optional<SdiLoss> sdi_receiver_loss(const PictureLink& link) {
    for (const auto& row : line_lengths_detail::sdi_rows)
        if (row.link == link.name) return SdiLoss{row.from, row.to, Hertz::ratio(link.raw.count(), 2), row.source};
    return std::nullopt;
}

base::Length sdi_length(base::Loss budget, base::Loss per_100_m) {
    assert(per_100_m.count() > 0);
    using namespace line_lengths_detail;
    return base::Length::from_count(static_cast<std::int64_t>(100 * micrometres * budget.count() / per_100_m.count()));
}

base::Loss loss_at(const Hertz& wanted, base::Loss given, const Hertz& at) {
    const double steps = std::sqrt(line_lengths_detail::ratio(wanted.num(), wanted.den()) /
                                   line_lengths_detail::ratio(at.num(), at.den()));
    constexpr double rounding = 1e-9;  // a whole result is not pushed up by the last bit of the root
    return base::Loss::from_count(
        static_cast<std::int64_t>(std::ceil(static_cast<double>(given.count()) * steps - rounding)));
}

Resistance loop_resistance(base::Length length, CrossSection conductor) {
    assert(conductor.count() > 0);
    using namespace line_lengths_detail;
    // 2 x 0.0172 ohm mm2/m x um / (mm2 / 1000), in milliohms: 2 x 172 x um / (10,000 x thousandths of mm2).
    const Wide over = Wide{2} * copper_resistivity * length.count();
    const Wide under = Wide{10'000} * conductor.count();
    return Resistance::from_count(static_cast<std::int64_t>((over + under - 1) / under));
}

Resistance load_on_line(Voltage line, base::Power load) {
    assert(load.count() > 0);
    using namespace line_lengths_detail;
    // uV^2 / mW = 10^-9 ohm: 10^-6 of a milliohm.
    const Wide squared = Wide{line.count()} * line.count();
    const Wide under = Wide{load.count()} * 1'000'000;
    return Resistance::from_count(static_cast<std::int64_t>((squared + under / 2) / under));
}

base::Loss line_loss(Resistance load, Resistance loop) {
    assert(load.count() > 0);
    const double lost = 20.0 * std::log10(line_lengths_detail::ratio(load.count() + loop.count(), load.count()));
    return base::Loss::from_count(std::llround(lost * 1000.0));
}

base::Length longest_line(Resistance load, CrossSection conductor, base::Loss most) {
    const double share = std::pow(10.0, static_cast<double>(most.count()) / 1000.0 / 20.0) - 1.0;
    const double loop = static_cast<double>(load.count()) * share;  // milliohms
    const double length =
        loop * 10'000.0 * static_cast<double>(conductor.count()) / (2.0 * static_cast<double>(copper_resistivity));
    return base::Length::from_count(static_cast<std::int64_t>(length));
}

}  // namespace streamwright::standards
