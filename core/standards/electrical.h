// Units of analogue lines, apart from those that designs store.
#pragma once

#include "core/base/quantity.h"

namespace streamwright::standards {

using Voltage = base::Quantity<struct VoltageTag>;            // microvolts, effective
using Level = base::Quantity<struct LevelTag>;                // thousandths of a decibel above what its user says
using Resistance = base::Quantity<struct ResistanceTag>;      // milliohms
using Capacitance = base::Quantity<struct CapacitanceTag>;    // picofarads
using CrossSection = base::Quantity<struct CrossSectionTag>;  // thousandths of a square millimetre

namespace literals {
constexpr Voltage operator""_V(unsigned long long n) {
    return Voltage::from_count(static_cast<std::int64_t>(n) * 1'000'000);
}
constexpr Level operator""_dB(unsigned long long n) { return Level::from_count(static_cast<std::int64_t>(n) * 1'000); }
constexpr Resistance operator""_ohm(unsigned long long n) {
    return Resistance::from_count(static_cast<std::int64_t>(n) * 1'000);
}
constexpr Capacitance operator""_pF(unsigned long long n) {
    return Capacitance::from_count(static_cast<std::int64_t>(n));
}
}  // namespace literals

}  // namespace streamwright::standards
