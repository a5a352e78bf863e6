// Prompt. The speed of every link member and leaf: the highest that both ports, their transceivers and the cable all
// support. None in common: no link, and a reason.
#pragma once

#include "core/base/units.h"
#include "core/graph/network_graph.h"

#include <optional>
#include <string>
#include <vector>

namespace streamwright::analysis {

enum class NoLink { none, no_common_rate, module_missing, module_misfit, medium_misfit, wavelength_misfit, disabled };

struct RunSpeed {
    std::optional<base::BitRate> rate;  // none: no link
    NoLink reason = NoLink::none;
    std::string phy;  // "10GBASE-SR"; empty where unknown
    friend bool operator==(const RunSpeed&, const RunSpeed&) = default;
};

struct LinkCapacity {
    std::vector<RunSpeed> runs;                      // per run of graph::Runs; for runs that are not network: no link
    std::vector<std::optional<base::BitRate>> arcs;  // per arc of the network; groups add their members
    friend bool operator==(const LinkCapacity&, const LinkCapacity&) = default;
};

LinkCapacity find_link_capacity(const graph::Wiring&, const graph::Runs&, const graph::NetworkGraph&);

}  // namespace streamwright::analysis
