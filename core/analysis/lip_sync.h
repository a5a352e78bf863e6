// How far sound and picture of the same source are apart where both are seen and heard: displays and loudspeakers of
// one room, preset by preset. The network's own share, well under a millisecond, is left out on both ways.
#pragma once

#include "core/graph/sound_paths.h"
#include "core/standards/lip_sync.h"

#include <optional>
#include <vector>

namespace streamwright::analysis {

/// What one device adds on the way.
struct DelayPart {
    enum class What { encoding, decoding, passing, set };
    model::DeviceId device;
    What what = What::passing;
    base::Duration delay;
    friend bool operator==(const DelayPart&, const DelayPart&) = default;
};

struct DelayWay {
    std::vector<DelayPart> parts;
    bool known = true;  // of every part
    base::Duration sum() const;
};

/// One picture and one sound of the same source, as they meet in a room.
struct LipSyncPair {
    model::PresetId preset;
    model::DeviceId source, display, speaker;
    DelayWay picture, sound;  // the sound that comes first, where it comes by several ways
    /// Positive: the sound leads; nothing where a part is not known.
    std::optional<base::Duration> lead() const;
};

const standards::LipSyncWindow* lip_sync_window_of(model::LipSync);

/// The same source: a source's own sound; and with a camera the microphones of its room. A display without a room, or
/// of a room without a loudspeaker, is in no pair. By preset, display, speaker.
std::vector<LipSyncPair> find_lip_sync(const graph::Wiring&, const graph::SignalGraph&, model::PresetId);

}  // namespace streamwright::analysis
