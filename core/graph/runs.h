// Runs: what lies between two active ports. Passive faces (patch panels, wall outlets) join cables into one run,
// so that reach is judged on the whole channel and on its installed part.
#pragma once

#include "core/graph/wiring.h"

#include <optional>
#include <vector>

namespace streamwright::graph {

struct Run {
    std::vector<int> cables;     // indices, from end a to end b
    std::optional<PortAt> a, b;  // active ports; none: an open end
    friend bool operator==(const Run&, const Run&) = default;
};

struct Runs {
    std::vector<Run> list;          // by smallest cable index
    std::vector<int> run_of_cable;  // per cable
    /// Runs of one kind join alike ports of the same device types over cables of the same types, in one order: what
    /// follows from types alone is asked once a kind. Transceivers, settings and the keys of ports are not of the kind.
    std::vector<int> kind_of_run;
    int kinds = 0;
    friend bool operator==(const Runs&, const Runs&) = default;
};

/// Every cable is in exactly one run; a ring of passive ports is cut at its smallest cable.
Runs find_runs(const Wiring& wiring);

/// What a function of a run's kind answers, asked once a kind.
template <class Answer>
class ByKind {
public:
    explicit ByKind(const Runs& runs) : runs_(runs), known_(static_cast<std::size_t>(runs.kinds)) {}
    template <class Ask>
    const Answer& of(std::size_t run, Ask&& ask) {
        auto& held = known_[static_cast<std::size_t>(runs_.kind_of_run[run])];
        if (!held) held.emplace(ask(runs_.list[run]));
        return *held;
    }

private:
    const Runs& runs_;
    std::vector<std::optional<Answer>> known_;
};

}  // namespace streamwright::graph
