// The clean design with its first stream packed by an open standard, for the rules about what codecs make and take.
#pragma once

#include "tests/analysis/rules/tree_rooms.h"

#include <gmock/gmock.h>

namespace streamwright::test {

inline void pack_picture(CleanDesign& c, std::string_view format, model::PictureEssence essence) {
    c.b.change<model::Stream>(c.stream, [&](model::Stream& row) {
        row.payload_rate = {};
        row.picture = essence;
        row.picture->format = standards::parse_video_format(format).value();
    });
}

/// The first stream is sound, and its decoder has an input for it.
inline void pack_sound(CleanDesign& c, const standards::AudioStream& flow) {
    c.b.change<model::Stream>(c.stream, [&](model::Stream& row) {
        row.payload_rate = {};
        row.kind = catalogue::StreamKind::audio;
        row.sound = model::SoundEssence{flow};
    });
    change_type(c, c.decoder, [](auto& type) { type.codec->inputs.front().kind = catalogue::StreamKind::audio; });
}

/// H.264, and what is usual of it.
inline model::PictureEssence h264(std::int64_t megabits) {
    return {.coding = standards::PictureCoding::h264, .rate = base::BitRate::from_count(megabits * 1'000'000)};
}

}  // namespace streamwright::test
