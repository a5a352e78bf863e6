// What a codec makes or takes of pictures and sound that are packed by open standards. A codec without such facts is
// silent: then its family alone tells who decodes whose streams.
#pragma once

#include "core/standards/audio_streams.h"
#include "core/standards/codec_levels.h"
#include "core/standards/picture_stream.h"

#include <optional>
#include <string>
#include <vector>

namespace streamwright::catalogue {

/// Flows of network audio.
struct SoundFlows {
    std::vector<std::string> levels;       // of SMPTE ST 2110-30, that it takes as receiver ("A"); empty: not stated
    bool am824 = false;                    // takes AES3 frames (SMPTE ST 2110-31) as well
    std::optional<int> most_in, most_out;  // at once
    friend bool operator==(const SoundFlows&, const SoundFlows&) = default;
};

/// Packed pictures.
struct PictureCodings {
    std::vector<standards::PictureCoding> codings;  // empty: not stated
    std::string most_h264_level, most_h265_level;   // such as "4.2", of H.265 in the main tier; empty: not stated
    friend bool operator==(const PictureCodings&, const PictureCodings&) = default;
};

}  // namespace streamwright::catalogue
