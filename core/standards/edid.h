// What a display says of itself (EDID): how long the file may be, and the code numbers in it that people meet.
#pragma once

#include "core/standards/citation.h"

#include <cstdint>
#include <optional>
#include <span>
#include <string_view>

namespace streamwright::standards {

inline constexpr std::int64_t edid_block_octets = 128;
inline constexpr Citation edid_block_source{"VESA", "E-EDID", "every block"};

/// The segment pointer reaches so many; files of AV displays have two as a rule.
inline constexpr std::int64_t most_edid_blocks = 256;
inline constexpr Citation edid_blocks_source{"VESA", "E-DDC", "segment pointer"};

/// The code in CTA-861 of the four 4K formats that HDMI 1.4 numbers 1 to 4; nothing for others.
std::optional<int> cta_code_of_hdmi_4k(int hdmi_code);
inline constexpr Citation hdmi_4k_source{"HDMI", "1.4b", "vendor block"};

/// Audio format codes of the short audio descriptor. 1 is linear PCM, all others are compressed or one-bit streams.
struct EdidAudioFormat {
    int code;
    std::string_view name;
};
std::span<const EdidAudioFormat> edid_audio_formats();
inline constexpr Citation edid_audio_source{"CTA", "861", "short audio descriptor"};

}  // namespace streamwright::standards
