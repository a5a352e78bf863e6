// The quick way to worst cases, for plain VLANs: a tree, a querier that every bridge hears from the port toward it,
// bridges that all snoop and do not drop unknown groups, groups all different. There a stream behind an arc comes to it
// as soon as any input beyond asks: of inputs and streams that go together, the heaviest streams, as many as inputs.
#pragma once

#include "core/analysis/facts/worst_input.h"

#include <vector>

namespace streamwright::analysis {

class WorstFamilies {
public:
    WorstFamilies(const WorstInput& input, const StreamClasses& classes, RateTable& rates);

    /// Whether this way answers for the arc.
    bool answers(int arc) const;
    /// Adds to what is there unasked.
    void judge(int arc, std::vector<std::pair<VlanIndex, ArcSides>> sides, ArcWorst& worst);
    int count_inputs_beyond(int arc, const std::vector<std::pair<VlanIndex, ArcSides>>& sides) const;

private:
    /// A decoder input where it meets a VLAN.
    struct Place {
        int position = 0;  // of its bridge in the order of the VLAN's tree
        int leaf_arc = -1;
        int slot = 0;
    };
    /// Streams and inputs of one VLAN that go together: any of the inputs shows any of the streams.
    struct Family {
        std::vector<int> by_plain, by_tagged;  // streams by falling rate
        std::vector<Place> places;             // by position, leaf, slot
    };
    void find_families();
    void add_places(VlanIndex vlan);
    bool is_plain(VlanIndex vlan, const StreamClasses& classes) const;
    void count_sources();
    void check_one_vlan_each();
    void fill_families();
    int position_of(int stream, const TreeOrder& order) const;
    bool can_cross(int stream, int arc, const ArcSides& sides, const TreeOrder& order) const;
    bool any_candidate(int arc, VlanIndex vlan, const ArcSides& sides) const;
    void add_family(const Family& family, int arc, VlanIndex vlan, const ArcSides& sides, ArcWorst& worst) const;
    template <class F>
    void each_place_beyond(const std::vector<Place>& list, int arc, const ArcSides& sides, F&& f) const;

    const WorstInput& input_;
    RateTable& rates_;
    std::vector<std::vector<Place>> places_;              // per VLAN
    std::vector<std::vector<int>> sources_before_;        // per VLAN, per position + 1: streams that start before it
    std::vector<int> family_of_slot_, family_of_stream_;  // per kind
    int family_count_ = 0;
    bool families_ = true;                      // kinds fall into families, and each input is in one VLAN
    std::vector<bool> plain_;                   // per VLAN
    std::vector<std::vector<Family>> in_vlan_;  // per VLAN, per family
    std::vector<int> idle_mark_;                // per stream: the arc it was last seen idle on
};

}  // namespace streamwright::analysis
