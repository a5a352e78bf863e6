// What makes a drawing a sheet: frame with grid reference (ISO 5457), title block (ISO 7200), revisions, legend.
#pragma once

#include "core/deliver/drawing/fragment.h"
#include "core/model/design.h"

#include <string>
#include <vector>

namespace streamwright::deliver {

/// Type sizes of paper, as em of the bundled face, whose capitals are 0.75 em: capitals of 2.5, 3.5 and 5 mm (ISO
/// 3098).
namespace lettering {
inline constexpr base::Length small = base::Length::from_count(3'333), normal = base::Length::from_count(4'667),
                              title = base::Length::from_count(6'667), pitch = base::Length::from_count(4'200);
}

inline constexpr base::Length title_block_width = base::Length::from_count(180'000),
                              title_block_height = base::Length::from_count(44'000);

/// The fields of ISO 7200 as they stand in the block.
struct TitleFields {
    std::string department, reference, document_type, status, created_by, approved_by, title, supplement, number, scale,
        owner, revision, date, language, sheet;
};

/// Fields from the settings and the newest revision; title, supplement, type and sheet are the caller's.
TitleFields title_fields(const model::Design& design);

Fragment sheet_frame(model::PaperSize paper);
/// The words at the head of the sheet, cut where the frame ends.
Fragment sheet_heading(model::PaperSize paper, const std::string& words);
/// "03": sheets are counted in two digits.
std::string two_digits(int number);
/// Lower right corner at the corner of the drawing frame.
Fragment title_block(model::PaperSize paper, const TitleFields& fields);
/// Revisions, newest on top, standing on the title block; at most five.
Fragment revision_table(model::PaperSize paper, const model::Design& design);

/// Signals that occur, and how to read the lugs; a block at most 44 mm high.
Fragment legend(SheetPoint at, const std::vector<catalogue::Signal>& signals);

/// The text in lines that fit the width, broken between words.
std::vector<std::string> wrapped(const std::string& text, base::Length width, base::Length em, layout::Weight weight);

}  // namespace streamwright::deliver
