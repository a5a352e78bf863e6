// Rates and levels of sound: linear PCM, volts of analogue lines, where digital full scale lies, the downmix to stereo,
// and compressed sound on a two-channel carrier.
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"
#include "core/standards/electrical.h"

#include <span>
#include <string_view>

namespace streamwright::standards {

/// Samples a second x bits x channels.
base::BitRate pcm_rate(std::int64_t sampling_hz, int bits, int channels);

/// Volts of a level above 0.7746 V (dBu) and above 1 V (dBV), nearest microvolt.
Voltage voltage_of_dbu(Level level);
Voltage voltage_of_dbv(Level level);
/// 20 x log10(a / b), nearest thousandth. Both above zero.
Level level_between(Voltage a, Voltage b);

/// Usual line levels: +4 dBu of professional equipment, -10 dBV of consumer equipment.
inline constexpr Level professional_line_dbu = Level::from_count(4'000);
inline constexpr Level consumer_line_dbv = Level::from_count(-10'000);

/// Where a digital level is aligned with an analogue one; full scale lies the difference above.
struct AlignmentLevel {
    std::string_view name;
    Level dbfs;
    Level dbu;
    Citation source;
};
std::span<const AlignmentLevel> alignment_levels();
/// dBu of digital full scale under that alignment.
Level full_scale_dbu(const AlignmentLevel& alignment);

/// 5.1 to stereo: left and right at unity, centre and surrounds at this many ten-thousandths, the low effects omitted.
inline constexpr std::int64_t downmix_share = 7'071;
inline constexpr Citation downmix_source{"ITU-R", "BS.775", "Table 2 (-3 dB)"};
/// Gain where all that goes into one side is in phase at full scale: headroom that a downmix needs, or a limiter.
Level downmix_worst_gain();

/// AC-3 on a carrier of two channels of 16 bits (IEC 61937-3): frames of the carrier from burst to burst, their octets,
/// and the words that begin a burst.
inline constexpr std::int64_t ac3_period_frames = 1'536;
inline constexpr std::int64_t ac3_period_octets = ac3_period_frames * 2 * 2;
inline constexpr Citation ac3_period_source{"IEC", "61937-3", "1536 frames"};
inline constexpr std::uint16_t burst_preamble_a = 0xF872;
inline constexpr std::uint16_t burst_preamble_b = 0x4E1F;
inline constexpr Citation burst_preamble_source{"IEC", "61937-1", "Pa, Pb"};
/// Played as PCM such a burst is noise at full scale; no output but that of a decoder may sound it.
inline constexpr Citation burst_needs_decoder_source{"IEC", "61937 and 60958", "channel status, non-PCM bit",
                                                     Standing::memory};

}  // namespace streamwright::standards
