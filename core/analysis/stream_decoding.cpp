#include "core/analysis/stream_decoding.h"

#include "core/model/stream_packets.h"

#include <algorithm>

namespace streamwright::analysis {

namespace stream_decoding_detail {

using standards::PictureCoding;

/// Levels rise in the order of their tables.
bool within(std::span<const standards::CodecLevel> levels, const standards::CodecLevel* needed,
            const std::string& stated) {
    const auto place =
        std::find_if(levels.begin(), levels.end(), [&](const auto& each) { return each.name == stated; });
    return place == levels.end() || needed <= &*place;
}

bool states_flows(const catalogue::Codec& codec) {
    return codec.sound_flows && (!codec.sound_flows->levels.empty() || codec.sound_flows->am824);
}

}  // namespace stream_decoding_detail

bool speaks_of(const catalogue::Codec& codec, const model::Stream& stream) {
    if (stream.picture) return !codec.packed.codings.empty();
    return stream.sound && stream_decoding_detail::states_flows(codec);
}

bool takes_coding(const catalogue::Codec& codec, const model::PictureEssence& picture) {
    const auto& codings = codec.packed.codings;
    return codings.empty() || std::find(codings.begin(), codings.end(), picture.coding) != codings.end();
}

const std::string& stated_level(const catalogue::PictureCodings& packed, standards::PictureCoding coding) {
    static const std::string none;
    using standards::PictureCoding;
    if (coding == PictureCoding::h264) return packed.most_h264_level;
    return coding == PictureCoding::h265 ? packed.most_h265_level : none;
}

bool takes_level(const catalogue::Codec& codec, const model::PictureEssence& picture) {
    const auto& stated = stated_level(codec.packed, picture.coding);
    const auto needed = stated.empty() ? std::nullopt : model::needed_level(picture);
    if (!needed) return true;
    if (needed->high_tier) return false;
    const auto levels =
        picture.coding == standards::PictureCoding::h264 ? standards::h264_levels() : standards::h265_levels();
    return stream_decoding_detail::within(levels, needed->level, stated);
}

bool takes_flow(const catalogue::Codec& codec, const standards::AudioStream& flow) {
    if (!stream_decoding_detail::states_flows(codec)) return true;
    if (flow.coding == standards::AudioCoding::am824) return codec.sound_flows->am824;
    const auto& taken = codec.sound_flows->levels;
    const auto levels = standards::audio_levels();
    return std::any_of(levels.begin(), levels.end(), [&](const standards::AudioLevel& level) {
        return level.sampling_hz == flow.sampling_hz && level.packet_time == flow.packet_time &&
               flow.channels <= level.most_channels && std::find(taken.begin(), taken.end(), level.name) != taken.end();
    });
}

bool shows_stream(const catalogue::Codec& codec, catalogue::StreamKind input, const model::Stream& stream,
                  const catalogue::Codec* sender) {
    if (input != stream.kind) return false;
    if (!speaks_of(codec, stream)) return sender && sender->sent_family() == codec.family;
    if (stream.picture) return takes_coding(codec, *stream.picture) && takes_level(codec, *stream.picture);
    return takes_flow(codec, stream.sound->flow);
}

std::string level_words(const model::PictureEssence& picture) {
    const auto needed = model::needed_level(picture);
    if (!needed) return {};
    return std::string(needed->level->name) + (needed->high_tier ? ", high tier" : "");
}

}  // namespace streamwright::analysis
