// A generated campus for benchmarks and long proofs: 25 endpoints an access switch, three levels of switches, two
// streams an encoder, four presets, everything placed on sheets. The same seed gives the same design.
#pragma once

#include "core/model/design.h"

#include <cstdint>

namespace streamwright::test {

/// Whether each encoder has its source and each decoder its display, as rooms do, or the network stands alone.
enum class CampusParts { with_rooms, network_only };

model::Design campus(int endpoints, std::uint64_t seed, CampusParts parts = CampusParts::with_rooms);

}  // namespace streamwright::test
