// The title block with the fields of ISO 7200, 180 by 44 mm, and the revisions that stand on it.
#include "core/deliver/drawing/paper.h"
#include "core/deliver/drawing/shapes.h"
#include "core/deliver/drawing/sheet_size.h"

#include <algorithm>

namespace streamwright::deliver {

namespace block_detail {

using base::Length;
using layout::Weight;
using namespace base::literals;

constexpr Length row = 11_mm, inset = 1500_um, revision_row = 5500_um;
constexpr int most_revisions = 5;

struct Field {
    int left, right, top, bottom;  // mm and rows
    const char* name;
    std::string value;
    Weight weight = Weight::normal;
    Length em = lettering::small;
};

std::vector<Field> fields_of(const TitleFields& f) {
    return {{0, 48, 0, 1, "Responsible department", f.department},
            {48, 94, 0, 1, "Technical reference", f.reference},
            {94, 140, 0, 1, "Document type", f.document_type},
            {140, 180, 0, 1, "Document status", f.status},
            {0, 48, 1, 2, "Created by", f.created_by},
            {0, 48, 2, 3, "Approved by", f.approved_by},
            {140, 180, 1, 2, "Identification number", f.number, Weight::bold, lettering::normal},
            {140, 180, 2, 3, "Scale", f.scale},
            {0, 94, 3, 4, "Legal owner", f.owner, Weight::bold},
            {94, 108, 3, 4, "Rev.", f.revision, Weight::bold, lettering::normal},
            {108, 140, 3, 4, "Date of issue", f.date},
            {140, 152, 3, 4, "Lang.", f.language},
            {152, 180, 3, 4, "Sheet", f.sheet, Weight::bold, lettering::normal}};
}

/// The largest lettering of ISO 3098 in use, up to the one wanted, in which the words fit; what fits in none is cut.
Length fitting(const std::string& words, Length room, Length wanted, Weight weight) {
    for (const auto em : {lettering::title, lettering::normal, lettering::small})
        if (em <= wanted && layout::text_width(words, em, weight) <= room) return em;
    return lettering::small;
}

void draw_field(std::vector<Shape>& shapes, SheetPoint corner, const Field& field) {
    const Box box{moved(corner, field.left * 1_mm, field.top * row), (field.right - field.left) * 1_mm,
                  (field.bottom - field.top) * row};
    shapes.emplace_back(outline(box, Role::rule_fine));
    const auto room = box.width - 2 * inset;
    shapes.emplace_back(text_line(moved(box.at, inset, 4_mm),
                                  layout::elided(field.name, room, lettering::small, Weight::normal), lettering::small,
                                  Role::text_muted));
    const auto em = fitting(field.value, room, field.em, field.weight);
    shapes.emplace_back(text_line(moved(box.at, inset, row - 1700_um),
                                  layout::elided(field.value, room, em, field.weight), em, Role::text, Anchor::left,
                                  field.weight));
}

void draw_title(std::vector<Shape>& shapes, SheetPoint corner, const TitleFields& fields) {
    const Box box{moved(corner, 48_mm, row), 92_mm, 2 * row};
    const auto room = box.width - 2 * inset;
    shapes.emplace_back(outline(box, Role::rule_fine));
    shapes.emplace_back(
        text_line(moved(box.at, inset, 4_mm), "Title, supplementary title", lettering::small, Role::text_muted));
    const auto em = fitting(fields.title, room, lettering::title, Weight::bold);
    shapes.emplace_back(
        bold_line(moved(box.at, inset, 12_mm), layout::elided(fields.title, room, em, Weight::bold), em));
    shapes.emplace_back(text_line(moved(box.at, inset, 19_mm),
                                  layout::elided(fields.supplement, room, lettering::normal, Weight::normal),
                                  lettering::normal));
}

SheetPoint lower_right(model::PaperSize paper) {
    const auto frame = sheet_size(paper).frame;
    return moved(frame.at, frame.width, frame.height);
}

std::vector<model::Revision> newest_first(const model::Design& design) {
    std::vector<model::Revision> revisions;
    for (const auto& revision : design.revisions) revisions.push_back(revision);
    std::ranges::stable_sort(revisions, std::greater{}, &model::Revision::number);
    return revisions;
}

struct RevisionCell {
    int left, right;
    std::string text;
};

void draw_revision_row(std::vector<Shape>& shapes, SheetPoint at, const std::vector<RevisionCell>& cells,
                       Weight weight) {
    for (const auto& [left, right, text] : cells) {
        const Box box{moved(at, left * 1_mm, {}), (right - left) * 1_mm, revision_row};
        shapes.emplace_back(outline(box, Role::rule_hair));
        shapes.emplace_back(text_line(moved(box.at, inset, 4_mm),
                                      layout::elided(text, box.width - 2 * inset, lettering::small, weight),
                                      lettering::small, Role::text, Anchor::left, weight));
    }
}

}  // namespace block_detail

TitleFields title_fields(const model::Design& design) {
    const auto& settings = design.settings();
    TitleFields fields;
    fields.department = settings.department;
    fields.reference = settings.reference;
    fields.status = settings.status.empty() ? "in preparation" : settings.status;
    fields.created_by = settings.created_by;
    fields.approved_by = settings.approved_by.empty() ? "not yet approved" : settings.approved_by;
    fields.title = settings.title;
    fields.number = settings.number;
    fields.scale = "none";
    fields.owner = settings.owner;
    fields.language = "en";
    const auto revisions = block_detail::newest_first(design);
    if (!revisions.empty()) {
        fields.revision = revisions.front().letter;
        fields.date = revisions.front().date;
    }
    return fields;
}

Fragment title_block(model::PaperSize paper, const TitleFields& fields) {
    using namespace block_detail;
    const auto corner = moved(lower_right(paper), -title_block_width, -title_block_height);
    Fragment fragment;
    for (const Field& field : fields_of(fields)) draw_field(fragment.shapes, corner, field);
    draw_title(fragment.shapes, corner, fields);
    const Box block{corner, title_block_width, title_block_height};
    fragment.shapes.emplace_back(outline(block, Role::rule_heavy));
    fragment.bounds = block;
    return fragment;
}

Fragment revision_table(model::PaperSize paper, const model::Design& design) {
    using namespace block_detail;
    Fragment fragment;
    const auto revisions = newest_first(design);
    const auto shown = std::min<int>(most_revisions, static_cast<int>(revisions.size()));
    if (shown == 0) return fragment;
    const auto height = (shown + 1) * revision_row;
    const auto corner = moved(lower_right(paper), -title_block_width, -title_block_height - height);
    draw_revision_row(fragment.shapes, corner,
                      {{0, 12, "Rev."}, {12, 38, "Date"}, {38, 156, "What changed"}, {156, 180, "By"}}, Weight::bold);
    for (int i = 0; i < shown; ++i) {
        const auto& revision = revisions[static_cast<std::size_t>(i)];
        draw_revision_row(
            fragment.shapes, moved(corner, {}, (i + 1) * revision_row),
            {{0, 12, revision.letter}, {12, 38, revision.date}, {38, 156, revision.what}, {156, 180, revision.by}},
            Weight::normal);
    }
    const Box table{corner, title_block_width, height};
    fragment.shapes.emplace_back(outline(table, Role::rule_medium));
    fragment.bounds = table;
    return fragment;
}

}  // namespace streamwright::deliver
