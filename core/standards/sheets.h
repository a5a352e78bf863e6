// Drawing sheets: sizes (ISO 216), margins and grid (ISO 5457), title block fields (ISO 7200).
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"

namespace streamwright::standards {

/// Trimmed size of A0 to A4, the longer side first.
struct PaperSides {
    base::Length longer, shorter;
};
PaperSides iso_a(int number);

inline constexpr base::Length filing_margin = base::Length::from_count(20000);  // left, ISO 5457
inline constexpr base::Length other_margin = base::Length::from_count(10000);
inline constexpr base::Length grid_field = base::Length::from_count(50000);
inline constexpr base::Length title_block_width = base::Length::from_count(180000);

Citation paper_source();
Citation sheet_source();
Citation title_block_source();

}  // namespace streamwright::standards
