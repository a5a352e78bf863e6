// Which key of a type's file names which fact of packed pictures and network audio. For .cpp files only.
#pragma once

#include "core/catalogue/detail/json_codec.h"
#include "core/catalogue/essence_facts.h"

namespace streamwright::catalogue::json_detail {

template <>
struct Fields<SoundFlows> {
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("levels", s.levels);
        v("am824", s.am824);
        v("most_in", s.most_in);
        v("most_out", s.most_out);
    }
};

template <>
struct Fields<PictureCodings> {
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("codings", s.codings);
        v("most_h264_level", s.most_h264_level);
        v("most_h265_level", s.most_h265_level);
    }
};

}  // namespace streamwright::catalogue::json_detail
