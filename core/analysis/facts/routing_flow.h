// A flow of greatest value from one place to another through pipes of whole capacities, by paths of falling value.
#pragma once

#include "core/analysis/facts/routing_choice.h"

#include <vector>

namespace streamwright::analysis {

class RoutingFlow {
public:
    explicit RoutingFlow(int nodes) : pipes_of_(static_cast<std::size_t>(nodes)) {}
    /// Returns its number, for `through`.
    int add_pipe(int from, int to, int capacity, Weight value = 0);
    /// Sends on while a path adds value; returns the value of all.
    Weight send(int from, int to);
    int through(int pipe) const { return pipes_[static_cast<std::size_t>(pipe) * 2 + 1].room; }

private:
    struct Pipe {
        int to = 0, room = 0;
        Weight value = 0;
    };
    bool find_path(int from, int to);

    std::vector<Pipe> pipes_;  // each with its way back beside it
    std::vector<std::vector<int>> pipes_of_;
    std::vector<Weight> worth_;
    std::vector<int> came_;
    std::vector<char> reached_, waiting_;
    std::vector<int> open_;
};

}  // namespace streamwright::analysis
