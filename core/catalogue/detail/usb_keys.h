// Which key names which fact of USB in a type's file. For .cpp files only.
#pragma once

#include "core/catalogue/detail/json_codec.h"
#include "core/catalogue/usb_facts.h"

namespace streamwright::catalogue::json_detail {

template <>
struct Fields<UsbPort> {
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("isochronous_bps", s.isochronous);
        v("human_interface", s.human_interface);
        v("charges_mw", s.charges);
        v("charging_mw", s.charging);
    }
};

template <>
struct Fields<UsbCarriage> {
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("isochronous_bps", s.isochronous);
        v("human_interface_only", s.human_interface_only);
        v("hubs", s.hubs);
        v("devices", s.devices);
    }
};

}  // namespace streamwright::catalogue::json_detail
