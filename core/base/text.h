// Sentences made late: findings and labels carry a pattern and typed values; words are made when shown,
// in the reader's language, units and with the names of that moment.
#pragma once

#include "core/base/rate.h"
#include "core/base/units.h"

#include <functional>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

namespace streamwright::base {

/// A reference to a row ("device:0123456789ab"), replaced by its present name when shown.
struct Ref {
    std::string text;
    friend auto operator<=>(const Ref&, const Ref&) = default;
};

/// A percentage in tenths ("104.0" is 1040).
struct Percent {
    std::int64_t tenths = 0;
    friend auto operator<=>(const Percent&, const Percent&) = default;
};

using Value = std::variant<std::string, std::int64_t, BitRate, Length, Power, Loss, Temperature, Duration, Percent, Ref,
                           std::vector<Ref>>;

struct Text {
    std::string pattern;  // English, places %1 to %9
    std::vector<Value> values;
    friend bool operator==(const Text&, const Text&) = default;
};

/// What a reader needs to make words; default is plain English, metric, ids as names.
struct Phrasebook {
    std::function<std::string(std::string_view)> translate;  // English pattern to pattern
    std::function<std::string(const Ref&)> name;             // row to its present name
    NumberStyle numbers;
};

std::string print(const Value& value, const Phrasebook& book);
std::string fill(const Text& text, const Phrasebook& book);

}  // namespace streamwright::base

/// Marks an English pattern for translation; the text itself is unchanged.
#define STREAMWRIGHT_TEXT(text) text
