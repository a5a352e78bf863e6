// A switch hands out power until its budget is reserved; ports beyond that stay dark, whatever devices really draw.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <map>

namespace streamwright::analysis::rules::poe_budget_exceeded {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 reserves %2 of its PoE budget of %3; the first %4 of %5 devices start (they would draw %6)."),
    STREAMWRIGHT_TEXT("%1 powers %5 devices (%2 reserved), but its type states no PoE budget: whether all start is not "
                      "known."),
    STREAMWRIGHT_TEXT(
        "%1 would reserve %2 of its PoE budget of %3 by class, and %6 by draw; its type does not state which "
        "counts: whether all %5 devices start is not known.")};

constexpr standards::Citation sources[] = {{"IEEE", "802.3", "clauses 33 and 145 (power at the supplying port)"}};

constexpr RuleWords words{.id = "poe-budget-exceeded",
                          .theme = Theme::power,
                          .title = "PoE budget of the switch exceeded",
                          .meaning = "The devices on the last ports stay dark, or drop out when another one starts.",
                          .measured =
                              "The power at the supply of all devices that a switch feeds is added up, by class or "
                              "by draw as its type states, and held against its budget. Where the type does not "
                              "state enough the finding is advice.",
                          .remedy =
                              "Spread the devices over switches, take a switch with a larger budget, or give some "
                              "devices their own supply.",
                          .patterns = patterns,
                          .sources = sources};

/// How many devices start, in the order of the ports.
std::int64_t started(const PowerBudget& power, const SwitchPower& supplier) {
    std::int64_t count = 0;
    base::Power sum;
    for (const int feed : supplier.feeds) {
        sum += power.feeds[at(feed)].reserved;
        if (sum > *supplier.budget) break;
        ++count;
    }
    return count;
}

std::vector<base::Text> terms_of(const PowerBudget& power, const SwitchPower& supplier) {
    std::map<base::Power, std::int64_t> counts;
    for (const int feed : supplier.feeds) ++counts[power.feeds[at(feed)].reserved];
    std::vector<base::Text> terms;
    for (auto it = counts.rbegin(); it != counts.rend(); ++it)
        terms.push_back(line(STREAMWRIGHT_TEXT("%1 x %2 = %3"), {it->second, it->first, it->first * it->second}));
    return terms;
}

void judge(const graph::Wiring& wiring, const PowerBudget& power, const SwitchPower& supplier, Findings& out) {
    const auto id = device_id(wiring, supplier.device);
    const auto& facts = wiring.devices[at(supplier.device)].type->bridging;
    if (!facts) return;  // an injector states the class of its port, and that is all
    const auto devices = static_cast<std::int64_t>(supplier.feeds.size());
    if (supplier.budget && supplier.reserved <= *supplier.budget) return;
    const bool undecided = supplier.budget && !facts->poe_by_class && supplier.drawn <= *supplier.budget;
    const bool known = supplier.budget && !undecided;
    auto finding = found(words.id, known ? Severity::error : Severity::advice, {id},
                         {named(id), supplier.reserved, supplier.budget.value_or(base::Power{}),
                          known ? started(power, supplier) : devices, devices, supplier.drawn},
                         known       ? 0
                         : undecided ? 2
                                     : 1);
    finding.measured = supplier.reserved;
    if (supplier.budget) finding.limit = *supplier.budget;
    finding.terms = terms_of(power, supplier);
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const PowerBudget& power, Findings& out) {
    for (const auto& supplier : power.switches) judge(wiring, power, supplier, out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::poe_budget_exceeded
