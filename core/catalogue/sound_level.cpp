#include "core/catalogue/sound_level.h"

#include "core/catalogue/device_type.h"

namespace streamwright::catalogue {

std::optional<SoundLevel> sound_level_of(const PortType& port) {
    if (port.signal != Signal::audio) return std::nullopt;
    for (const auto& name : port.standards) {
        if (name.starts_with("loudspeaker")) return SoundLevel::loudspeaker;
        if (name == "balanced microphone" || name == "microphone") return SoundLevel::microphone;
        if (name == "balanced line") return SoundLevel::balanced_line;
        if (name == "unbalanced line") return SoundLevel::unbalanced_line;
    }
    return std::nullopt;
}

bool sets_input_gain(const DeviceType& type) { return type.kind == DeviceKind::audio_processor; }

}  // namespace streamwright::catalogue
