// The sheets of the Schematic as pages: frame, drawing, legend, open findings, revisions, title block.
#include "core/deliver/documents/all_documents.h"
#include "core/deliver/documents/words.h"
#include "core/deliver/drawing/paper.h"
#include "core/deliver/drawing/schematic_fragments.h"
#include "core/deliver/drawing/shapes.h"
#include "core/deliver/drawing/sheet_lines.h"
#include "core/deliver/drawing/sheet_size.h"

namespace streamwright::deliver {

namespace sheets_detail {

using base::Length;
using namespace base::literals;
namespace measure = layout::measure;

Fragment heading(const model::Sheet& sheet) {
    auto words = sheet.title;
    if (!sheet.supplement.empty()) words += (words.empty() ? "" : ": ") + sheet.supplement;
    return sheet_heading(sheet.paper, words);
}

Fragment block(const Source& source, const model::Sheet& sheet) {
    auto fields = title_fields(source.design);
    fields.document_type = "Signal flow drawing";
    fields.supplement = sheet.title;
    if (!sheet.supplement.empty()) fields.supplement += (sheet.title.empty() ? "" : ": ") + sheet.supplement;
    if (fields.title.empty()) std::swap(fields.title, fields.supplement);
    if (!fields.number.empty()) fields.number += "-" + two_digits(sheet.number);
    fields.sheet = two_digits(sheet.number) + " / " + two_digits(static_cast<int>(source.design.sheets.size()));
    return title_block(sheet.paper, fields);
}

std::vector<catalogue::Signal> signals_in(const std::vector<Fragment>& fragments) {
    using catalogue::Signal;
    std::vector<Signal> found;
    for (const Signal signal : {Signal::video, Signal::extender, Signal::copper, Signal::fibre, Signal::audio,
                                Signal::usb, Signal::control, Signal::power}) {
        const bool occurs = std::ranges::any_of(fragments, [&](const Fragment& fragment) {
            return std::ranges::any_of(fragment.shapes, [&](const Shape& shape) {
                const auto* path = std::get_if<Path>(&shape);
                return path && path->role == Role::cable && path->signal == signal;
            });
        });
        if (occurs) found.push_back(signal);
    }
    return found;
}

/// Whether anything drawn reaches into a box: then the legend stays away rather than cross it.
bool is_taken(const std::vector<Fragment>& fragments, const Box& box) {
    return std::ranges::any_of(fragments, [&](const Fragment& fragment) { return fragment.bounds.meets(box); });
}

/// The open findings of one subject on the sheet.
struct OpenFinding {
    std::string subject;
    SheetPoint at;
    std::string sentence;
    int count = 1;
};

bool is_open(const analysis::Reported& reported) {
    return !(reported.waiver && !reported.waiver_outdated) && !reported.finding.subjects.empty() &&
           reported.finding.severity != analysis::Severity::advice;
}

/// Gravest first, as the report has them; further ones of a subject are counted.
std::vector<OpenFinding> open_findings(const Source& source, const Scene& scene) {
    const auto lines = drawn_lines(scene, plates_of(scene));
    std::vector<OpenFinding> open;
    for (const auto& reported : source.findings) {
        if (!is_open(reported)) continue;
        const auto subject = analysis::subject_text(reported.finding.subjects.front());
        const auto same = std::ranges::find(open, subject, &OpenFinding::subject);
        if (same != open.end())
            ++same->count;
        else if (const auto at = badge_spot(scene, subject, lines))
            open.push_back({subject, *at, analysis::sentence(reported.finding, source.book)});
    }
    for (auto& each : open)
        if (each.count > 1) each.sentence += " " + std::to_string(each.count - 1) + " more here.";
    return open;
}

void draw_ring(std::vector<Shape>& shapes, SheetPoint at, int number) {
    shapes.emplace_back(circle(at, 2200_um, Role::tag_ground, true));
    shapes.emplace_back(circle(at, 2200_um, Role::rule_fine, false));
    shapes.emplace_back(bold_line(moved(at, {}, 1_mm), std::to_string(number), 2750_um, Role::text, Anchor::middle));
}

Fragment rings(std::span<const OpenFinding> listed) {
    Fragment fragment;
    int number = 0;
    for (const auto& each : listed) draw_ring(fragment.shapes, each.at, ++number);
    fragment.bounds = bounds_of(fragment.shapes);
    return fragment;
}

struct Notes {
    Fragment fragment;
    std::size_t listed = 0;  // findings that found room
};

/// Notes with numbered rings in a column; what does not fit is in the findings list.
Notes notes(SheetPoint at, Length width, Length height, const std::vector<OpenFinding>& open) {
    Notes notes;
    auto& shapes = notes.fragment.shapes;
    shapes.emplace_back(bold_line(moved(at, {}, 4_mm), "Notes", lettering::normal));
    auto row = moved(at, {}, 10_mm);
    const auto last = at.y + height;
    for (const auto& each : open) {
        const auto lines = wrapped(each.sentence, width - 8_mm, lettering::small, layout::Weight::normal);
        const bool more = notes.listed + 1 < open.size();
        if (row.y + static_cast<std::int64_t>(lines.size() + (more ? 1 : 0)) * lettering::pitch > last) break;
        draw_ring(shapes, moved(row, 2500_um, -1200_um), static_cast<int>(++notes.listed));
        for (const auto& line : lines) {
            shapes.emplace_back(text_line(moved(row, 7_mm, {}), line, lettering::small));
            row.y += lettering::pitch;
        }
        row.y += 500_um;
    }
    if (notes.listed < open.size())
        shapes.emplace_back(
            text_line(row, "and " + std::to_string(open.size() - notes.listed) + " more subjects in the findings list",
                      lettering::small));
    if (open.empty())
        shapes.emplace_back(text_line(row, "Every cable carries its tag at both ends.", lettering::small));
    notes.fragment.bounds = bounds_of(shapes);
    return notes;
}

/// Legend and notes left of the title block, where the drawing leaves room for them.
void add_margin_notes(std::vector<Fragment>& fragments, const model::Sheet& sheet, const std::vector<Fragment>& drawing,
                      const std::vector<OpenFinding>& open) {
    const auto frame = sheet_size(sheet.paper).frame;
    if (frame.width < 380_mm) return;
    const SheetPoint corner = moved(frame.at, 5_mm, frame.height - title_block_height - 2_mm);
    const Box legend_box{corner, 112_mm, title_block_height};
    if (!is_taken(drawing, legend_box)) fragments.push_back(legend(corner, signals_in(drawing)));
    const auto width = frame.width - title_block_width - 128_mm;
    const Box notes_box{moved(corner, 118_mm, {}), width, title_block_height};
    if (is_taken(drawing, notes_box)) return;
    auto column = notes(notes_box.at, width, title_block_height, open);
    fragments.push_back(rings(std::span(open).first(column.listed)));
    fragments.push_back(std::move(column.fragment));
}

PagePart page_of(const Source& source, const model::Sheet& sheet) {
    const Scene scene{source.design, source.analysis.facts, sheet.id, source.book};
    const auto size = sheet_size(sheet.paper);
    PagePart page;
    page.name = "sheet-" + two_digits(sheet.number);
    page.title = sheet.title;
    page.width = size.width;
    page.height = size.height;
    page.fragments = {sheet_frame(sheet.paper), heading(sheet)};
    const auto drawing = schematic_fragments(scene);
    page.fragments.insert(page.fragments.end(), drawing.begin(), drawing.end());
    add_margin_notes(page.fragments, sheet, drawing, open_findings(source, scene));
    page.fragments.push_back(revision_table(sheet.paper, source.design));
    page.fragments.push_back(block(source, sheet));
    return page;
}

}  // namespace sheets_detail

Content make_schematic_sheets(const Source& source) {
    std::vector<const model::Sheet*> sheets;
    for (const auto& sheet : source.design.sheets) sheets.push_back(&sheet);
    std::ranges::stable_sort(sheets, {}, &model::Sheet::number);
    Content content{"schematic", "Schematic", {}};
    for (const auto* sheet : sheets) content.parts.emplace_back(sheets_detail::page_of(source, *sheet));
    return content;
}

}  // namespace streamwright::deliver
