// The sheets of the Schematic as pages: frame, drawing, legend, open findings, revisions, title block.
#include "core/deliver/documents/all_documents.h"
#include "core/deliver/documents/words.h"
#include "core/deliver/drawing/paper.h"
#include "core/deliver/drawing/schematic_fragments.h"
#include "core/deliver/drawing/shapes.h"
#include "core/deliver/sheet_size.h"

namespace streamwright::deliver {

namespace sheets_detail {

using base::Length;
using namespace base::literals;
namespace measure = layout::measure;

std::string two_digits(int number) {
    auto text = std::to_string(number);
    return text.size() < 2 ? "0" + text : text;
}

Fragment heading(const model::Sheet& sheet) {
    const auto frame = sheet_size(sheet.paper).frame;
    auto words = sheet.title;
    if (!sheet.supplement.empty()) words += (words.empty() ? "" : ": ") + sheet.supplement;
    Fragment fragment;
    fragment.shapes.emplace_back(bold_line(
        moved(frame.at, 6_mm, 10_mm),
        layout::elided(words, frame.width - 12_mm, lettering::title, layout::Weight::bold), lettering::title));
    fragment.bounds = bounds_of(fragment.shapes);
    return fragment;
}

Fragment block(const Source& source, const model::Sheet& sheet) {
    auto fields = title_fields(source.design);
    fields.document_type = "Signal flow drawing";
    if (!sheet.title.empty()) fields.title = sheet.title;
    fields.supplement = sheet.supplement;
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

struct OpenFinding {
    SheetPoint at;
    std::string sentence;
};

/// The mark of a finding stands where its badge would.
std::optional<SheetPoint> mark_spot(const Scene& scene, const analysis::Finding& finding) {
    if (finding.subjects.empty()) return std::nullopt;
    const auto badge = badge_fragment(scene, analysis::subject_text(finding.subjects.front()), finding.severity, 1);
    if (badge.shapes.empty()) return std::nullopt;
    return SheetPoint{badge.bounds.at.x + badge.bounds.width / 2, badge.bounds.at.y + badge.bounds.height / 2};
}

std::vector<OpenFinding> open_findings(const Source& source, const Scene& scene) {
    std::vector<OpenFinding> open;
    for (const auto& reported : source.findings) {
        if (reported.waiver && !reported.waiver_outdated) continue;
        if (reported.finding.severity == analysis::Severity::advice) continue;
        if (const auto at = mark_spot(scene, reported.finding))
            open.push_back({*at, analysis::sentence(reported.finding, source.book)});
    }
    return open;
}

void draw_ring(std::vector<Shape>& shapes, SheetPoint at, int number) {
    shapes.emplace_back(circle(at, 2200_um, Role::tag_ground, true));
    shapes.emplace_back(circle(at, 2200_um, Role::rule_fine, false));
    shapes.emplace_back(bold_line(moved(at, {}, 1_mm), std::to_string(number), 2750_um, Role::text, Anchor::middle));
}

/// Rings on the drawing; findings at one place share a ring with the first one's number.
Fragment rings(const std::vector<OpenFinding>& open) {
    Fragment fragment;
    for (std::size_t i = 0; i < open.size(); ++i) {
        const auto same = std::ranges::count_if(open.begin(), open.begin() + static_cast<std::ptrdiff_t>(i),
                                                [&](const OpenFinding& o) { return o.at == open[i].at; });
        draw_ring(fragment.shapes, moved(open[i].at, same * 5_mm, {}), static_cast<int>(i) + 1);
    }
    fragment.bounds = bounds_of(fragment.shapes);
    return fragment;
}

/// Notes with numbered rings in a column; what does not fit is in the findings list.
Fragment notes(SheetPoint at, Length width, Length height, const std::vector<OpenFinding>& open) {
    Fragment fragment;
    auto& shapes = fragment.shapes;
    shapes.emplace_back(bold_line(moved(at, {}, 4_mm), "Notes", lettering::normal));
    auto row = moved(at, {}, 10_mm);
    const auto last = at.y + height;
    for (std::size_t i = 0; i < open.size(); ++i) {
        const auto lines = wrapped(open[i].sentence, width - 8_mm, lettering::small, layout::Weight::normal);
        const auto needs = static_cast<std::int64_t>(lines.size() + (i + 1 < open.size() ? 1 : 0)) * lettering::pitch;
        if (row.y + needs > last) {
            shapes.emplace_back(text_line(row, "and " + std::to_string(open.size() - i) + " more in the findings list",
                                          lettering::small));
            break;
        }
        draw_ring(shapes, moved(row, 2500_um, -1200_um), static_cast<int>(i) + 1);
        for (const auto& line : lines) {
            shapes.emplace_back(text_line(moved(row, 7_mm, {}), line, lettering::small));
            row.y += lettering::pitch;
        }
        row.y += 500_um;
    }
    if (open.empty())
        shapes.emplace_back(text_line(row, "Every cable carries its tag at both ends.", lettering::small));
    fragment.bounds = bounds_of(shapes);
    return fragment;
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
    if (!is_taken(drawing, notes_box)) fragments.push_back(notes(notes_box.at, width, title_block_height, open));
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
    const auto open = open_findings(source, scene);
    page.fragments.push_back(rings(open));
    add_margin_notes(page.fragments, sheet, drawing, open);
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
