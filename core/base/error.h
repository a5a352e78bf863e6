// Why something was refused: a pattern with numbered places, filled when shown so that it can be translated.
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace streamwright::base {

struct Error {
    std::string pattern;            // English, places %1 to %9
    std::vector<std::string> args;  // already printed values

    /// The English sentence, control characters made visible so that no terminal or log is steered by input.
    std::string english() const;
    friend bool operator==(const Error&, const Error&) = default;
};

/// Replaces %1..%9 by the arguments, once: what an argument contains is never read as a place.
std::string fill_places(std::string_view pattern, const std::vector<std::string>& args);

/// Control characters (escape sequences included) replaced by visible \xNN; valid UTF-8 kept.
std::string printable(std::string_view text);

}  // namespace streamwright::base
