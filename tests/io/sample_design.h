// Designs for the tests of files: one with every field of every row filled, and random ones.
#pragma once

#include "core/model/design.h"

#include <cstdint>

namespace streamwright::test {

/// Every field of every row type differs from its usual value.
model::Design full_design();
/// So many random edits from nothing.
model::Design random_design(std::uint64_t seed, int edits);

}  // namespace streamwright::test
