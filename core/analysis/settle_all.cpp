#include "core/analysis/settle_all.h"

#include "core/analysis/analyser.h"
#include "core/analysis/report.h"

#include <algorithm>
#include <iterator>
#include <map>
#include <utility>

namespace streamwright::analysis {

namespace settle_all_detail {

/// The working copy: a design, and what stands of findings after each change of it.
struct Bench {
    model::Design design;
    Analyser analyser;
    std::map<std::string, Finding> open;
    bool wait = false;  // for the deferred rules, at every change
    std::stop_token stop;

    Bench(const model::Design& start, std::stop_token stopping)
        : design(start), analyser(start), stop(std::move(stopping)) {
        for (const auto& finding : analyser.findings()) open.emplace(finding.key(), finding);
    }

    void take(const FindingsChange& change, Findings& raised) {
        for (const auto& key : change.removed) open.erase(key);
        for (const auto& finding : change.added) {
            if (open.emplace(finding.key(), finding).second) raised.push_back(finding);
        }
        for (const auto& finding : change.changed) open.insert_or_assign(finding.key(), finding);
    }

    /// The deferred rules have their say on the present design; whether they were not stopped.
    bool catch_up(Findings& raised) {
        if (!analyser.deferred_pending()) return true;
        auto worst = Analyser::deferred(*analyser.frozen(), stop);
        if (!worst) return false;
        take(analyser.take_deferred(analyser.revision(), std::move(*worst)), raised);
        return true;
    }

    std::ptrdiff_t count(std::string_view rule) const {
        return std::ranges::count_if(open, [&](const auto& each) { return each.second.rule == rule; });
    }

    /// What the change raised; nothing where it was stopped.
    std::optional<Findings> make(const model::Delta& delta) {
        Findings raised;
        model::apply(design, delta);
        take(analyser.update(design, delta), raised);
        if (wait && !catch_up(raised)) return std::nullopt;
        return raised;
    }
};

/// Whether all that is new is of the same kind, and there are fewer of it than before.
bool only_paired_anew(const Bench& bench, const SettleStep& step, std::ptrdiff_t before) {
    const auto same = [&](const Finding& each) { return each.rule == step.finding.rule; };
    return std::ranges::all_of(step.raised, same) && bench.count(step.finding.rule) < before;
}

/// Makes the best remedy, and takes it back where it does not do what was hoped. Whether it was not stopped.
bool try_remedy(Bench& bench, SettleStep& step, bool even_if_it_raises) {
    if (step.finding.remedies.empty()) return true;
    const auto& remedy = step.finding.remedies.front();
    step.change = remedy.label;
    const auto delta = model::make_edit(bench.design, remedy.edit);
    if (!delta) {
        step.outcome = Settling::refused;
        step.refusal = delta.error();
        return true;
    }
    const auto before = bench.count(step.finding.rule);
    auto raised = bench.make(*delta);
    if (!raised) return false;
    step.raised = std::move(*raised);
    if (bench.open.contains(step.key))
        step.outcome = Settling::stays;
    else
        step.outcome =
            even_if_it_raises || only_paired_anew(bench, step, before) ? Settling::settled : Settling::raises;
    return step.outcome == Settling::settled || bench.make(delta->inverse()).has_value();
}

bool waits(const std::map<std::string, Finding>& open, const std::vector<std::string>& keys) {
    return std::ranges::any_of(keys, [&](const std::string& key) {
        const auto found = open.find(key);
        const auto* rule = found == open.end() ? nullptr : find_rule(found->second.rule);
        return rule && rule->deferred;
    });
}

/// What stands now, stood not at the start, and no step answers for.
std::vector<Finding> unforeseen(const Bench& bench, const std::map<std::string, Finding>& start,
                                const std::vector<SettleStep>& steps) {
    std::set<std::string> named;
    for (const auto& step : steps)
        for (const auto& finding : step.raised) named.insert(finding.key());
    std::vector<Finding> found;
    for (const auto& [key, finding] : bench.open)
        if (!start.contains(key) && !named.contains(key)) found.push_back(finding);
    return found;
}

/// The findings to cure, in order; grows while they are cured.
struct Work {
    std::vector<std::string> keys;
    std::set<std::string> seen;

    void add(const std::string& key) {
        if (seen.insert(key).second) keys.push_back(key);
    }
};

/// The step of one key: nothing to do where it is gone, or never was. Whether it was not stopped.
bool take_step(Bench& bench, const std::map<std::string, Finding>& known, const SettleAsk& ask, const std::string& key,
               std::vector<SettleStep>& steps) {
    const auto now = bench.open.find(key);
    const auto first = known.find(key);
    if (now == bench.open.end() && first == known.end()) return true;
    SettleStep step{key, now != bench.open.end() ? now->second : first->second, Settling::settled_before, {}, {}, {}};
    if (now != bench.open.end()) {
        step.outcome = Settling::no_remedy;
        if (!try_remedy(bench, step, ask.even_if_it_raises.contains(key))) return false;
    }
    steps.push_back(std::move(step));
    return true;
}

}  // namespace settle_all_detail

std::optional<Settled> settle_all(const model::Design& start, const SettleAsk& ask, const SettleProgress& progress,
                                  const std::stop_token& stop) {
    using namespace settle_all_detail;
    Bench bench(start, stop);
    Findings ignored;
    if (!bench.catch_up(ignored)) return std::nullopt;
    const auto at_start = bench.open;
    auto known = at_start;
    bench.wait = waits(known, ask.keys);
    Work work;
    for (const auto& key : ask.keys) work.add(key);
    Settled settled;
    for (std::size_t i = 0; i < work.keys.size(); ++i) {
        if (stop.stop_requested()) return std::nullopt;
        if (progress) progress(i, work.keys.size());
        const auto steps = settled.steps.size();
        if (!take_step(bench, known, ask, std::string(work.keys[i]), settled.steps)) return std::nullopt;
        if (settled.steps.size() == steps || settled.steps.back().outcome != Settling::settled) continue;
        for (const auto& finding : settled.steps.back().raised) {
            known.emplace(finding.key(), finding);
            if (ask.follow && finding.rule == settled.steps.back().finding.rule) work.add(finding.key());
        }
    }
    if (!bench.catch_up(ignored)) return std::nullopt;
    settled.raised_later = unforeseen(bench, at_start, settled.steps);
    for (const auto& [key, finding] : bench.open) settled.findings.push_back(finding);
    settled.design = std::move(bench.design);
    return settled;
}

std::vector<std::string> open_keys(const model::Design& design, const std::vector<Finding>& findings,
                                   std::string_view rule) {
    std::vector<std::string> keys;
    for (const auto& reported : report(design, findings))
        if (reported.finding.rule == rule && (!reported.waiver || reported.waiver_outdated))
            keys.push_back(reported.finding.key());
    return keys;
}

}  // namespace streamwright::analysis
