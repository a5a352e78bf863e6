#include "core/standards/edid.h"

#include <array>

namespace streamwright::standards {

namespace edid_detail {

constexpr std::array audio_formats{
    EdidAudioFormat{1, "LPCM"},
    EdidAudioFormat{2, "AC-3"},
    EdidAudioFormat{7, "multichannel bitstream"},
    EdidAudioFormat{10, "E-AC-3"},
    EdidAudioFormat{11, "multichannel bitstream"},
    EdidAudioFormat{12, "MLP"},
};

}  // namespace edid_detail

std::optional<int> cta_code_of_hdmi_4k(int hdmi_code) {
    constexpr std::array codes{95, 94, 93, 98};
    if (hdmi_code < 1 || hdmi_code > static_cast<int>(codes.size())) return std::nullopt;
    return codes[static_cast<std::size_t>(hdmi_code) - 1];
}

std::span<const EdidAudioFormat> edid_audio_formats() { return edid_detail::audio_formats; }

}  // namespace streamwright::standards
