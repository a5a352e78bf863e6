#include "core/analysis/facts/matching.h"

#include <numeric>
#include <utility>

namespace streamwright::analysis {

namespace {
std::size_t matching_at(int index) { return static_cast<std::size_t>(index); }
}  // namespace

SlotMatching::SlotMatching(std::vector<int> capacities)
    : capacities_(std::move(capacities)),
      matched_(capacities_.size()),
      place_of_(capacities_.size()),
      came_(capacities_.size()),
      dead_(capacities_.size(), false),
      free_(std::accumulate(capacities_.begin(), capacities_.end(), 0)) {}

bool SlotMatching::take(int element, std::vector<int> groups) {
    if (full()) return false;
    seen_ = dead_;
    std::vector<int> open;
    const auto visit = [&](int group, Came came) {
        if (seen_[matching_at(group)]) return;
        seen_[matching_at(group)] = true;
        came_[matching_at(group)] = came;
        open.push_back(group);
    };
    for (const int group : groups) visit(group, {});
    choices_.push_back(std::move(groups));
    for (std::size_t next = 0; next < open.size(); ++next) {
        const int group = open[next];
        if (static_cast<int>(matched_[matching_at(group)].size()) < capacities_[matching_at(group)]) {
            shift(group, element);
            --free_;
            return true;
        }
        for (std::size_t i = 0; i < matched_[matching_at(group)].size(); ++i)
            for (const int other : choices_[matching_at(place_of_[matching_at(group)][i])])
                visit(other, {group, static_cast<int>(i)});
    }
    choices_.pop_back();
    dead_ = seen_;
    return false;
}

/// Walks the path back from the group with a free input, moving each element on, until the new one is in.
void SlotMatching::shift(int group, int element) {
    while (came_[matching_at(group)].group >= 0) {
        const auto [from, place] = came_[matching_at(group)];
        matched_[matching_at(group)].push_back(matched_[matching_at(from)][matching_at(place)]);
        place_of_[matching_at(group)].push_back(place_of_[matching_at(from)][matching_at(place)]);
        matched_[matching_at(from)].erase(matched_[matching_at(from)].begin() + place);
        place_of_[matching_at(from)].erase(place_of_[matching_at(from)].begin() + place);
        group = from;
    }
    matched_[matching_at(group)].push_back(element);
    place_of_[matching_at(group)].push_back(static_cast<int>(choices_.size()) - 1);
}

}  // namespace streamwright::analysis
