// Drawing sheets: ISO 216 sizes, the borders and grid of ISO 5457, the title block fields of ISO 7200.
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"

#include <span>
#include <string_view>

namespace streamwright::standards {

enum class SheetSize { a0, a1, a2, a3, a4 };

/// A0 to A3 lie on the long side, A4 stands (ISO 5457 section 4.1).
struct Sheet {
    SheetSize size;
    std::string_view name;
    base::Length width, height;
    int columns, rows;  // fields of the grid reference (Table 2)
};
std::span<const Sheet> sheets();
const Sheet& sheet(SheetSize size);

inline constexpr base::Length filing_border = base::Length::from_count(20'000);  // left, the frame included
inline constexpr base::Length other_border = base::Length::from_count(10'000);
inline constexpr base::Length frame_line = base::Length::from_count(700);
inline constexpr base::Length grid_line = base::Length::from_count(350);
/// Fields are this long from the centring marks outwards; the end fields take what remains.
inline constexpr base::Length grid_field = base::Length::from_count(50'000);
inline constexpr Citation sheet_source{"ISO", "5457:1999", "Tables 1 and 2"};

base::Length drawing_width(const Sheet& sheet);
base::Length drawing_height(const Sheet& sheet);

/// Letters of the grid from the top, I and O left out: 0 is A, 8 is J.
char grid_letter(int row);

inline constexpr base::Length title_block_width = base::Length::from_count(180'000);

struct TitleField {
    std::string_view name;
    bool mandatory;
    int characters;  // recommended most; 0: not stated
};
std::span<const TitleField> title_fields();
inline constexpr Citation title_block_source{"ISO", "7200:2004", "Tables 1 to 3"};

}  // namespace streamwright::standards
