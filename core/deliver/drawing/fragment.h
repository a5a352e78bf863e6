// A fragment: the drawing of one subject as primitives with style roles, never colours. The canvas keeps fragments by
// subject and remakes those an edit names; a sheet asks for all; screen, PDF, SVG and DXF paint the same.
#pragma once

#include "core/catalogue/port_type.h"
#include "core/layout/plate.h"
#include "core/layout/text_width.h"
#include "core/model/ids.h"

#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace streamwright::deliver {

using layout::Box;
using model::SheetPoint;

/// What a primitive is; a painter turns it into pen, fill and colour. Screen: tokens.json; paper: black, widths below.
enum class Role {
    plate,        // outline and ground of a device
    plate_title,  // tinted title row (no fill on paper)
    heavy_edge,   // 4 px / 1 mm bar on the network side
    plate_rule,   // hair rule above the fact line
    lug_free,     // hollow, edged in the signal's colour
    lug_cabled,   // filled with the signal's colour
    lug_letter_free,
    lug_letter_cabled,
    cable,        // a cable of its signal: colour and pattern by signal
    cable_flank,  // dark flanks of a selected cable (screen only)
    tag_ground,   // knocked-out ground behind a cable's tag
    room,
    room_tab,
    room_tab_text,
    text,
    text_muted,
    text_faint,
    text_error,
    flag,  // off-sheet flag
    mark,  // role mark, drawn in ink
    badge_error,
    badge_warning,
    badge_advice,
    badge_text_error,
    badge_text_warning,
    badge_text_advice,
    rule_hair,    // 0.25 mm
    rule_fine,    // 0.35 mm
    rule_medium,  // 0.5 mm
    rule_heavy,   // 0.7 mm
    solid         // filled with ink
};

enum class Anchor { left, middle, right };

/// A stroke or filled outline. `radius` rounds its corners.
struct Path {
    std::vector<SheetPoint> points;
    bool closed = false;
    bool filled = false;
    base::Length radius;
    Role role = Role::rule_fine;
    std::optional<catalogue::Signal> signal;
    friend bool operator==(const Path&, const Path&) = default;
};

/// One line of text. `em` is the type size (12 px = 3 mm on screen); `at` is the baseline at the anchor.
struct TextLine {
    SheetPoint at;
    std::string text;
    base::Length em;
    layout::Weight weight = layout::Weight::normal;
    Anchor anchor = Anchor::left;
    Role role = Role::text;
    std::optional<catalogue::Signal> signal;
    bool upright = false;  // turned by 90 degrees, reading upward
    friend bool operator==(const TextLine&, const TextLine&) = default;
};

using Shape = std::variant<Path, TextLine>;

struct Fragment {
    std::string subject;  // "device:0123456789ab"; empty: the sheet itself
    Box bounds;
    std::vector<Shape> shapes;  // back to front
    friend bool operator==(const Fragment&, const Fragment&) = default;
};

}  // namespace streamwright::deliver
