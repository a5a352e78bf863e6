// The paper's style sheet; widths and patterns in millimetres as the tokens state them.
#include "core/deliver/formats/svg_style.h"

namespace streamwright::deliver {

std::string_view svg_style_sheet() {
    return R"(
text{font-family:B612,sans-serif;font-kerning:none;fill:#000;stroke:none}
path{fill:none;stroke:#000;stroke-width:.35;stroke-linejoin:miter;stroke-linecap:butt}
.b{font-weight:700}.m{text-anchor:middle}.e{text-anchor:end}
.plate,.lug-free,.flag,.badge-open{fill:#fff}
path.open{fill:none}
.heavy,.lug-cabled,.tab,.solid,.badge-full{fill:#000}
.heavy,.solid,.tab{stroke:none}
.ground{fill:#fff;stroke:none}.none{stroke:none}
.mark{stroke-width:.375}.hair{stroke-width:.25}.medium{stroke-width:.5}.thick{stroke-width:.7}
.on-black{fill:#fff}
.one{stroke-width:.5}.two{stroke-width:1.4}.clear{stroke:#fff;stroke-width:.7}
.fibre{stroke-dasharray:4 1.25}.audio{stroke-dasharray:1.5 1}.usb{stroke-dasharray:4 1.5}
.control{stroke-dasharray:.5 1}.extender{stroke-dasharray:3.5 1 .5 1}.power{stroke-dasharray:3.5 1 .5 1 .5 1}
)";
}

std::string_view svg_class(Role role) {
    switch (role) {
        case Role::plate:
            return "plate";
        case Role::plate_title:
        case Role::cable_flank:
            return "none";
        case Role::heavy_edge:
            return "heavy";
        case Role::plate_rule:
        case Role::rule_hair:
            return "hair";
        case Role::lug_free:
            return "lug-free";
        case Role::lug_cabled:
            return "lug-cabled";
        case Role::tag_ground:
            return "ground";
        case Role::room_tab:
            return "tab";
        case Role::flag:
            return "flag";
        case Role::mark:
            return "mark";
        case Role::badge_error:
            return "badge-full";
        case Role::badge_warning:
        case Role::badge_advice:
            return "badge-open";
        case Role::rule_medium:
            return "medium";
        case Role::rule_heavy:
            return "thick";
        case Role::solid:
            return "solid";
        case Role::lug_letter_cabled:
        case Role::room_tab_text:
        case Role::badge_text_error:
            return "on-black";
        default:
            return "";
    }
}

std::string_view svg_cable_class(catalogue::Signal signal) {
    using catalogue::Signal;
    switch (signal) {
        case Signal::copper:
            return "two";
        case Signal::fibre:
            return "two fibre";
        case Signal::audio:
            return "one audio";
        case Signal::usb:
            return "one usb";
        case Signal::control:
            return "one control";
        case Signal::extender:
            return "one extender";
        case Signal::power:
            return "one power";
        default:
            return "one";
    }
}

bool has_two_strands(catalogue::Signal signal) { return is_network(signal); }

}  // namespace streamwright::deliver
