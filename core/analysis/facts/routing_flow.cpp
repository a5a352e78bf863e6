#include "core/analysis/facts/routing_flow.h"

#include <algorithm>
#include <limits>

namespace streamwright::analysis {

namespace {
std::size_t flow_at(int index) { return static_cast<std::size_t>(index); }
}  // namespace

int RoutingFlow::add_pipe(int from, int to, int capacity, Weight value) {
    const int number = static_cast<int>(pipes_.size()) / 2;
    pipes_of_[flow_at(from)].push_back(2 * number);
    pipes_of_[flow_at(to)].push_back(2 * number + 1);
    pipes_.push_back({to, capacity, value});
    pipes_.push_back({from, 0, -value});
    return number;
}

/// The path of greatest value in what is left (Bellman and Ford, by a queue): there is no ring of positive value, for
/// every path sent before was the greatest.
bool RoutingFlow::find_path(int from, int to) {
    const auto count = pipes_of_.size();
    worth_.assign(count, 0);
    came_.assign(count, -1);
    reached_.assign(count, 0);
    waiting_.assign(count, 0);
    open_.assign(1, from);
    reached_[flow_at(from)] = 1;
    for (std::size_t next = 0; next < open_.size(); ++next) {
        const int node = open_[next];
        waiting_[flow_at(node)] = 0;
        for (const int index : pipes_of_[flow_at(node)]) {
            const auto& pipe = pipes_[flow_at(index)];
            if (pipe.room == 0) continue;
            const Weight worth = worth_[flow_at(node)] + pipe.value;
            if (reached_[flow_at(pipe.to)] && worth_[flow_at(pipe.to)] >= worth) continue;
            reached_[flow_at(pipe.to)] = 1;
            worth_[flow_at(pipe.to)] = worth;
            came_[flow_at(pipe.to)] = index;
            if (waiting_[flow_at(pipe.to)]) continue;
            waiting_[flow_at(pipe.to)] = 1;
            open_.push_back(pipe.to);
        }
    }
    return reached_[flow_at(to)] && worth_[flow_at(to)] > 0;
}

Weight RoutingFlow::send(int from, int to) {
    Weight total = 0;
    while (find_path(from, to)) {
        int room = std::numeric_limits<int>::max();
        const auto each_pipe = [&](auto&& f) {
            for (int node = to; node != from;) {
                const int index = came_[flow_at(node)];
                f(index);
                node = pipes_[flow_at(index ^ 1)].to;
            }
        };
        each_pipe([&](int index) { room = std::min(room, pipes_[flow_at(index)].room); });
        each_pipe([&](int index) {
            pipes_[flow_at(index)].room -= room;
            pipes_[flow_at(index ^ 1)].room += room;
        });
        total += worth_[flow_at(to)] * room;
    }
    return total;
}

}  // namespace streamwright::analysis
