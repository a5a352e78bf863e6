#include "core/base/nearest.h"

#include <algorithm>
#include <numeric>
#include <vector>

namespace streamwright::base {

std::size_t letters_between(std::string_view one, std::string_view other) {
    std::vector<std::size_t> row(other.size() + 1);
    std::iota(row.begin(), row.end(), std::size_t{0});
    for (std::size_t i = 0; i < one.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i + 1;
        for (std::size_t j = 0; j < other.size(); ++j) {
            const auto exchanged = diagonal + (one[i] == other[j] ? 0 : 1);
            diagonal = row[j + 1];
            row[j + 1] = std::min({row[j] + 1, row[j + 1] + 1, exchanged});
        }
    }
    return row.back();
}

std::optional<std::string_view> nearest(std::string_view word, std::span<const std::string_view> list) {
    constexpr std::size_t longest = 64;  // a longer word is no slip of the keyboard
    if (word.empty() || word.size() > longest) return std::nullopt;
    std::optional<std::string_view> best;
    std::size_t least = word.size() / 2 + 1;
    for (const auto each : list) {
        const auto distance = letters_between(word, each);
        if (distance >= least) continue;
        least = distance;
        best = each;
    }
    return best;
}

}  // namespace streamwright::base
