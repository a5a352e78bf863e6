// The network without some of its parts. What is taken out keeps its place in the lists, so that links, arcs and
// bridges of both states carry the same numbers; to every fact it is as if the rows were not in the design.
#pragma once

#include "core/graph/network_graph.h"

#include <vector>

namespace streamwright::graph {

/// Indices into Wiring::devices and Wiring::cables, sorted.
struct Lost {
    std::vector<int> devices, cables;
    bool empty() const { return devices.empty() && cables.empty(); }
    friend bool operator==(const Lost&, const Lost&) = default;
};

class NetworkCut {
public:
    NetworkCut(const Wiring& wiring, const Runs& runs, const NetworkGraph& whole);

    /// Takes the parts out of the whole network; what was taken out before is back.
    void apply(const Lost& lost);

    const NetworkGraph& network() const { return network_; }
    /// Of the last cut. Links that lost a run, though others of their group may stand; leaves that are gone.
    const std::vector<int>& links() const { return links_; }
    const std::vector<int>& leaves() const { return leaves_; }
    /// Devices that lost a leaf, or are lost.
    const std::vector<int>& devices() const { return devices_; }
    bool lost_direct() const { return lost_direct_; }
    bool leaf_gone(int leaf) const { return leaf_gone_[static_cast<std::size_t>(leaf)]; }
    bool arc_gone(int arc) const;

private:
    static std::size_t at(int index) { return static_cast<std::size_t>(index); }
    enum class Kind { nothing, link, leaf, direct };
    struct Place {
        Kind kind = Kind::nothing;
        int index = 0;
    };
    void restore();
    void take_run(int run);
    void take_device(int device);

    const Wiring& wiring_;
    const Runs& runs_;
    const NetworkGraph& whole_;
    NetworkGraph network_;
    std::vector<Place> place_of_run_;
    std::vector<bool> leaf_gone_;
    std::vector<int> links_, leaves_, devices_, bridges_;
    bool lost_direct_ = false;
};

}  // namespace streamwright::graph
