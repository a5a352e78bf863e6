// Ethernet line rates and the names of physical layers: which one a copper port of a rate uses, how many pairs it
// needs, and on what a named one runs.
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"

#include <span>
#include <string_view>

namespace streamwright::standards {

enum class PhyMedium { balanced_copper, twinax, multimode, singlemode, either_fibre };

struct EthernetPhy {
    std::string_view name;
    base::BitRate rate;
    PhyMedium medium;
    int paths;  // pairs of balanced copper; lanes of twinax; strands of fibre
    Citation source;
};

std::span<const EthernetPhy> ethernet_phys();
const EthernetPhy* ethernet_phy(std::string_view name);  // null: not known

/// The physical layer of a balanced-copper port at that rate; null where there is none.
const EthernetPhy* copper_phy(base::BitRate rate);

}  // namespace streamwright::standards
