#include "core/analysis/analyser.h"

#include "core/analysis/agreed_contention.h"
#include "core/analysis/dirty.h"

#include <algorithm>
#include <atomic>
#include <future>
#include <iterator>
#include <unordered_map>
#include <unordered_set>
#include <utility>

namespace streamwright::analysis {

namespace analyser_detail {

using graph::NetworkGraph;
using graph::Runs;
using graph::SignalGraph;
using graph::Wiring;

template <class... Fact>
struct From {
    template <class F>
    static auto call(const Facts& facts, F f) {
        return f(facts.get<Fact>()...);
    }
};

// One line per prompt fact: what it is computed from. The order of FactTuple is the order of derivation.
void compute(Facts& f, const model::Design& design, const Wiring*) { f.set(graph::wire(design, f.get<Wiring>())); }
void compute(Facts& f, const model::Design&, const Runs*) { f.set(From<Wiring>::call(f, graph::find_runs)); }
void compute(Facts& f, const model::Design&, const SignalGraph*) {
    f.set(From<Wiring, Runs>::call(f, graph::build_signals));
}
void compute(Facts& f, const model::Design&, const NetworkGraph*) {
    f.set(From<Wiring, Runs>::call(f, graph::build_network));
}
void compute(Facts& f, const model::Design&, const LinkCapacity*) {
    f.set(From<Wiring, Runs, NetworkGraph>::call(f, find_link_capacity));
}
void compute(Facts& f, const model::Design&, const VlanPaths*) {
    f.set(From<Wiring, Runs, NetworkGraph, LinkCapacity>::call(f, find_vlan_paths));
}
void compute(Facts& f, const model::Design&, const SpanningTrees*) {
    f.set(From<Wiring, Runs, NetworkGraph, LinkCapacity, VlanPaths>::call(f, find_spanning_trees));
}
void compute(Facts& f, const model::Design&, const Forwarding*) {
    f.set(From<Wiring, NetworkGraph, VlanPaths, SpanningTrees>::call(f, find_forwarding));
}
void compute(Facts& f, const model::Design&, const LinkLoads*) {
    f.set(From<Wiring, NetworkGraph, VlanPaths, SpanningTrees, Forwarding>::call(f, find_link_loads));
}
void compute(Facts& f, const model::Design&, const CableLengths*) {
    f.set(From<Wiring, Runs>::call(f, find_cable_lengths));
}
void compute(Facts& f, const model::Design&, const FibreChannels*) {
    f.set(From<Wiring, Runs>::call(f, find_fibre_channels));
}
void compute(Facts& f, const model::Design&, const PowerBudget*) {
    f.set(From<Wiring, Runs>::call(f, find_power_budget));
}
void compute(Facts& f, const model::Design&, const AddressPlan*) {
    f.set(From<Wiring, Runs>::call(f, find_address_plan));
}
void compute(Facts& f, const model::Design& design, const TagUse*) { f.set(find_tag_use(design)); }
void compute(Facts& f, const model::Design&, const VideoChains*) {
    auto again = From<Wiring, Runs, SignalGraph, VideoChains>::call(f, find_video_chains_again);
    if (again) f.set(std::move(*again));
}
// The worker's part.
void compute(Facts& f, const model::Design&, const WorstCase*) { f.deferred_known = false; }
void compute(Facts& f, const model::Design&, const QuerierPlaces*) { f.deferred_known = false; }
void compute(Facts& f, const model::Design&, const Failures*) { f.deferred_known = false; }
void compute(Facts& f, const model::Design&, const AggregationRisk*) { f.deferred_known = false; }

/// Computes one fact again and says whether it came out different; an equal one is left as it was.
template <class Fact>
bool recompute(Facts& facts, const model::Design& design) {
    const auto before = std::get<std::shared_ptr<const Fact>>(facts.all);
    compute(facts, design, static_cast<const Fact*>(nullptr));
    if constexpr (!std::is_same_v<Fact, Wiring>) {
        auto& held = std::get<std::shared_ptr<const Fact>>(facts.all);
        if (before == held || *before == *held) {
            held = before;
            return false;
        }
    }
    return true;
}

struct Recomputed {
    FactSet done, differing;
};

template <std::size_t... I>
Recomputed recompute_spoilt(Facts& facts, const model::Design& design, FactSet spoilt, FactSet group,
                            std::index_sequence<I...>) {
    Recomputed result;
    const auto one = [&]<class Fact>(const Fact*) {
        constexpr auto bit = fact_bit<Fact>();
        if (!spoilt.has(bit) || !group.has(bit)) return;
        result.done = result.done | bit;
        if (!recompute<Fact>(facts, design)) return;
        result.differing = result.differing | bit;
        spoilt = spoilt | derived_from(bit);
    };
    (one(static_cast<const std::tuple_element_t<I, FactTuple>*>(nullptr)), ...);
    return result;
}

constexpr FactSet cabled_facts = fact_bit<Wiring>() | fact_bit<Runs>();
/// Facts that are computed from the cabling and from each other alone: a second thread can do them beside those of the
/// network.
constexpr FactSet side_facts = fact_bit<SignalGraph>() | fact_bit<CableLengths>() | fact_bit<FibreChannels>() |
                               fact_bit<PowerBudget>() | fact_bit<AddressPlan>() | fact_bit<TagUse>() |
                               fact_bit<VideoChains>();

/// In a small design a second thread costs more than it saves.
bool worth_two_threads(const model::Design& design) { return design.devices.size() >= 2000; }

/// Calls both, the first beside the second if the design is large.
template <class F, class G>
void beside(const model::Design& design, F&& first, G&& second) {
    if (!worth_two_threads(design)) {
        first();
        second();
        return;
    }
    auto other = std::async(std::launch::async, std::forward<F>(first));
    second();
    other.get();
}

Recomputed recompute_spoilt(Facts& facts, const model::Design& design, FactSet spoilt) {
    constexpr auto each = std::make_index_sequence<fact_count>{};
    auto result = recompute_spoilt(facts, design, spoilt, cabled_facts, each);
    spoilt = spoilt | derived_from(result.differing);
    Recomputed side, network;
    beside(
        design, [&] { side = recompute_spoilt(facts, design, spoilt, side_facts, each); },
        [&] { network = recompute_spoilt(facts, design, spoilt, {~(cabled_facts | side_facts).bits}, each); });
    for (const auto& part : {side, network}) {
        result.done = result.done | part.done;
        result.differing = result.differing | part.differing;
    }
    return result;
}

/// Runs some of the rules, on two threads if the design is large; one list of findings for each, in their order.
std::vector<Findings> run_rules(const Facts& facts, const std::vector<const Rule*>& rules) {
    std::vector<Findings> found(rules.size());
    std::atomic<std::size_t> next = 0;
    const auto work = [&] {
        for (auto i = next++; i < rules.size(); i = next++) rules[i]->run(facts, found[i]);
    };
    beside(facts.get<Wiring>().design, work, work);
    return found;
}

constexpr FactSet all_facts{(1U << fact_count) - 1};

std::optional<Deferred> deferred_of(const Facts& f, const std::stop_token& stop) {
    auto worst = find_worst_case(f.get<Wiring>(), f.get<NetworkGraph>(), f.get<VlanPaths>(), f.get<SpanningTrees>(),
                                 f.get<Forwarding>(), f.get<LinkLoads>(), stop,
                                 agreed_pictures(f.get<Wiring>(), f.get<Runs>(), f.get<NetworkGraph>()));
    if (!worst) return std::nullopt;
    auto places = find_querier_places(f.get<Wiring>(), f.get<NetworkGraph>(), f.get<VlanPaths>(),
                                      f.get<SpanningTrees>(), f.get<Forwarding>(), f.get<LinkLoads>(), stop);
    if (!places) return std::nullopt;
    auto failures =
        find_failures(f.get<Wiring>(), f.get<Runs>(), f.get<NetworkGraph>(), f.get<LinkCapacity>(), f.get<VlanPaths>(),
                      f.get<SpanningTrees>(), f.get<Forwarding>(), f.get<LinkLoads>(), f.get<PowerBudget>(), stop);
    if (!failures) return std::nullopt;
    auto groups = find_aggregation_risk(f.get<Wiring>(), f.get<NetworkGraph>(), f.get<LinkCapacity>(),
                                        f.get<VlanPaths>(), f.get<Forwarding>(), f.get<LinkLoads>(), *worst, stop);
    if (!groups) return std::nullopt;
    return Deferred{std::move(*worst), std::move(*places), std::move(*failures), std::move(*groups)};
}

void take(Facts& facts, Deferred deferred) {
    facts.set(std::move(deferred.worst));
    facts.set(std::move(deferred.places));
    facts.set(std::move(deferred.failures));
    facts.set(std::move(deferred.groups));
    facts.deferred_known = true;
}

/// Sorted by key; of two with one key the first stays.
Findings sorted_by_key(const std::vector<Findings>& per_rule) {
    std::vector<std::pair<std::string, const Finding*>> keyed;
    for (const auto& findings : per_rule)
        for (const auto& finding : findings) keyed.emplace_back(finding.key(), &finding);
    std::stable_sort(keyed.begin(), keyed.end(), [](const auto& a, const auto& b) { return a.first < b.first; });
    keyed.erase(
        std::unique(keyed.begin(), keyed.end(), [](const auto& a, const auto& b) { return a.first == b.first; }),
        keyed.end());
    Findings sorted;
    sorted.reserve(keyed.size());
    for (const auto& [key, finding] : keyed) sorted.push_back(*finding);
    return sorted;
}

/// Adds to `change` what turns the findings of one rule into its new ones.
void note_difference(const Findings& before, const Findings& after, FindingsChange& change) {
    if (before == after) return;
    std::unordered_map<std::string, const Finding*> old;
    for (const auto& finding : before) old.emplace(finding.key(), &finding);
    std::unordered_set<std::string> kept;
    for (const auto& finding : after) {
        auto key = finding.key();
        if (!kept.insert(key).second) continue;
        const auto found = old.find(key);
        if (found == old.end())
            change.added.push_back(finding);
        else if (*found->second != finding)
            change.changed.push_back(finding);
    }
    for (const auto& finding : before) {
        auto key = finding.key();
        if (kept.insert(key).second) change.removed.push_back(std::move(key));
    }
}

bool stands(const model::Design& design, const Subject& subject) {
    return std::visit(
        [&](const auto& id) {
            using Id = std::decay_t<decltype(id)>;
            if constexpr (std::is_same_v<Id, model::DeviceId>) return design.devices.contains(id);
            if constexpr (std::is_same_v<Id, model::CableId>) return design.cables.contains(id);
            if constexpr (std::is_same_v<Id, model::StreamId>) return design.streams.contains(id);
            if constexpr (std::is_same_v<Id, model::SubscriptionId>) return design.subscriptions.contains(id);
            if constexpr (std::is_same_v<Id, model::PresetId>) return design.presets.contains(id);
            if constexpr (std::is_same_v<Id, model::VlanId>) return design.vlans.contains(id);
            if constexpr (std::is_same_v<Id, model::PortRef>) return design.devices.contains(id.device);
        },
        subject);
}

/// Findings that wait for the worker stay, except those about rows that are gone.
Findings still_standing(const Findings& findings, const model::Design& design) {
    Findings standing;
    std::copy_if(findings.begin(), findings.end(), std::back_inserter(standing), [&](const Finding& finding) {
        return std::all_of(finding.subjects.begin(), finding.subjects.end(),
                           [&](const Subject& subject) { return stands(design, subject); });
    });
    return standing;
}

}  // namespace analyser_detail

Analysis analyse(const model::Design& design) {
    Analysis analysis;
    auto& facts = analysis.facts;
    analyser_detail::recompute_spoilt(facts, design, analyser_detail::all_facts);
    if (auto deferred = analyser_detail::deferred_of(facts, {})) analyser_detail::take(facts, std::move(*deferred));
    std::vector<const Rule*> rules;
    for (const auto& rule : all_rules()) rules.push_back(&rule);
    analysis.findings = analyser_detail::sorted_by_key(analyser_detail::run_rules(facts, rules));
    analysis.complete = facts.deferred_known;
    return analysis;
}

Analyser::Analyser(const model::Design& design) : facts_(std::make_shared<Facts>()), per_rule_(all_rules().size()) {
    analyser_detail::recompute_spoilt(*facts_, design, analyser_detail::all_facts);
    rerun(analyser_detail::all_facts, false);
}

FindingsChange Analyser::rerun(FactSet changed, bool deferred_rules) {
    FindingsChange change;
    const auto& design = facts_->get<graph::Wiring>().design;
    const auto rules = all_rules();
    std::vector<const Rule*> due;
    for (const auto& rule : rules)
        if (rule.reads.has(changed) && (!rule.deferred || deferred_rules)) due.push_back(&rule);
    auto found_now = analyser_detail::run_rules(*facts_, due);
    std::size_t next_due = 0;
    for (std::size_t i = 0; i < rules.size(); ++i) {
        if (!rules[i].reads.has(changed)) continue;
        const bool ran = next_due < due.size() && due[next_due] == &rules[i];
        auto after = ran ? std::move(found_now[next_due++]) : analyser_detail::still_standing(per_rule_[i], design);
        analyser_detail::note_difference(per_rule_[i], after, change);
        per_rule_[i] = std::move(after);
    }
    if (!change.added.empty() || !change.changed.empty() || !change.removed.empty())
        sorted_ = analyser_detail::sorted_by_key(per_rule_);
    return change;
}

FindingsChange Analyser::update(const model::Design& design, const model::Delta& delta) {
    const auto spoilt = spoilt_by(delta);
    if (!spoilt.findings) return {};
    if (std::exchange(shared_, false)) facts_ = std::make_shared<Facts>(*facts_);
    auto [done, differing] = analyser_detail::recompute_spoilt(*facts_, design, spoilt.facts);
    if (!spoilt.wiring_seen) differing.bits &= ~fact_bit<graph::Wiring>().bits;
    if (done.has(deferred_facts)) ++revision_;
    pending_ = !facts_->deferred_known;
    auto change = rerun(differing, !pending_);
    change.recomputed = done;
    change.differing = differing;
    return change;
}

std::shared_ptr<const Facts> Analyser::frozen() const {
    shared_ = true;
    return facts_;
}

std::optional<Deferred> Analyser::deferred(const Facts& frozen, const std::stop_token& stop) {
    return analyser_detail::deferred_of(frozen, stop);
}

FindingsChange Analyser::take_deferred(std::uint64_t revision, Deferred deferred) {
    if (revision != revision_ || !pending_) return {};
    if (std::exchange(shared_, false)) facts_ = std::make_shared<Facts>(*facts_);
    analyser_detail::take(*facts_, std::move(deferred));
    pending_ = false;
    auto change = rerun(deferred_facts, true);
    change.recomputed = change.differing = deferred_facts;
    return change;
}

bool Analyser::being_checked(const Finding& finding) const {
    const auto* rule = find_rule(finding.rule);
    return pending_ && rule && rule->deferred;
}

}  // namespace streamwright::analysis
