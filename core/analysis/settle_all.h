// Cures many findings at once on a value of the design: each by its best remedy, each seeing what those before it did,
// with a report of what became of every one. Nothing is written; whoever asked commits the difference, or does not.
#pragma once

#include "core/analysis/finding.h"
#include "core/base/error.h"
#include "core/model/design.h"

#include <cstddef>
#include <functional>
#include <optional>
#include <set>
#include <stop_token>
#include <string>
#include <string_view>
#include <vector>

namespace streamwright::analysis {

enum class Settling {
    settled,         // its remedy was made, and it is gone
    settled_before,  // it went with the remedy of an earlier one
    no_remedy,       // no edit is known to cure it
    refused,         // the design does not take the edit
    stays,           // the edit would leave it standing, so it was left out
    raises           // the edit would raise others, so it was left out
};

struct SettleStep {
    std::string key;  // as asked
    Finding finding;  // as it stood when its turn came; as at the start where it had gone by then
    Settling outcome = Settling::no_remedy;
    std::optional<base::Text> change;  // the label of the remedy
    std::optional<base::Error> refusal;
    std::vector<Finding> raised;  // what its remedy raises, made or left out
};

struct SettleAsk {
    std::vector<std::string> keys;            // the findings, in this order; those that do not stand are passed over
    std::set<std::string> even_if_it_raises;  // of these, the remedy is made whatever it raises
    /// Where a remedy leaves fewer of its kind but pairs them anew (three on one group: the first and the second, then
    /// the first and the third), the new ones are cured too, after those that were asked for.
    bool follow = true;
};

struct Settled {
    model::Design design;
    std::vector<SettleStep> steps;
    std::vector<Finding> findings;      // what stands at the end
    std::vector<Finding> raised_later;  // of the rules that wait for the worst case, known only at the end
};

using SettleProgress = std::function<void(std::size_t done, std::size_t of)>;

/// Nothing where it was stopped.
std::optional<Settled> settle_all(const model::Design& start, const SettleAsk& ask, const SettleProgress& progress = {},
                                  const std::stop_token& stop = {});

/// The keys of the rule's findings that nobody has accepted, gravest first.
std::vector<std::string> open_keys(const model::Design& design, const std::vector<Finding>& findings,
                                   std::string_view rule);

}  // namespace streamwright::analysis
