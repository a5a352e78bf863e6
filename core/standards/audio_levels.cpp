#include "core/standards/audio_levels.h"

#include <array>
#include <cassert>
#include <cmath>

namespace streamwright::standards {

namespace audio_levels_detail {

constexpr std::array alignments{
    AlignmentLevel{"SMPTE RP 155",
                   Level::from_count(-20'000),
                   Level::from_count(4'000),
                   {"SMPTE", "RP 155", "", Standing::memory}},
    AlignmentLevel{
        "EBU R68", Level::from_count(-18'000), Level::from_count(0), {"EBU", "R68-2000", "", Standing::memory}},
};

constexpr double thousandths = 1000.0;
constexpr double microvolts = 1e6;

Voltage voltage_above(double reference_volts, Level level) {
    const double volts = reference_volts * std::pow(10.0, static_cast<double>(level.count()) / thousandths / 20.0);
    return Voltage::from_count(std::llround(volts * microvolts));
}

Level level_of_ratio(double ratio) { return Level::from_count(std::llround(20.0 * std::log10(ratio) * thousandths)); }

}  // namespace audio_levels_detail

base::BitRate pcm_rate(std::int64_t sampling_hz, int bits, int channels) {
    return base::BitRate::from_count(sampling_hz * bits * channels);
}

/// 0 dBu is the voltage of a milliwatt in 600 ohms: the root of 0.6.
Voltage voltage_of_dbu(Level level) { return audio_levels_detail::voltage_above(std::sqrt(0.6), level); }

Voltage voltage_of_dbv(Level level) { return audio_levels_detail::voltage_above(1.0, level); }

Level level_between(Voltage a, Voltage b) {
    assert(a.count() > 0 && b.count() > 0);
    return audio_levels_detail::level_of_ratio(static_cast<double>(a.count()) / static_cast<double>(b.count()));
}

std::span<const AlignmentLevel> alignment_levels() { return audio_levels_detail::alignments; }

Level full_scale_dbu(const AlignmentLevel& alignment) { return alignment.dbu - alignment.dbfs; }

Level downmix_worst_gain() {
    const double share = std::sqrt(0.5);  // the exact -3 dB that 0.7071 is written for
    return audio_levels_detail::level_of_ratio(1.0 + share + share);
}

}  // namespace streamwright::standards
