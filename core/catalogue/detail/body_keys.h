// Which key names which fact of a device's body: size, slots, power, licences. For .cpp files only.
#pragma once

#include "core/catalogue/detail/json_codec.h"
#include "core/catalogue/device_type.h"

namespace streamwright::catalogue::json_detail {

template <>
struct Fields<ChassisFacts> {
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("slots", s.slots);
        v("takes", s.takes);
    }
};

template <>
struct Fields<PhysicalSize> {
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("rack_units", s.rack_units);
        v("height_um", s.height);
        v("width_um", s.width);
        v("depth_um", s.depth);
        v("mass_g", s.mass);
        v("full_depth", s.full_depth);
    }
};

template <>
struct Fields<ImageFacts> {
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("pixels_across", s.pixels_across);
        v("pixels_down", s.pixels_down);
        v("width_um", s.width);
        v("height_um", s.height);
    }
};

template <>
struct Fields<PowerNeed> {
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("most_mw", s.most);
        v("most_apparent_mva", s.most_apparent);
        v("external_supply", s.external_supply);
    }
};

template <>
struct Fields<LicenceNeed> {
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("name", s.name);
        v("per", s.per);
        v("each", s.each);
        v("count", s.count);
    }
};

}  // namespace streamwright::catalogue::json_detail
