#include "app/cli/commands.h"

#include <array>

namespace streamwright::app {

std::span<const Verb> all_commands() {
    static constexpr std::array verbs{
        Verb{"check", "Check a design and print its findings"},
        Verb{"deliver", "Write the design's documents to a folder"},
        Verb{"loads", "Print what every direction of every network link carries"},
    };
    return verbs;
}

}  // namespace streamwright::app
