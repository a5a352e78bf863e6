// The advance table of the bundled face, made from the font files by resources/fonts/make_advances.py.
#pragma once

#include <array>
#include <cstdint>

namespace streamwright::layout {

struct Advance {
    char32_t code;
    std::uint16_t normal, bold;  // in font units
};

inline constexpr std::int64_t b612_units_per_em = 2000;
extern const Advance b612_missing;
extern const std::array<Advance, 592> b612_advances;  // by code

}  // namespace streamwright::layout
