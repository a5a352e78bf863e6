#include "core/standards/lip_sync.h"

#include <array>

namespace streamwright::standards {

namespace lip_sync_detail {

using namespace base::literals;

constexpr Citation detectable{"ITU-R", "BT.1359-1", "considering g"};
constexpr Citation acceptable{"ITU-R", "BT.1359-1", "recommends 2"};
constexpr Citation output{"EBU", "R37", "final output"};
constexpr Citation stage{"EBU", "R37-2007", "each stage", Standing::memory};
constexpr Citation atsc{"ATSC", "IS-191", ""};
constexpr Citation atsc_late{"ATSC", "IS-191", "", Standing::memory};

constexpr std::array windows{
    LipSyncWindow{"BT.1359 detectability", 45_ms, detectable, 125_ms, detectable},
    LipSyncWindow{"BT.1359 acceptability", 90_ms, acceptable, 185_ms, acceptable},
    LipSyncWindow{"EBU R37 final output", 40_ms, output, 60_ms, output},
    LipSyncWindow{"EBU R37 each stage", 5_ms, stage, 15_ms, stage},
    LipSyncWindow{"ATSC IS-191", 15_ms, atsc, 45_ms, atsc_late},
};

}  // namespace lip_sync_detail

std::span<const LipSyncWindow> lip_sync_windows() { return lip_sync_detail::windows; }

const LipSyncWindow* lip_sync_window(std::string_view name) {
    for (const auto& window : lip_sync_detail::windows)
        if (window.name == name) return &window;
    return nullptr;
}

LipSync lip_sync(base::Duration offset, const LipSyncWindow& window) {
    if (offset > window.early) return LipSync::early;
    if (offset < -window.late) return LipSync::late;
    return offset == window.early || offset == -window.late ? LipSync::at_limit : LipSync::inside;
}

base::Duration sound_delay(base::Length distance) {
    constexpr std::int64_t nanoseconds_per_micrometre_second = 1'000;  // 10^9 ns over 10^6 um
    const auto scaled = distance.count() * nanoseconds_per_micrometre_second;
    return base::Duration::from_count((scaled + sound_metres_a_second / 2) / sound_metres_a_second);
}

}  // namespace streamwright::standards
