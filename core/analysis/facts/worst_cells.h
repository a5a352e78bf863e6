// Decoder inputs that are alike: of one kind, and at one bridge in each VLAN. At the end of a leaf's arc its device
// stands apart from the others at its bridge.
#pragma once

#include "core/analysis/facts/crossing.h"
#include "core/analysis/facts/worst_input.h"

#include <map>
#include <utility>
#include <vector>

namespace streamwright::analysis {

struct WorstCell {
    int kind = 0;
    std::vector<int> sites;  // per VLAN: where it hears the VLAN (CrossingReader); -1: nowhere
    std::vector<int> slots;  // of the compatibility
};

/// Streams that go together, as inputs see them: which kinds of inputs can ask for each of their groups.
struct Askable {
    VlanIndex vlan = 0;
    std::vector<std::vector<bool>> kinds;  // per group, per kind of input
    int groups() const { return static_cast<int>(kinds.size()); }
};

/// The cells as one arc has them.
class ArcCells {
public:
    ArcCells(std::vector<WorstCell> cells, const std::vector<CrossingReader>& readers);
    const std::vector<WorstCell>& cells() const { return cells_; }
    /// At the device at the end of the leaf's arc.
    bool has_inputs_here(VlanIndex vlan) const { return !at_site_[static_cast<std::size_t>(vlan)].back().empty(); }
    /// Sites (times groups) that hold an input which can ask.
    SiteSet occupied(const Askable& streams) const;
    /// Cells an input of which meets the need, sorted.
    std::vector<int> meeting(const Askable& streams, const SiteSet& need) const;
    /// A group that an input of the cell asks for to meet the need.
    int group_asked(const Askable& streams, const SiteSet& need, int cell) const;

private:
    std::vector<WorstCell> cells_;
    std::vector<std::vector<std::vector<int>>> at_site_;  // per VLAN, per site
};

class WorstCells {
public:
    WorstCells(const WorstInput& input);
    /// Per VLAN: bridges where inputs are.
    const std::vector<std::vector<bool>>& has_inputs() const { return has_inputs_; }
    /// For a link's arc, or with the device at the end of a leaf's arc apart.
    ArcCells of_arc(int arc, const std::vector<CrossingReader>& readers) const;

private:
    struct Base {
        int kind = 0;
        std::vector<int> bridges;  // per VLAN; -1: none
        std::vector<int> slots;
    };
    const WorstInput& input_;
    std::vector<Base> cells_;
    std::vector<std::vector<bool>> has_inputs_;
};

}  // namespace streamwright::analysis
