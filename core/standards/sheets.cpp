#include "core/standards/sheets.h"

#include <algorithm>
#include <array>

namespace streamwright::standards {

PaperSides iso_a(int number) {
    using namespace base::literals;
    static constexpr std::array sides{PaperSides{1189_mm, 841_mm}, PaperSides{841_mm, 594_mm},
                                      PaperSides{594_mm, 420_mm}, PaperSides{420_mm, 297_mm},
                                      PaperSides{297_mm, 210_mm}};
    return sides[static_cast<std::size_t>(std::clamp(number, 0, 4))];
}

Citation paper_source() { return {"ISO", "216", ""}; }
Citation sheet_source() { return {"ISO", "5457", ""}; }
Citation title_block_source() { return {"ISO", "7200", ""}; }

}  // namespace streamwright::standards
