#include "core/standards/sheets.h"

#include <array>

namespace streamwright::standards {

namespace sheet_table {

using namespace base::literals;

constexpr std::array rows{
    Sheet{SheetSize::a0, "A0", 1189_mm, 841_mm, 24, 16}, Sheet{SheetSize::a1, "A1", 841_mm, 594_mm, 16, 12},
    Sheet{SheetSize::a2, "A2", 594_mm, 420_mm, 12, 8},   Sheet{SheetSize::a3, "A3", 420_mm, 297_mm, 8, 6},
    Sheet{SheetSize::a4, "A4", 210_mm, 297_mm, 4, 6},
};

/// Lengths beyond those of the identification number, title and creator are from memory.
constexpr std::array fields{
    TitleField{"legal owner", true, 0},
    TitleField{"identification number", true, 16},
    TitleField{"date of issue", true, 10},
    TitleField{"segment/sheet number", true, 4},
    TitleField{"title", true, 25},
    TitleField{"approval person", true, 20},
    TitleField{"creator", true, 20},
    TitleField{"document type", true, 30},
    TitleField{"revision index", false, 2},
    TitleField{"number of sheets", false, 4},
    TitleField{"language code", false, 4},
    TitleField{"supplementary title", false, 25},
    TitleField{"responsible department", false, 10},
    TitleField{"technical reference", false, 20},
    TitleField{"classification", false, 0},
    TitleField{"document status", false, 20},
    TitleField{"page number", false, 4},
    TitleField{"number of pages", false, 4},
    TitleField{"paper size", false, 4},
};

}  // namespace sheet_table

std::span<const Sheet> sheets() { return sheet_table::rows; }

const Sheet& sheet(SheetSize size) { return sheet_table::rows[static_cast<std::size_t>(size)]; }

base::Length drawing_width(const Sheet& sheet) { return sheet.width - filing_border - other_border; }

base::Length drawing_height(const Sheet& sheet) { return sheet.height - other_border * 2; }

char grid_letter(int row) {
    constexpr std::string_view letters = "ABCDEFGHJKLMNPQRSTUVWXYZ";
    return letters[static_cast<std::size_t>(row) % letters.size()];
}

std::span<const TitleField> title_fields() { return sheet_table::fields; }

}  // namespace streamwright::standards
