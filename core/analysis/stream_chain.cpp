#include "core/analysis/stream_chain.h"

#include "core/analysis/rule_help.h"
#include "core/analysis/stream_decoding.h"
#include "core/model/stream_packets.h"
#include "core/standards/sender_shaping.h"
#include "core/standards/wire_overhead.h"

#include <algorithm>

namespace streamwright::analysis {

namespace stream_chain_detail {

using standards::PictureCoding;
using Lines = std::vector<LimitLine>;

void add(Lines& lines, std::string pattern, std::vector<base::Value> values, base::Value figure, bool sum = false) {
    lines.push_back({std::move(pattern), std::move(values), std::move(figure), sum, false});
}

/// Thousandths as people write them: 3500 is "3.5".
std::string thousandths(std::int64_t value) { return standards::plain_number(standards::Hertz::ratio(value, 1000)); }

/// What stands between the RTP header and the essence of a packet of this payload.
std::string payload_header(const model::PictureEssence& picture) {
    switch (picture.coding) {
        case PictureCoding::uncompressed:
            return "2 and 6 a line";
        case PictureCoding::jpeg_xs:
            return std::to_string(standards::jpeg_xs_header_octets);
        case PictureCoding::h264:
            return std::to_string(standards::h264_fragment_octets);
        case PictureCoding::h265:
            break;
    }
    return std::to_string(standards::h265_fragment_octets);
}

const standards::Citation& header_source(PictureCoding coding) {
    switch (coding) {
        case PictureCoding::uncompressed:
            return standards::payload_header_source;
        case PictureCoding::jpeg_xs:
            return standards::jpeg_xs_header_source;
        case PictureCoding::h264:
            return standards::h264_fragment_source;
        case PictureCoding::h265:
            break;
    }
    return standards::h265_fragment_source;
}

void add_headers(Lines& lines, std::int64_t payload, bool rtp) {
    const auto wire = standards::packet_wire_octets(payload, rtp);
    if (rtp)
        add(lines, STREAMWRIGHT_TEXT("RTP 12, UDP 8, IP 20, Ethernet 38"), {}, wire - payload);
    else
        add(lines, STREAMWRIGHT_TEXT("UDP 8, IP 20, Ethernet 38"), {}, wire - payload);
    add(lines, STREAMWRIGHT_TEXT("Full packet on the wire, octets"), {}, wire, true);
}

void add_rates(Lines& lines, const model::Stream& stream) {
    add(lines, STREAMWRIGHT_TEXT("Packets a second"), {}, packets_a_second(stream));
    add(lines, STREAMWRIGHT_TEXT("Payload"), {}, model::payload_rate_of(stream).ceil());
    add(lines, STREAMWRIGHT_TEXT("On the wire, untagged"), {}, model::stream_wire_rate(stream).ceil(), true);
}

/// How many packets a sender that keeps to SMPTE ST 2110-21 may let stand in the model's buffer.
void add_burst(Lines& lines, const model::PictureEssence& picture, const standards::PictureStream& packets) {
    const bool paced = picture.coding == PictureCoding::uncompressed || picture.coding == PictureCoding::jpeg_xs;
    const auto share = standards::active_share(picture.format);
    if (!paced || !share) return;
    const standards::Cadence cadence{standards::packets_per_picture(packets), packets.pictures};
    add(lines, STREAMWRIGHT_TEXT("Burst at most, narrow sender"), {},
        standards::most_burst(standards::SenderType::narrow, cadence, *share));
}

void add_picture(Lines& lines, const model::Stream& stream) {
    const auto& picture = *stream.picture;
    const auto packets = model::packets_of(picture);
    if (!packets) return;
    const char* whole = picture.format.interlaced ? STREAMWRIGHT_TEXT("Packets a field, of %1 octets")
                                                  : STREAMWRIGHT_TEXT("Packets a frame, of %1 octets");
    add(lines, STREAMWRIGHT_TEXT("Payload header, octets"), {}, payload_header(picture));
    for (const auto& run : packets->runs) add(lines, whole, {run.payload}, run.packets);
    add_headers(lines, model::full_payload_octets(stream), true);
    add(lines, picture.format.interlaced ? STREAMWRIGHT_TEXT("Fields a second") : STREAMWRIGHT_TEXT("Frames a second"),
        {}, standards::plain_number(packets->pictures));
    add_rates(lines, stream);
    add_burst(lines, picture, *packets);
    if (const auto level = level_words(picture); !level.empty())
        add(lines, STREAMWRIGHT_TEXT("Level needed"), {}, level);
    add(lines, STREAMWRIGHT_TEXT("Source"), {}, header_source(picture.coding).text());
}

void add_sound(Lines& lines, const model::Stream& stream) {
    const auto& flow = stream.sound->flow;
    const auto samples = standards::samples_per_packet(flow);
    add(lines, STREAMWRIGHT_TEXT("%1 samples x %2 channels x %3 octets"),
        {samples, std::int64_t{flow.channels}, standards::octets_per_sample(flow.coding)},
        standards::audio_payload_octets(flow));
    add(lines, STREAMWRIGHT_TEXT("At most in a packet, octets"), {}, standards::most_audio_octets);
    add_headers(lines, standards::audio_payload_octets(flow), true);
    add_rates(lines, stream);
    const auto* level = standards::audio_level(flow);
    add(lines, STREAMWRIGHT_TEXT("Level of ST 2110-30"), {},
        level ? std::string(level->name) : std::string(STREAMWRIGHT_TEXT("none")));
    add(lines, STREAMWRIGHT_TEXT("Source"), {}, standards::packet_time_source.text());
}

}  // namespace stream_chain_detail

std::vector<LimitLine> stream_chain(const model::Stream& stream) {
    using namespace stream_chain_detail;
    Lines lines;
    if (stream.picture) {
        add_picture(lines, stream);
    } else if (stream.sound) {
        add_sound(lines, stream);
    } else {
        add(lines, STREAMWRIGHT_TEXT("Payload of a packet, octets"), {}, model::full_payload_octets(stream));
        add_headers(lines, model::full_payload_octets(stream), stream.rtp);
        add_rates(lines, stream);
    }
    return lines;
}

std::vector<base::Text> stream_terms(const model::Stream& stream) {
    if (!model::packs_essence(stream)) return {};
    return {line(STREAMWRIGHT_TEXT("%1, %2: %3 packets a second of %4 octets at most"),
                 {essence_words(stream), packing_words(stream), packets_a_second(stream),
                  model::full_payload_octets(stream)}),
            line(STREAMWRIGHT_TEXT("%1 payload, with headers, preamble and gap: %2"),
                 {model::payload_rate_of(stream).ceil(), model::stream_wire_rate(stream).ceil()})};
}

std::string essence_words(const model::Stream& stream) {
    if (stream.picture) return standards::text(stream.picture->format);
    if (!stream.sound) return {};
    const auto& flow = stream.sound->flow;
    return std::to_string(flow.channels) + (flow.channels == 1 ? " channel, " : " channels, ") +
           standards::print(standards::Hertz::whole(flow.sampling_hz));
}

std::string packing_words(const model::Stream& stream) {
    using standards::PictureCoding;
    if (stream.sound)
        return std::string(base::enum_text(stream.sound->flow.coding)) + ", " +
               std::string(base::enum_text(stream.sound->flow.packet_time));
    if (!stream.picture) return {};
    const auto& picture = *stream.picture;
    const std::string coding(base::enum_text(picture.coding));
    switch (picture.coding) {
        case PictureCoding::uncompressed:
            return coding + ", " + std::string(base::enum_text(picture.packing)) + " packing";
        case PictureCoding::jpeg_xs:
            return coding + ", " + stream_chain_detail::thousandths(picture.millibits_per_pixel) + " bits per pixel";
        case PictureCoding::h264:
        case PictureCoding::h265:
            break;
    }
    return coding + ", level " + level_words(picture);
}

std::string flow_words(const standards::AudioStream& flow) {
    model::Stream stream = model::Stream::blank(model::StreamId(0));
    stream.sound = model::SoundEssence{flow};
    return essence_words(stream) + ", " + packing_words(stream);
}

std::string packets_a_second(const model::Stream& stream) {
    if (const auto packets = model::packets_of(stream))
        return standards::plain_number(packets->pictures.times(standards::packets_per_picture(*packets)));
    const auto octets = model::full_payload_octets(stream) * 8;
    return standards::plain_number(
        standards::Hertz::ratio(std::max<std::int64_t>(stream.payload_rate.count(), 0), octets));
}

}  // namespace streamwright::analysis
