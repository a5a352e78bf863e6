// Analysis is a plain function of the design. The analyser is only a faster way to the same answer: it keeps the facts
// of the last design, recomputes what an edit spoils, compares, and runs again only the rules whose facts differ.
#pragma once

#include "core/analysis/facts_set.h"
#include "core/analysis/rule.h"
#include "core/model/delta.h"

#include <cstdint>
#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

namespace streamwright::analysis {

/// Findings sorted by key; no two share one.
struct Analysis {
    Facts facts;
    Findings findings;
    bool complete = false;  // the deferred facts and findings are of this design too
};

/// Whole, waiting for the deferred facts. What `check` and `deliver` use.
Analysis analyse(const model::Design& design);

struct FindingsChange {
    Findings added, changed;
    std::vector<std::string> removed;  // keys
    FactSet recomputed;                // facts computed again for this edit
    FactSet differing;                 // of those, the ones that came out different
};

/// What a worker computes.
struct Deferred {
    WorstCase worst;
    QuerierPlaces places;
    Failures failures;
    AggregationRisk groups;
};

class Analyser {
public:
    explicit Analyser(const model::Design& design);

    /// The prompt answer to one edit; deferred findings of the older design stay and are marked as such.
    FindingsChange update(const model::Design& design, const model::Delta& delta);

    /// What a worker needs to compute the deferred facts; cheap to copy, safe to read on any thread.
    std::shared_ptr<const Facts> frozen() const;
    /// The deferred facts of a frozen state; nothing if stopped.
    static std::optional<Deferred> deferred(const Facts& frozen, const std::stop_token& stop);
    /// Takes the worker's answer if it belongs to the present revision; else drops it.
    FindingsChange take_deferred(std::uint64_t revision, Deferred deferred);

    /// Counts up when an edit spoils the deferred facts; a worker's answer of an older count is dropped.
    std::uint64_t revision() const { return revision_; }
    const Facts& facts() const { return *facts_; }
    const Findings& findings() const { return sorted_; }
    bool deferred_pending() const { return pending_; }
    /// Whether a finding stems from an older revision and is being checked again.
    bool being_checked(const Finding& finding) const;

private:
    FindingsChange rerun(FactSet changed, bool deferred_rules);
    std::shared_ptr<Facts> facts_;
    mutable bool shared_ = false;     // handed out by frozen(): the next change works on a copy
    std::vector<Findings> per_rule_;  // in the order of all_rules()
    Findings sorted_;
    std::uint64_t revision_ = 0;
    bool pending_ = true;
};

}  // namespace streamwright::analysis
