// The word of a list that somebody most likely meant: for "did you mean" after a slip of the keyboard.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <string_view>

namespace streamwright::base {

/// How many letters must be put in, taken out or exchanged to turn one word into the other (Levenshtein).
std::size_t letters_between(std::string_view one, std::string_view other);

/// The first of the nearest; nothing where even that differs in more than half of the word's letters.
std::optional<std::string_view> nearest(std::string_view word, std::span<const std::string_view> list);

}  // namespace streamwright::base
