// What a stream says that it carries must be a thing that its standard can pack, and its kind and its sound must say
// the same.
#include "core/model/row_checks.h"
#include "core/model/stream_packets.h"

namespace streamwright::model {

namespace essence_detail {

using standards::PictureCoding;

constexpr std::int64_t most_rate_bps = 1'600'000'000'000;  // the fastest Ethernet rate there is (IEEE P802.3dj)

std::string words(PictureCoding coding) { return std::string(base::enum_text(coding)); }

/// Each coding has its own figure, and no other's.
Trouble wrong_figure(const PictureEssence& picture) {
    const bool jpeg_xs = picture.coding == PictureCoding::jpeg_xs;
    const bool by_rate = picture.coding == PictureCoding::h264 || picture.coding == PictureCoding::h265;
    if (jpeg_xs != (picture.millibits_per_pixel != 0))
        return base::Error{"The bits per pixel of a stream are stated for JPEG XS, and only there; this is %1.",
                           {words(picture.coding)}};
    if (by_rate != (picture.rate.count() != 0))
        return base::Error{"The bit rate of a picture is stated for H.264 and H.265, and only there; this is %1.",
                           {words(picture.coding)}};
    if (picture.packing != standards::Packing::general && picture.coding != PictureCoding::uncompressed)
        return base::Error{"The packing in blocks is for uncompressed pictures; this is %1.", {words(picture.coding)}};
    const std::int64_t most =
        std::int64_t{1000} * standards::bits_per_pixel(picture.format.sampling, picture.format.depth);
    if (jpeg_xs && (picture.millibits_per_pixel < 0 || picture.millibits_per_pixel > most))
        return base::Error{
            "The bits per pixel must be more than 0 and at most the %1 of the uncompressed picture; %2 "
            "thousandths was given.",
            {std::to_string(most / 1000), std::to_string(picture.millibits_per_pixel)}};
    if (by_rate && (picture.rate.count() < 0 || base::Rate(picture.rate) > standards::active_rate(picture.format)))
        return base::Error{
            "The bit rate of the picture must be more than 0 and at most the %1 b/s of the uncompressed "
            "picture; %2 b/s was given.",
            {std::to_string(standards::active_rate(picture.format).ceil().count()),
             std::to_string(picture.rate.count())}};
    return std::nullopt;
}

Trouble wrong_limit(const PictureEssence& picture) {
    const std::int64_t limit = picture.udp_limit_octets;
    if (limit == standards::standard_udp_octets || limit == standards::full_mtu_udp_octets ||
        limit == standards::extended_udp_octets)
        return std::nullopt;
    return base::Error{"The limit of a UDP datagram is %1, %2 or %3 octets; %4 was given.",
                       {std::to_string(standards::standard_udp_octets), std::to_string(standards::full_mtu_udp_octets),
                        std::to_string(standards::extended_udp_octets), std::to_string(limit)}};
}

Trouble wrong_picture(const PictureEssence& picture) {
    if (auto trouble = standards::contradiction(picture.format)) return trouble;
    if (auto trouble = wrong_limit(picture)) return trouble;
    if (auto trouble = wrong_figure(picture)) return trouble;
    const auto& format = picture.format;
    if (picture.coding == PictureCoding::uncompressed && !standards::pixel_group(format.sampling, format.depth))
        return base::Error{"The sampling %1 of %2 bits has no pixel group in ST 2110-20, so it cannot be packed.",
                           {std::string(base::enum_text(format.sampling)), std::to_string(format.depth)}};
    const bool by_rate = picture.coding == PictureCoding::h264 || picture.coding == PictureCoding::h265;
    if (by_rate && !needed_level(picture))
        return base::Error{"The format %1 at %2 b/s is beyond every level of %3.",
                           {standards::text(format), std::to_string(picture.rate.count()), words(picture.coding)}};
    const auto rate = standards::wire_rate(*packets_of(picture)).ceil().count();
    if (rate <= most_rate_bps) return std::nullopt;
    return base::Error{"The format %1 makes %2 b/s, more than the 1.6 Tb/s of any line.",
                       {standards::text(format), std::to_string(rate)}};
}

/// A stream of sound that says which sound must have channels for it. Compressed surround (IEC 61937) travels in AES3
/// frames alone.
Trouble wrong_sound(const SoundEssence& sound, const std::optional<catalogue::AudioFormat>& said) {
    using catalogue::AudioFormat;
    if (auto trouble = standards::contradiction(sound.flow)) return trouble;
    if (!said) return std::nullopt;
    const auto channels = std::to_string(sound.flow.channels);
    if (*said == AudioFormat::stereo_pcm && sound.flow.channels > 2)
        return base::Error{"The sound of the stream is stereo, but it packs %1 channels.", {channels}};
    if (*said == AudioFormat::multichannel_pcm && sound.flow.channels < 3)
        return base::Error{"The sound of the stream is multichannel, but it packs %1 channels.", {channels}};
    if (*said == AudioFormat::compressed_surround && sound.flow.coding != standards::AudioCoding::am824)
        return base::Error{"The sound of the stream is compressed surround, which %1 cannot carry; AM824 can.",
                           {std::string(base::enum_text(sound.flow.coding))}};
    return std::nullopt;
}

Trouble wrong_kind(const Stream& row, catalogue::StreamKind wanted, std::string_view carried) {
    if (row.kind == wanted) return std::nullopt;
    return base::Error{"The kind of the stream is %1, but it packs %2.",
                       {std::string(base::enum_text(row.kind)), std::string(carried)}};
}

}  // namespace essence_detail

Trouble wrong_essence(const Stream& row) {
    using namespace essence_detail;
    if (row.picture && row.sound)
        return base::Error{"The stream packs a picture and sound; each is a stream of its own.", {}};
    if (row.payload_rate.count() != 0)
        return base::Error{"The payload rate of a stream follows from what it packs; take one of the two away.", {}};
    if (!row.rtp) return base::Error{"RTP cannot be left out: what a stream packs by a format goes over RTP.", {}};
    if (row.picture) {
        if (auto trouble = wrong_kind(row, catalogue::StreamKind::video, "a picture")) return trouble;
        if (row.audio) return base::Error{"The sound of the stream is stated, but a packed picture carries none.", {}};
        return wrong_picture(*row.picture);
    }
    if (auto trouble = wrong_kind(row, catalogue::StreamKind::audio, "sound")) return trouble;
    return wrong_sound(*row.sound, row.audio);
}

}  // namespace streamwright::model
