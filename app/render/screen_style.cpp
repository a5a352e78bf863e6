#include "app/render/screen_style.h"

namespace streamwright::app {

namespace screen_style_detail {

constexpr double px = 0.25;  // millimetres of paper

Stroke filled_with(const QColor& colour) { return {{}, colour, 0, {}, 0}; }
Stroke lined_with(const QColor& colour, double pixels) { return {colour, {}, pixels * px, {}, 0}; }

}  // namespace screen_style_detail

Stroke ScreenStyle::cable(catalogue::Signal signal) const {
    Stroke made = cable_pattern(signal);
    made.line = theme_.signal(signal);
    // 2 px, or two strands of 1.5 px with 2.5 px between them.
    if (made.gap_mm > 0) {
        made.width_mm = 1.5 * screen_style_detail::px;
        made.gap_mm = 2.5 * screen_style_detail::px;
    } else {
        made.width_mm = 2 * screen_style_detail::px;
    }
    return made;
}

Stroke ScreenStyle::stroke(deliver::Role role, std::optional<catalogue::Signal> signal) const {
    using namespace screen_style_detail;
    using deliver::Role;
    const auto kind = signal.value_or(catalogue::Signal::control);
    const auto badge = [&](analysis::Severity severity) {
        return Stroke{theme_.severity_edge(severity), theme_.severity(severity), 1.5 * px, {}, 0};
    };
    switch (role) {
        case Role::plate:
            return {theme_.rule("plate_edge"), theme_.ground("plate"), px, {}, 0};
        case Role::plate_title:
            return filled_with(theme_.ground("title"));
        case Role::heavy_edge:
            return filled_with(theme_.signal(signal.value_or(catalogue::Signal::copper)));
        case Role::plate_rule:
            return lined_with(theme_.rule("hair"), 1);
        case Role::lug_free:
            return {theme_.signal(kind), theme_.ground("plate"), 1.5 * px, {}, 0};
        case Role::lug_cabled:
            return {theme_.signal(kind), theme_.signal(kind), 1.5 * px, {}, 0};
        case Role::cable:
            return cable(kind);
        case Role::cable_flank:
            return lined_with(theme_.colour("select", "outline"), 2);
        case Role::tag_ground:
            return filled_with(theme_.ground("canvas"));
        case Role::room:
            return {theme_.rule("room_edge"), theme_.ground("room"), 1.5 * px, {}, 0};
        case Role::room_tab:
            return filled_with(theme_.colour("room_tab", "fill"));
        case Role::flag:
            return {theme_.rule("plate_edge"), theme_.ground("plate"), px, {}, 0};
        case Role::mark:
            return lined_with(theme_.text(), 1.5);
        case Role::badge_error:
            return badge(analysis::Severity::error);
        case Role::badge_warning:
            return badge(analysis::Severity::warning);
        case Role::badge_advice:
            return badge(analysis::Severity::advice);
        case Role::rule_hair:
            return lined_with(theme_.rule("hair"), 1);
        case Role::rule_medium:
            return lined_with(theme_.rule("strong"), 2);
        case Role::rule_heavy:
            return lined_with(theme_.rule("strong"), 2.8);
        case Role::solid:
            return filled_with(theme_.text());
        default:
            return lined_with(theme_.rule("strong"), 1.4);
    }
}

QColor ScreenStyle::text(deliver::Role role, std::optional<catalogue::Signal> signal) const {
    using deliver::Role;
    switch (role) {
        case Role::lug_letter_cabled:
            return theme_.on_signal(signal.value_or(catalogue::Signal::control));
        case Role::room_tab_text:
            return theme_.colour("room_tab", "text");
        case Role::text_muted:
            return theme_.text("muted");
        case Role::text_faint:
            return theme_.text("faint");
        case Role::text_error:
            return theme_.text("error");
        case Role::badge_text_error:
            return theme_.on_severity(analysis::Severity::error);
        case Role::badge_text_warning:
            return theme_.on_severity(analysis::Severity::warning);
        case Role::badge_text_advice:
            return theme_.on_severity(analysis::Severity::advice);
        default:
            return theme_.text();
    }
}

Stroke SelectedCableStyle::stroke(deliver::Role role, std::optional<catalogue::Signal> signal) const {
    if (role == deliver::Role::tag_ground) return {{}, theme().text(), 0, {}, 0};
    return ScreenStyle::stroke(role, signal);
}

QColor SelectedCableStyle::text(deliver::Role role, std::optional<catalogue::Signal> signal) const {
    if (role == deliver::Role::text || role == deliver::Role::text_muted) return theme().ground("plate");
    return ScreenStyle::text(role, signal);
}

}  // namespace streamwright::app
