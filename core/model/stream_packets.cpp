#include "core/model/stream_packets.h"

#include "core/standards/wire_overhead.h"

#include <algorithm>

namespace streamwright::model {

using standards::PictureCoding;

namespace {

constexpr std::int64_t bits_per_octet = 8;

/// Rows that a test or an old file made unsound still have a size.
std::int64_t typed_octets(const Stream& stream) { return std::clamp(stream.payload_octets, 1, 65535); }

}  // namespace

bool packs_essence(const Stream& stream) { return stream.picture || stream.sound; }

std::optional<standards::PictureStream> packets_of(const PictureEssence& picture) {
    switch (picture.coding) {
        case PictureCoding::uncompressed:
            return standards::video_stream(picture.format, picture.packing, picture.udp_limit_octets);
        case PictureCoding::jpeg_xs:
            return standards::jpeg_xs_stream(picture.format, picture.millibits_per_pixel, picture.udp_limit_octets);
        case PictureCoding::h264:
        case PictureCoding::h265:
            return standards::fragmented_stream(picture.format, picture.rate, picture.coding, picture.udp_limit_octets);
    }
    return std::nullopt;
}

standards::PictureStream packets_of(const SoundEssence& sound) {
    return {{{1, standards::audio_payload_octets(sound.flow)}}, standards::packets_a_second(sound.flow)};
}

std::optional<standards::PictureStream> packets_of(const Stream& stream) {
    if (stream.picture) return packets_of(*stream.picture);
    if (stream.sound) return packets_of(*stream.sound);
    return std::nullopt;
}

base::Rate payload_rate_of(const PictureEssence& picture) {
    switch (picture.coding) {
        case PictureCoding::uncompressed:
            return standards::active_rate(picture.format);
        case PictureCoding::jpeg_xs:
            return standards::codestream_rate(picture.format, picture.millibits_per_pixel);
        case PictureCoding::h264:
        case PictureCoding::h265:
            break;
    }
    return picture.rate;
}

base::Rate payload_rate_of(const Stream& stream) {
    if (stream.picture) return payload_rate_of(*stream.picture);
    if (stream.sound)
        return standards::packets_a_second(stream.sound->flow)
            .bits(standards::audio_payload_octets(stream.sound->flow) * bits_per_octet);
    return std::max(stream.payload_rate, base::BitRate{});
}

std::int64_t full_payload_octets(const Stream& stream) {
    const auto packets = packets_of(stream);
    if (!packets) return typed_octets(stream);
    std::int64_t most = 1;
    for (const auto& run : packets->runs) most = std::max(most, run.payload);
    return most;
}

bool has_rtp(const Stream& stream) { return stream.rtp || packs_essence(stream); }

std::int64_t full_frame_octets(const Stream& stream) {
    return standards::frame_octets(standards::ip_packet_octets(full_payload_octets(stream), has_rtp(stream)));
}

base::Rate stream_wire_rate(const Stream& stream, int tags) {
    if (const auto packets = packets_of(stream)) return standards::wire_rate(*packets, tags);
    return standards::wire_rate(std::max(stream.payload_rate, base::BitRate{}), typed_octets(stream), stream.rtp, tags);
}

std::optional<NeededLevel> needed_level(const PictureEssence& picture) {
    if (picture.coding == PictureCoding::h264) {
        const auto* level = standards::h264_level(picture.format, picture.rate);
        return level ? std::optional(NeededLevel{level, false}) : std::nullopt;
    }
    if (picture.coding != PictureCoding::h265) return std::nullopt;
    if (const auto* level = standards::h265_level(picture.format, picture.rate)) return NeededLevel{level, false};
    const auto* level = standards::h265_level(picture.format, picture.rate, true);
    return level ? std::optional(NeededLevel{level, true}) : std::nullopt;
}

bool weigh_alike(const Stream& one, const Stream& other) {
    return one.payload_rate == other.payload_rate && one.payload_octets == other.payload_octets &&
           one.rtp == other.rtp && one.picture == other.picture && one.sound == other.sound;
}

}  // namespace streamwright::model
