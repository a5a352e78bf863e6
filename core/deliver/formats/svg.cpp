// SVG: one file a page, in millimetres, a group with an id for each subject, text as text.
#include "core/deliver/formats/formats.h"
#include "core/deliver/formats/svg_style.h"
#include "core/deliver/formats/table_cells.h"

#include <algorithm>

namespace streamwright::deliver {

namespace svg_detail {

std::string mm(base::Length length) { return base::print_decimal(length.count(), 3); }
std::string pair(SheetPoint p) { return mm(p.x) + " " + mm(p.y); }

/// For element content and attributes; control characters have no place in XML.
std::string escaped(std::string_view text) {
    std::string result;
    for (const char c : text) {
        if (c == '&')
            result += "&amp;";
        else if (c == '<')
            result += "&lt;";
        else if (c == '>')
            result += "&gt;";
        else if (c == '"')
            result += "&quot;";
        else if (static_cast<unsigned char>(c) >= 0x20 && c != 0x7F)
            result += c;
    }
    return result;
}

/// The point at `by` from `corner` toward `other`, or half way where the stretch is shorter than two such cuts.
SheetPoint toward(SheetPoint corner, SheetPoint other, base::Length by) {
    const auto dx = (other.x - corner.x).count(), dy = (other.y - corner.y).count();
    const auto length = std::max<std::int64_t>(std::abs(dx) + std::abs(dy), 1);
    const auto cut = std::min(by.count(), length / 2);
    return {base::Length::from_count(corner.x.count() + dx * cut / length),
            base::Length::from_count(corner.y.count() + dy * cut / length)};
}

std::string outline_text(const Path& path) {
    const auto& points = path.points;
    const auto count = points.size();
    const bool rounded = path.radius > base::Length{};
    std::string d;
    for (std::size_t i = 0; i < count; ++i) {
        const bool corner = rounded && count > 2 && (path.closed || (i > 0 && i + 1 < count));
        if (!corner) {
            d += (i == 0 ? "M" : " L") + pair(points[i]);
            continue;
        }
        const auto before = toward(points[i], points[(i + count - 1) % count], path.radius);
        const auto after = toward(points[i], points[(i + 1) % count], path.radius);
        d += (i == 0 ? "M" : " L") + pair(before) + " Q" + pair(points[i]) + " " + pair(after);
    }
    return path.closed ? d + "Z" : d;
}

std::string path_element(std::string_view classes, const std::string& d) {
    std::string text = "<path";
    if (!classes.empty()) text += " class=\"" + std::string(classes) + "\"";
    return text + " d=\"" + d + "\"/>\n";
}

std::string drawn(const Path& path) {
    if (path.points.empty()) return {};
    const auto d = outline_text(path);
    if (path.role == Role::cable) {
        const auto signal = path.signal.value_or(catalogue::Signal::video);
        auto text = path_element(svg_cable_class(signal), d);
        if (has_two_strands(signal)) text += path_element("clear", d);
        return text;
    }
    std::string classes(svg_class(path.role));
    if (classes == "none") return {};
    if (!path.filled && path.closed) classes += classes.empty() ? "open" : " open";
    return path_element(classes, d);
}

std::string drawn(const TextLine& line) {
    if (line.text.empty()) return {};
    std::string classes(svg_class(line.role));
    const auto add = [&](const char* name) { classes += (classes.empty() ? "" : " ") + std::string(name); };
    if (line.weight == layout::Weight::bold) add("b");
    if (line.anchor == Anchor::middle) add("m");
    if (line.anchor == Anchor::right) add("e");
    std::string text =
        "<text x=\"" + mm(line.at.x) + "\" y=\"" + mm(line.at.y) + "\" font-size=\"" + mm(line.em) + "\"";
    if (!classes.empty()) text += " class=\"" + classes + "\"";
    if (line.upright) text += " transform=\"rotate(-90 " + pair(line.at) + ")\"";
    return text + ">" + escaped(line.text) + "</text>\n";
}

/// "device-0123456789ab": a name that ids may bear, the same for the same subject, used once.
std::string group_id(const Fragment& fragment, std::set<std::string>& used) {
    if (fragment.subject.empty()) return {};
    auto id = fragment.subject;
    std::ranges::replace_if(
        id, [](char c) { return c == ':' || c == '/' || c == ' '; }, '-');
    return used.insert(id).second ? escaped(id) : std::string{};
}

}  // namespace svg_detail

std::string svg_page(const PagePart& page) {
    using namespace svg_detail;
    const auto width = mm(page.width), height = mm(page.height);
    std::string text =
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + width +
        "mm\" height=\"" + height + "mm\" viewBox=\"0 0 " + width + " " + height + "\">\n";
    text += "<title>" + escaped(page.title) + "</title>\n<style>" + std::string(svg_style_sheet()) + "</style>\n";
    text += "<path style=\"fill:#fff;stroke:none\" d=\"M0 0H" + width + "V" + height + "H0Z\"/>\n";
    std::set<std::string> used;
    for (const Fragment& fragment : page.fragments) {
        if (fragment.shapes.empty()) continue;
        const auto id = group_id(fragment, used);
        text += id.empty() ? "<g>\n" : "<g id=\"" + id + "\">\n";
        for (const Shape& shape : fragment.shapes)
            text += std::visit([](const auto& each) { return drawn(each); }, shape);
        text += "</g>\n";
    }
    return text + "</svg>\n";
}

base::Result<std::vector<OutputFile>> write_svg_files(std::span<const Content> contents, const Stamp&) {
    std::vector<OutputFile> files;
    std::set<std::string> used;
    for (const Content& content : contents)
        for (const Part& part : content.parts)
            if (const auto* page = std::get_if<PagePart>(&part))
                files.push_back({file_name(content.name + "-" + page->name, ".svg", used), svg_page(*page)});
    return files;
}

}  // namespace streamwright::deliver
