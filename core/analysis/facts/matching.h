// Who can be routed at once: streams matched to groups of like decoder inputs. Sets of streams that can be matched are
// the independent sets of a transversal matroid, so taking streams by falling weight, each kept if an augmenting path
// exists, gives the heaviest set (Edmonds 1971; Rado 1957).
#pragma once

#include <vector>

namespace streamwright::analysis {

class SlotMatching {
public:
    /// One number per group: how many inputs it has.
    explicit SlotMatching(std::vector<int> capacities);

    /// Takes the element in if it can be matched together with all taken before; `groups` are those it may go to.
    bool take(int element, std::vector<int> groups);
    bool full() const { return free_ == 0; }
    /// The elements matched to each group.
    const std::vector<std::vector<int>>& matched() const { return matched_; }

private:
    struct Came {
        int group = -1;  // the group it is moved out of; -1: the new element
        int place = 0;   // among that group's elements
    };
    void shift(int group, int element);

    std::vector<int> capacities_;
    std::vector<std::vector<int>> matched_;   // per group: elements
    std::vector<std::vector<int>> choices_;   // per element taken: its groups
    std::vector<std::vector<int>> place_of_;  // per group: index into choices_ of each matched element
    std::vector<Came> came_;                  // per group, of the search under way
    std::vector<bool> seen_, dead_;           // dead: no free input can be reached from there, ever
    int free_ = 0;
};

}  // namespace streamwright::analysis
