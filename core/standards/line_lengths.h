// How long lines may be that no standard of structured cabling covers: serial control, coaxial SDI, analogue sound,
// loudspeakers. Arithmetic where there is some; habits of the trade stand in trade_lengths.h.
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"
#include "core/standards/electrical.h"
#include "core/standards/hertz.h"
#include "core/standards/picture_links.h"

#include <optional>

namespace streamwright::standards {

/// RS-232: cable and receiver together may load the driver with 2500 pF; the length is what that leaves, rounded down.
inline constexpr Capacitance rs232_load = Capacitance::from_count(2500);
base::Length rs232_length(Capacitance per_metre);
inline constexpr Citation rs232_source{"TIA", "TIA-232-F", "2500 pF"};
/// What older text and the trade reckon with, to 20 kbit/s.
inline constexpr base::Length rs232_usual_length = base::Length::from_count(15'000'000);
inline constexpr Citation rs232_usual_source{"trade practice", "EIA-232", "20 kbit/s or less"};

/// RS-485 and RS-422 to 100 kbit/s, terminated. Faster, rate x length stays near 10^8 bit m/s, a remembered rule.
inline constexpr base::Length balanced_serial_length = base::Length::from_count(1'200'000'000);
base::Length balanced_serial_length_at(base::BitRate rate);
inline constexpr Citation rs485_source{"TIA", "TIA-485-A", "guidance (4000 ft)"};
inline constexpr Citation rs422_source{"TIA", "TIA-422-B", "", Standing::memory};
inline constexpr int rs485_unit_loads = 32;
inline constexpr Citation rs485_faster_source{"trade practice", "TIA-485-A", "rate x length, unit loads",
                                              Standing::memory};

/// Where an analogue line has lost 3 dB: 1 / (2 pi R C), rounded down to whole hertz. Source resistance and the whole
/// capacitance above zero.
Hertz half_power_frequency(Resistance source, Capacitance per_metre, base::Length length);
inline constexpr Citation half_power_source{"circuit arithmetic", "1 / (2 pi R C)", "", Standing::computed};

/// Loss of cable that SDI receivers are typically made for, at half the clock: typical values, not limits.
struct SdiLoss {
    base::Loss from, to;
    Hertz half_clock;
    Citation source;
};
/// Nothing for links that are not SDI.
std::optional<SdiLoss> sdi_receiver_loss(const PictureLink& link);
/// What the trade sizes cable by whatever the standard says.
inline constexpr base::Loss sdi_trade_loss = base::Loss::from_count(20'000);

/// 100 m x budget / loss of 100 m at half the clock, rounded down. Loss above zero.
base::Length sdi_length(base::Loss budget, base::Loss per_100_m);
inline constexpr Citation sdi_length_source{"SMPTE", "ST 424, ST 2081, ST 2082", "cable loss at half clock"};
/// A loss given at one frequency, at another: with the root of the frequency, rounded up.
base::Loss loss_at(const Hertz& wanted, base::Loss given, const Hertz& at);

/// Copper of both conductors, rho = 0.0172 ohm mm2/m at 20 degrees C, rounded up to a milliohm.
Resistance loop_resistance(base::Length length, CrossSection conductor);
/// Ten-thousandths of an ohm mm2/m.
inline constexpr std::int64_t copper_resistivity = 172;
inline constexpr Citation copper_resistivity_source{"IEC", "60028", "1/58", Standing::memory};

/// What a load is on a constant-voltage line: V^2 / P, nearest milliohm. 70.7 V and 100 V are usual.
Resistance load_on_line(Voltage line, base::Power load);
inline constexpr Voltage line_70_v = Voltage::from_count(70'700'000);
inline constexpr Voltage line_100_v = Voltage::from_count(100'000'000);

/// Level lost in the line: 20 x log10((Z + R) / Z), nearest thousandth.
base::Loss line_loss(Resistance load, Resistance loop);
/// The longest line that loses at most so much, rounded down.
base::Length longest_line(Resistance load, CrossSection conductor, base::Loss most);
inline constexpr Citation line_loss_source{"circuit arithmetic", "20 x log10(Z / (Z + R))", "", Standing::computed};
/// What the trade allows to the end of the line.
inline constexpr base::Loss line_loss_target = base::Loss::from_count(500);
inline constexpr Citation line_loss_target_source{"trade practice", "constant-voltage lines", "", Standing::memory};

}  // namespace streamwright::standards
