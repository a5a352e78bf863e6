// The general way to worst cases, for any mode of switches: what every stream needs to come to an arc (crossing), as a
// problem of choice over inputs that are alike (routing_choice), and its answer as a routing.
#pragma once

#include "core/analysis/facts/routing_choice.h"
#include "core/analysis/facts/stream_walk.h"
#include "core/analysis/facts/worst_cells.h"

#include <map>
#include <optional>
#include <vector>

namespace streamwright::analysis {

class WorstGeneral {
public:
    WorstGeneral(const WorstInput& input, const StreamClasses& classes, RateTable& rates);
    /// Adds to what is there unasked.
    /// `most`: pictures at most that inputs beyond the arc bring.
    void judge(int arc, ArcWorst& worst, std::optional<int> most);

private:
    /// What brings some streams, and keeps others away.
    struct Way {
        NeedList needs;
        std::vector<int> adds, loses;  // `loses`: there unasked, but no more
        Weight gain = 0;
    };
    /// A demand of the problem with what it stands for: streams of one kind and one need, each by itself, or a class.
    struct Asked {
        Askable askable;
        std::vector<std::vector<int>> of_group;  // of a class: the streams of each group
        std::vector<int> like;                   // else: by falling rate
        std::vector<Way> ways;
        Weight unexplored = 0;
    };
    /// Streams of a class that come to the arc under one condition.
    struct Unit {
        Crossing crossing;
        std::vector<int> streams;
        Weight weight = 0;
        bool unasked() const { return crossing.needs.empty(); }
    };
    struct Problem {
        int arc;
        ArcCells cells;
        RoutingProblem routing;
        std::map<std::vector<int>, int> need_ids;
        std::map<std::pair<VlanIndex, int>, SiteSet> occupied;  // by kind of stream
        std::map<std::pair<VlanIndex, GroupView>, CrossingReader::Behind> behind;
        std::vector<Asked> asked;
    };
    void add_alone(Problem& p, VlanIndex vlan);
    void add_paths(Problem& p, VlanIndex vlan);
    void add_like(Problem& p, VlanIndex vlan, Crossing crossing, std::vector<int> streams);
    bool shares_with_one_twin(const std::vector<int>& streams) const;
    void add_class(Problem& p, VlanIndex vlan, const std::vector<int>& streams);
    const CrossingReader::Behind& behind(Problem& p, VlanIndex vlan, const GroupView& view) const;
    std::vector<Unit> units_of(Problem& p, const Asked& asked, const std::vector<int>& streams);
    static void combine(const std::vector<Unit>& units, Asked& asked);
    void add_tried(Problem& p, VlanIndex vlan, const std::vector<int>& streams);
    void try_asking(const Problem& p, const std::vector<int>& streams, int element, Asked& asked);
    static int need_id(Problem& p, std::vector<int> cells);
    void keep_heaviest(const Problem& p, const RoutingDemand& demand, std::vector<int>& streams) const;
    bool count_beyond(Problem& p) const;
    void pose(Problem& p, Asked asked);
    void read(const Problem& p, const RoutingChoice& choice, ArcWorst& worst);
    std::vector<bool> kinds_showing(const std::vector<int>& streams) const;
    Asked class_of(VlanIndex vlan, const std::vector<int>& streams) const;
    Weight parts(const Problem& p, int stream) const;
    bool is_idle(int arc, int stream) const;

    const WorstInput& input_;
    const StreamClasses& classes_;
    RateTable& rates_;
    WorstCells cells_;
    std::vector<CrossingReader> readers_;  // per VLAN
    StreamWalk walk_;
    std::vector<std::vector<std::vector<int>>> sources_;  // per VLAN, per bridge: streams alone in their class
    std::size_t walks_left_ = 200'000;                    // of trials in loops, for all arcs together
    std::vector<int> idle_mark_;                          // per stream: the arc it was last seen idle on
};

}  // namespace streamwright::analysis
