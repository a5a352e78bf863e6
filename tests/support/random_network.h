// Random networks for tests of failures: switches of several kinds, stacks, groups of cables, chains, cables without a
// switch, VLANs, one querier or several or none, presets, twins, ducts, a UPS. The same seed gives the same design.
#pragma once

#include "core/model/design.h"

namespace streamwright::test {

/// Anything that can be drawn.
model::Design random_network(unsigned seed);
/// Switches in one VLAN that do not snoop; every encoder and decoder on one cable; one preset.
model::Design random_plain_network(unsigned seed);

}  // namespace streamwright::test
