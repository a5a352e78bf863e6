#include "core/catalogue/detail/judge_essence.h"

#include <algorithm>

namespace streamwright::catalogue::contradictions_detail {

bool names_level(std::span<const standards::CodecLevel> levels, const std::string& name) {
    return std::any_of(levels.begin(), levels.end(), [&](const auto& level) { return level.name == name; });
}

/// A level names a coding that the codec has, and exists.
void judge_codings(Judge& judge, const PictureCodings& packed) {
    using standards::PictureCoding;
    const auto has = [&](PictureCoding coding) {
        return std::find(packed.codings.begin(), packed.codings.end(), coding) != packed.codings.end();
    };
    judge.refuse_if(any_twice(packed.codings, [](PictureCoding coding) { return coding; }), "codec.packed.codings",
                    "names a coding twice");
    judge.refuse_if(!packed.most_h264_level.empty() &&
                        (!has(PictureCoding::h264) || !names_level(standards::h264_levels(), packed.most_h264_level)),
                    "codec.packed.most_h264_level", "must be a level such as 4.2, of a codec that states H.264");
    judge.refuse_if(!packed.most_h265_level.empty() &&
                        (!has(PictureCoding::h265) || !names_level(standards::h265_levels(), packed.most_h265_level)),
                    "codec.packed.most_h265_level", "must be a level such as 5.1, of a codec that states H.265");
}

void judge_sound_flows(Judge& judge, const SoundFlows& flows, const DeviceType& type) {
    const auto known = [](const std::string& name) {
        const auto levels = standards::audio_levels();
        return std::any_of(levels.begin(), levels.end(), [&](const auto& level) { return level.name == name; });
    };
    judge.refuse_if(!std::all_of(flows.levels.begin(), flows.levels.end(), known), "codec.sound_flows.levels",
                    "name one that ST 2110-30 does not have: A, B, C, AX, BX and CX are known");
    judge.refuse_if(any_twice(flows.levels, [](const std::string& name) { return name; }), "codec.sound_flows.levels",
                    "name a level twice");
    judge.refuse_if((flows.most_in && *flows.most_in < 1) || (flows.most_out && *flows.most_out < 1),
                    "codec.sound_flows", "most_in and most_out must be at least 1");
    judge.refuse_if((!flows.levels.empty() || flows.am824 || flows.most_in) && !type.can(Role::decoder),
                    "codec.sound_flows", "only decoders take flows");
    judge.refuse_if(flows.most_out && !type.can(Role::encoder), "codec.sound_flows.most_out",
                    "only encoders send flows");
}

void judge_essence(Judge& judge, const Codec& codec, const DeviceType& type) {
    judge_codings(judge, codec.packed);
    if (codec.sound_flows) judge_sound_flows(judge, *codec.sound_flows, type);
}

}  // namespace streamwright::catalogue::contradictions_detail
