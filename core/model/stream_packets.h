// The packets that a stream sends, worked out of what it carries, or of what is typed in where that is not stated. Who
// needs a stream's rate or the size of its packets asks here, never the row.
#pragma once

#include "core/model/rows/stream.h"
#include "core/standards/codec_levels.h"

#include <optional>

namespace streamwright::model {

/// Whether the rate follows from what the stream carries.
bool packs_essence(const Stream& stream);

/// So many packets of which size for each picture, and how many pictures a second; sound is one packet each time.
/// Nothing where the rate is typed in. The row must be sound (`wrong_value`).
std::optional<standards::PictureStream> packets_of(const PictureEssence& picture);
standards::PictureStream packets_of(const SoundEssence& sound);
std::optional<standards::PictureStream> packets_of(const Stream& stream);

/// What is carried, before any header; exact.
base::Rate payload_rate_of(const PictureEssence& picture);
base::Rate payload_rate_of(const Stream& stream);
/// What follows the RTP header in a full packet; without one, the UDP header.
std::int64_t full_payload_octets(const Stream& stream);
/// What is packed by a format goes over RTP.
bool has_rtp(const Stream& stream);
/// Ethernet frame of a full packet, untagged.
std::int64_t full_frame_octets(const Stream& stream);
/// Exact; zero where nothing is stated.
base::Rate stream_wire_rate(const Stream& stream, int tags = 0);

/// Whether both weigh the same for sure: all that a rate follows from is alike.
bool weigh_alike(const Stream& one, const Stream& other);

/// H.264 and H.265: the least level that takes the picture at its rate; of H.265 the main tier where it does.
struct NeededLevel {
    const standards::CodecLevel* level = nullptr;
    bool high_tier = false;
};
std::optional<NeededLevel> needed_level(const PictureEssence& picture);

}  // namespace streamwright::model
