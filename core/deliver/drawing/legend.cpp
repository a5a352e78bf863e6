// The legend of a sheet: the signals that occur on it, and how to read lugs.
#include "core/deliver/drawing/paper.h"
#include "core/deliver/drawing/shapes.h"

#include <string_view>

namespace streamwright::deliver {

namespace legend_detail {

using base::Length;
using catalogue::Signal;
using namespace base::literals;

constexpr Length row_pitch = 4600_um;

std::string_view words_of(Signal signal) {
    switch (signal) {
        case Signal::video:
            return "Video";
        case Signal::extender:
            return "Extender link";
        case Signal::copper:
            return "Network, copper";
        case Signal::fibre:
            return "Network, fibre";
        case Signal::audio:
            return "Audio";
        case Signal::usb:
            return "USB";
        case Signal::control:
            return "Control";
        default:
            return "Power";
    }
}

/// A cabled lug with its letter; pointed right, or square.
void draw_lug(std::vector<Shape>& shapes, SheetPoint at, char letter, Signal signal, bool arrow, bool cabled) {
    Path path = filled_box({at, 4_mm, 3500_um}, cabled ? Role::lug_cabled : Role::lug_free);
    if (arrow)
        path.points = {at, moved(at, 2900_um, {}), moved(at, 4_mm, 1750_um), moved(at, 2900_um, 3500_um),
                       moved(at, {}, 3500_um)};
    path.signal = signal;
    shapes.emplace_back(path);
    auto text = bold_line(moved(at, arrow ? 1650_um : 2_mm, 2780_um), std::string(1, letter), 2750_um,
                          cabled ? Role::lug_letter_cabled : Role::lug_letter_free, Anchor::middle);
    text.signal = signal;
    shapes.emplace_back(text);
}

void draw_signal(std::vector<Shape>& shapes, SheetPoint at, Signal signal) {
    draw_lug(shapes, at, signal_letter(signal), signal, false, true);
    auto sample = stroke({moved(at, 5_mm, 1750_um), moved(at, 19_mm, 1750_um)}, Role::cable);
    sample.signal = signal;
    shapes.emplace_back(sample);
    shapes.emplace_back(text_line(moved(at, 21_mm, 2900_um), std::string(words_of(signal)), lettering::small));
}

void draw_port(std::vector<Shape>& shapes, SheetPoint at, bool arrow, bool cabled, const char* words) {
    draw_lug(shapes, at, 'V', Signal::video, arrow, cabled);
    shapes.emplace_back(text_line(moved(at, 6_mm, 2900_um), words, lettering::small));
}

}  // namespace legend_detail

Fragment legend(SheetPoint at, const std::vector<catalogue::Signal>& signals) {
    using namespace legend_detail;
    Fragment fragment;
    auto& shapes = fragment.shapes;
    shapes.emplace_back(bold_line(moved(at, {}, 4_mm), "Signals on this sheet", lettering::normal));
    auto row = moved(at, {}, 6500_um);
    if (signals.empty())
        shapes.emplace_back(text_line(moved(row, {}, 2900_um), "no cable on this sheet", lettering::small));
    for (const Signal signal : signals) {
        draw_signal(shapes, row, signal);
        row.y += row_pitch;
    }
    const auto ports = moved(at, 58_mm, {});
    shapes.emplace_back(bold_line(moved(ports, {}, 4_mm), "Ports", lettering::normal));
    row = moved(ports, {}, 6500_um);
    draw_port(shapes, row, true, true, "in or out, cabled");
    draw_port(shapes, moved(row, {}, row_pitch), false, true, "both ways, cabled");
    draw_port(shapes, moved(row, {}, 2 * row_pitch), true, false, "free");
    const auto edge = moved(row, 1500_um, 3 * row_pitch);
    shapes.emplace_back(filled_box({edge, 1_mm, 3500_um}, Role::heavy_edge));
    shapes.emplace_back(text_line(moved(edge, 4500_um, 2900_um), "heavy edge: network side", lettering::small));
    shapes.emplace_back(
        text_line(moved(row, {}, 4 * row_pitch + 2900_um), "N217: signal letter, number", lettering::small));
    shapes.emplace_back(
        text_line(moved(row, {}, 5 * row_pitch + 2900_um), "a gap in a line is a crossing", lettering::small));
    fragment.bounds = bounds_of(shapes);
    return fragment;
}

std::vector<std::string> wrapped(const std::string& text, base::Length width, base::Length em, layout::Weight weight) {
    std::vector<std::string> lines;
    std::string line;
    for (std::size_t at = 0; at < text.size();) {
        auto end = text.find(' ', at);
        if (end == std::string::npos) end = text.size();
        const auto word = text.substr(at, end - at);
        const auto longer = line.empty() ? word : line + " " + word;
        if (!line.empty() && layout::text_width(longer, em, weight) > width) {
            lines.push_back(line);
            line = word;
        } else {
            line = longer;
        }
        at = end + 1;
    }
    if (!line.empty()) lines.push_back(line);
    return lines;
}

}  // namespace streamwright::deliver
