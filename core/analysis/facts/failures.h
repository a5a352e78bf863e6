// Deferred. What is lost and what overflows when one thing goes: every link, switch, member of a stack, power feed and
// named duct taken out alone, and all facts of the network worked out without it. The fact holds only the failures that
// the design asks to outlive; a document asks for every one itself, so that edits never wait for what no rule reads.
#pragma once

#include "core/analysis/facts/failing.h"
#include "core/analysis/facts/outage_time.h"

#include <functional>
#include <optional>
#include <stop_token>
#include <vector>

namespace streamwright::analysis {

struct Outcome {
    Failing failing;
    std::vector<Picture> lost;          // shown before, no longer
    std::vector<OverfullArc> overfull;  // in what is left
    int parts = 0;                      // that the bridges which are left fall into
    std::vector<int> opened;            // links that were blocked in some VLAN and forward now
    std::vector<MovedPicture> moved;    // pictures that come back by another way
    std::optional<TimeRange> back;      // when; none: no picture moved, or not known
    friend bool operator==(const Outcome&, const Outcome&) = default;
};

struct Failures {
    int parts = 0;  // of the whole network
    std::vector<Outcome> outcomes;
    friend bool operator==(const Failures&, const Failures&) = default;
};

/// Called with how many of all are done.
using Progress = std::function<void(std::size_t done, std::size_t all)>;

/// Of each of these things; nothing if stopped.
std::optional<Failures> find_outcomes(const WholeNetwork& whole, const LinkLoads& loads, std::vector<Failing> failing,
                                      const std::stop_token& stop, const Progress& progress = {});

/// Of what the design asks to outlive.
std::optional<Failures> find_failures(const graph::Wiring&, const graph::Runs&, const graph::NetworkGraph&,
                                      const LinkCapacity&, const VlanPaths&, const SpanningTrees&, const Forwarding&,
                                      const LinkLoads&, const PowerBudget&, const std::stop_token&);
/// Whether a thing of that kind is among what the design asks to outlive.
bool asked_to_outlive(model::Survival survive, FailingKind kind);

}  // namespace streamwright::analysis
