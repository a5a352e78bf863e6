// What a picture input tells the source before it that it takes: its EDID, where it is not the type's own.
#pragma once

#include "core/catalogue/port_type.h"
#include "core/model/ids.h"

#include <optional>

namespace streamwright::model {

/// fixed: one format and what is less; copied: from the input of a display; merged: what all displays behind it take.
enum class EdidWay { fixed, copied, merged };

struct EdidPolicy {
    EdidWay way = EdidWay::fixed;
    std::optional<standards::VideoFormat> format;  // fixed: the most that is announced
    std::optional<PortRef> from;                   // copied: whose
    std::optional<catalogue::AudioFormat> audio;   // fixed: the most sound that is announced; none: the type's own
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("way", s.way);
        v("format", s.format);
        v("from", s.from);
        v("audio", s.audio);
    }
    friend bool operator==(const EdidPolicy&, const EdidPolicy&) = default;
};

}  // namespace streamwright::model

template <>
struct streamwright::base::EnumText<streamwright::model::EdidWay> {
    using E = streamwright::model::EdidWay;
    static constexpr std::array<std::pair<E, std::string_view>, 3> names{
        {{E::fixed, "fixed"}, {E::copied, "copied"}, {E::merged, "merged"}}};
};
