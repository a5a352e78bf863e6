#include "core/graph/runs.h"

#include <algorithm>

namespace streamwright::graph {

namespace runs_detail {

/// One way out of a cable: the cables met through passive ports, and the active port at the end.
struct Walk {
    std::vector<int> cables;
    std::optional<PortAt> end;
};

/// A passive port joins the first cable on its one face to the first on the other; further ones are a fault of the
/// drawing and stay runs of their own.
std::optional<int> joined(const Wiring& wiring, int cable, PortAt face) {
    const auto near = wiring.cables_at(face);
    const auto other = wiring.other_face(face);
    if (near.empty() || near.front() != cable || !other) return {};
    // passes_to need not be mutual in a faulty type; joining one way only would put a cable in two runs.
    if (wiring.other_face(*other) != face) return {};
    const auto far = wiring.cables_at(*other);
    return far.empty() ? std::nullopt : std::optional(far.front());
}

Walk walk(const Wiring& wiring, int start, bool from_a, std::vector<int>& run_of_cable, int run) {
    Walk walked;
    int cable = start;
    auto end =
        from_a ? wiring.cables[static_cast<std::size_t>(cable)].a : wiring.cables[static_cast<std::size_t>(cable)].b;
    while (end && wiring.is_passive(*end)) {
        const auto next = joined(wiring, cable, *end);
        if (!next || run_of_cable[static_cast<std::size_t>(*next)] >= 0) return walked;
        const auto entry = *wiring.other_face(*end);
        cable = *next;
        run_of_cable[static_cast<std::size_t>(cable)] = run;
        walked.cables.push_back(cable);
        end = wiring.far_end(cable, entry);
    }
    walked.end = end;
    return walked;
}

}  // namespace runs_detail

Runs find_runs(const Wiring& wiring) {
    Runs runs;
    runs.run_of_cable.assign(wiring.cables.size(), -1);
    runs.list.reserve(wiring.cables.size());
    for (std::size_t i = 0; i < wiring.cables.size(); ++i) {
        if (runs.run_of_cable[i] >= 0) continue;
        const int index = static_cast<int>(runs.list.size());
        const int cable = static_cast<int>(i);
        runs.run_of_cable[i] = index;
        auto back = runs_detail::walk(wiring, cable, true, runs.run_of_cable, index);
        const auto ahead = runs_detail::walk(wiring, cable, false, runs.run_of_cable, index);
        std::reverse(back.cables.begin(), back.cables.end());
        back.cables.push_back(cable);
        back.cables.insert(back.cables.end(), ahead.cables.begin(), ahead.cables.end());
        runs.list.push_back({std::move(back.cables), back.end, ahead.end});
    }
    return runs;
}

}  // namespace streamwright::graph
