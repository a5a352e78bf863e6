// Which decoder input can show which stream: what the worst case takes as given.
#pragma once

#include "core/graph/wiring.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace streamwright::analysis {

struct Compatibility {
    struct Slot {
        int device = 0, input = 0, kind = 0;
        friend bool operator==(const Slot&, const Slot&) = default;
    };
    std::vector<int> stream_kind;          // per stream
    std::vector<Slot> slots;               // by device, input
    std::vector<std::vector<bool>> takes;  // per slot kind, per stream kind
    bool shows(int slot_kind, int stream) const {
        return takes[static_cast<std::size_t>(slot_kind)]
                    [static_cast<std::size_t>(stream_kind[static_cast<std::size_t>(stream)])];
    }
    friend bool operator==(const Compatibility&, const Compatibility&) = default;
};

/// By open standard or codec family, and stream kind (`shows_stream`), for devices that may decode: those whose role it
/// is, and the undecided ones that send no stream. An input may be given a stream of its own device.
Compatibility usual_compatibility(const graph::Wiring&);

/// What a decoder takes, by tags: so many streams at once, of these; of all where none are named, but never of its own.
struct DecoderLimit {
    std::string decoder;
    int inputs = 1;
    std::optional<std::vector<std::string>> streams;
};
Compatibility limited_compatibility(const graph::Wiring&, const std::vector<DecoderLimit>&);

}  // namespace streamwright::analysis
