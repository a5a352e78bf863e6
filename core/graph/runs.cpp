#include "core/graph/runs.h"

#include <algorithm>
#include <cstdint>
#include <unordered_map>

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

/// Numbers sequences step by step: the number of one is found from that of all but its last part, and that part.
class Sequences {
public:
    int begin() const { return 0; }
    int after(int before, std::uint64_t part) {
        const auto [place, fresh] = known_.try_emplace({before, part}, count_);
        count_ += fresh ? 1 : 0;
        return place->second;
    }
    int count() const { return count_; }

private:
    struct Hash {
        std::size_t operator()(const std::pair<int, std::uint64_t>& key) const {
            return (key.second ^ static_cast<std::uint64_t>(key.first) << 48U) * 0x9E3779B97F4A7C15U >> 8U;
        }
    };
    std::unordered_map<std::pair<int, std::uint64_t>, int, Hash> known_;
    int count_ = 1;
};

std::uint64_t port_part(const Wiring& wiring, const std::optional<PortAt>& port) {
    if (!port) return 0;
    const auto type = static_cast<std::size_t>(wiring.devices[static_cast<std::size_t>(port->device)].port_index);
    const auto like = wiring.port_indices[type].like[static_cast<std::size_t>(port->port)];
    return (std::uint64_t{type} + 1) << 32U | static_cast<std::uint64_t>(like);
}

void find_kinds(const Wiring& wiring, Runs& runs) {
    Sequences sequences;
    std::vector<int> kind_of;  // per sequence; -1: a part only
    runs.kind_of_run.reserve(runs.list.size());
    for (const auto& run : runs.list) {
        int at = sequences.after(sequences.begin(), port_part(wiring, run.a));
        for (const int cable : run.cables)
            at = sequences.after(at,
                                 reinterpret_cast<std::uintptr_t>(wiring.cables[static_cast<std::size_t>(cable)].type));
        at = sequences.after(at, port_part(wiring, run.b) | std::uint64_t{1} << 63U);  // no cable's address
        kind_of.resize(static_cast<std::size_t>(sequences.count()), -1);
        auto& kind = kind_of[static_cast<std::size_t>(at)];
        if (kind < 0) kind = runs.kinds++;
        runs.kind_of_run.push_back(kind);
    }
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
    runs_detail::find_kinds(wiring, runs);
    return runs;
}

}  // namespace streamwright::graph
