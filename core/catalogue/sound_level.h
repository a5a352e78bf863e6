// The level at which a port carries analogue sound, as the standards that its type names tell it.
#pragma once

#include "core/base/enum_text.h"
#include "core/catalogue/port_type.h"

#include <optional>

namespace streamwright::catalogue {

/// From the weakest on. Unbalanced lines carry -10 dBV and balanced ones +4 dBu (common practice); a microphone some
/// 40 to 60 dB less; a loudspeaker line is power.
enum class SoundLevel { microphone, unbalanced_line, balanced_line, loudspeaker };

/// Of a port of sound whose standards name one ("balanced line", "loudspeaker 8 ohm"); none: not stated.
std::optional<SoundLevel> sound_level_of(const PortType& port);

/// Whether the device sets the gain of its inputs: what mixes and processes does (common practice).
bool sets_input_gain(const struct DeviceType& type);

}  // namespace streamwright::catalogue

template <>
struct streamwright::base::EnumText<streamwright::catalogue::SoundLevel> {
    using E = streamwright::catalogue::SoundLevel;
    static constexpr std::array<std::pair<E, std::string_view>, 4> names{{{E::microphone, "microphone level"},
                                                                          {E::unbalanced_line, "consumer line level"},
                                                                          {E::balanced_line, "professional line level"},
                                                                          {E::loudspeaker, "loudspeaker power"}}};
};
