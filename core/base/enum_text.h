// One place to name the values of an enumeration, used by files, messages and command line alike.
#pragma once

#include <array>
#include <optional>
#include <string_view>
#include <utility>

namespace streamwright::base {

/// Specialise with: static constexpr std::array<std::pair<E, std::string_view>, N> names.
template <class E>
struct EnumText;

template <class E>
constexpr std::string_view enum_text(E value) {
    for (const auto& [each, name] : EnumText<E>::names)
        if (each == value) return name;
    return {};
}

template <class E>
constexpr std::optional<E> parse_enum(std::string_view text) {
    for (const auto& [each, name] : EnumText<E>::names)
        if (name == text) return each;
    return std::nullopt;
}

}  // namespace streamwright::base
