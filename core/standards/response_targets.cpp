#include "core/standards/response_targets.h"

#include <array>

namespace streamwright::standards {

namespace response_targets_detail {

using namespace base::literals;

constexpr Citation practice{"human-factors practice", "", "", Standing::memory};

constexpr std::array targets{
    ResponseTarget{"conversation, one way", 150_ms, 400_ms, {"ITU-T", "G.114", ""}},
    ResponseTarget{"pointer and keyboard", 50_ms, 100_ms, practice},
    ResponseTarget{"direct view next to the presenter", 33_ms, 50_ms, practice},
    ResponseTarget{"live image of a speaker in the same room", 40_ms, 100_ms, practice},
};

}  // namespace response_targets_detail

std::span<const ResponseTarget> response_targets() { return response_targets_detail::targets; }

const ResponseTarget* response_target(std::string_view name) {
    for (const auto& target : response_targets_detail::targets)
        if (target.name == name) return &target;
    return nullptr;
}

}  // namespace streamwright::standards
