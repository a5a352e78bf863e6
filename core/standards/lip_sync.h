// How far sound may be from its picture. The standards disagree, so a design names the one it keeps. Offsets are
// positive where the sound is early, as ITU-R BT.1359 counts them.
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"

#include <span>
#include <string_view>

namespace streamwright::standards {

struct LipSyncWindow {
    std::string_view name;
    base::Duration early;  // most that sound may lead
    Citation early_source;
    base::Duration late;  // most that it may lag, counted positive
    Citation late_source;
};
std::span<const LipSyncWindow> lip_sync_windows();
const LipSyncWindow* lip_sync_window(std::string_view name);  // null: not known

enum class LipSync { inside, at_limit, early, late };
LipSync lip_sync(base::Duration offset, const LipSyncWindow& window);

/// Sound in air of 20 degrees C, 343 m/s, nearest nanosecond.
base::Duration sound_delay(base::Length distance);
inline constexpr std::int64_t sound_metres_a_second = 343;
inline constexpr Citation sound_delay_source{"physics", "speed of sound", "20 degrees C"};

}  // namespace streamwright::standards
