// Which key of a type's JSON names which field of its picture facts. For .cpp files only.
#pragma once

#include "core/catalogue/detail/json_codec.h"
#include "core/catalogue/picture_facts.h"

namespace streamwright::catalogue::json_detail {

template <>
struct Fields<PictureFacts> {
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("formats", s.formats);
        v("samplings", s.samplings);
        v("most_depth", s.most_depth);
        v("ranges", s.ranges);
        v("hdcp", s.hdcp);
        v("hdcp_most_devices", s.hdcp_most_devices);
        v("hdcp_most_levels", s.hdcp_most_levels);
        v("repeats", s.repeats);
        v("captures", s.captures);
    }
};

template <>
struct Fields<CodecPicture> {
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("most_format", s.most_format);
        v("most_sampling", s.most_sampling);
        v("most_depth", s.most_depth);
        v("flattens_hdr", s.flattens_hdr);
        v("carries_protection", s.carries_protection);
    }
};

}  // namespace streamwright::catalogue::json_detail
