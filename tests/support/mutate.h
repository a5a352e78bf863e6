// Spoils valid text in the ways files get spoilt, and in those an attacker would try: the same for the same numbers.
#pragma once

#include <random>
#include <string>

namespace streamwright::test {

/// The text with one to four harms done to it.
std::string mutated(std::string text, std::mt19937_64& random);

}  // namespace streamwright::test
