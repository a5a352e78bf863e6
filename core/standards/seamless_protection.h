// Seamless protection: the same packets over two networks, and a receiver that takes whichever comes first. How far
// apart the two may come is the class of the receiver (SMPTE ST 2022-7).
#pragma once

#include "core/base/enum_text.h"
#include "core/base/units.h"
#include "core/standards/citation.h"

namespace streamwright::standards {

enum class SkewClass { low, moderate, high, ultra_low };

/// Most that the two ways may differ by.
base::Duration path_differential(SkewClass of);
Citation path_differential_source(SkewClass of);

}  // namespace streamwright::standards

template <>
struct streamwright::base::EnumText<streamwright::standards::SkewClass> {
    using E = streamwright::standards::SkewClass;
    static constexpr std::array<std::pair<E, std::string_view>, 4> names{
        {{E::low, "A"}, {E::moderate, "B"}, {E::high, "C"}, {E::ultra_low, "D"}}};
};
