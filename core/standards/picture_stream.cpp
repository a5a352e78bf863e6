#include "core/standards/picture_stream.h"

#include "core/standards/wire_overhead.h"

namespace streamwright::standards {

namespace picture_stream_detail {

constexpr std::int64_t bits_per_octet = 8;

template <class Octets>
base::Rate rate_of(const PictureStream& stream, Octets octets_of) {
    std::int64_t octets = 0;
    for (const auto& run : stream.runs) octets += run.packets * octets_of(run.payload);
    return stream.pictures.bits(octets * bits_per_octet);
}

}  // namespace picture_stream_detail

std::int64_t packets_per_picture(const PictureStream& stream) {
    std::int64_t packets = 0;
    for (const auto& run : stream.runs) packets += run.packets;
    return packets;
}

base::Rate ip_rate(const PictureStream& stream) {
    return picture_stream_detail::rate_of(stream, [](std::int64_t payload) { return ip_packet_octets(payload, true); });
}

base::Rate wire_rate(const PictureStream& stream, int tags) {
    return picture_stream_detail::rate_of(
        stream, [tags](std::int64_t payload) { return packet_wire_octets(payload, true, tags); });
}

std::int64_t bandwidth_line_kbit(const base::Rate& ip_rate) { return (ip_rate.ceil().count() + 999) / 1000; }

}  // namespace streamwright::standards
