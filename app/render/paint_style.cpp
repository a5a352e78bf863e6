#include "app/render/paint_style.h"

namespace streamwright::app {

namespace paint_style_detail {

using catalogue::Signal;
using deliver::Role;

constexpr double hair = 0.25;
constexpr double fine = 0.35;
constexpr double medium = 0.5;
constexpr double heavy = 0.7;

Stroke outline(double width) { return {QColor(Qt::black), {}, width, {}, 0}; }
Stroke filled(const QColor& fill) { return {{}, fill, 0, {}, 0}; }
Stroke edged(double width, const QColor& fill) { return {QColor(Qt::black), fill, width, {}, 0}; }

}  // namespace paint_style_detail

Stroke cable_pattern(catalogue::Signal signal) {
    using namespace paint_style_detail;
    const QColor ink(Qt::black);
    switch (signal) {
        case Signal::video:
            return {ink, {}, medium, {}, 0};
        case Signal::extender:
            return {ink, {}, medium, {3.5, 1, 0.5, 1}, 0};
        case Signal::copper:
            return {ink, {}, fine, {}, 0.7};
        case Signal::fibre:
            return {ink, {}, fine, {4, 1.25}, 0.7};
        case Signal::audio:
            return {ink, {}, medium, {1.5, 1}, 0};
        case Signal::usb:
            return {ink, {}, medium, {4, 1.5}, 0};
        case Signal::control:
            return {ink, {}, medium, {0.5, 1}, 0};
        case Signal::power:
            return {ink, {}, medium, {3.5, 1, 0.5, 1, 0.5, 1}, 0};
    }
    return {ink, {}, medium, {}, 0};
}

Stroke PaperStyle::stroke(deliver::Role role, std::optional<catalogue::Signal> signal) const {
    using namespace paint_style_detail;
    const QColor ink(Qt::black);
    const QColor paper(Qt::white);
    switch (role) {
        case Role::plate:
            return edged(fine, paper);
        case Role::plate_title:
            return {};
        case Role::heavy_edge:
            return filled(ink);
        case Role::plate_rule:
            return outline(hair);
        case Role::lug_free:
            return edged(hair, paper);
        case Role::lug_cabled:
            return edged(hair, ink);
        case Role::cable:
            return cable_pattern(signal.value_or(Signal::video));
        case Role::cable_flank:
            return {};
        case Role::tag_ground:
            return filled(paper);
        case Role::room:
            return outline(fine);
        case Role::room_tab:
            return filled(ink);
        case Role::flag:
            return edged(fine, paper);
        case Role::mark:
            return outline(fine);
        case Role::badge_error:
        case Role::badge_warning:
        case Role::badge_advice:
            return edged(fine, paper);
        case Role::rule_hair:
            return outline(hair);
        case Role::rule_fine:
            return outline(fine);
        case Role::rule_medium:
            return outline(medium);
        case Role::rule_heavy:
            return outline(heavy);
        case Role::solid:
            return filled(ink);
        default:
            return outline(fine);
    }
}

QColor PaperStyle::text(deliver::Role role, std::optional<catalogue::Signal>) const {
    // White on the two black grounds, else black: no grey, so that copies of copies stay clean.
    const bool on_black = role == deliver::Role::lug_letter_cabled || role == deliver::Role::room_tab_text;
    return on_black ? QColor(Qt::white) : QColor(Qt::black);
}

}  // namespace streamwright::app
