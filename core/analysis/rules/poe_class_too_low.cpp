// A powered device asks for a class; a port that gives less, or nothing, does not start it.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/standards/poe.h"

#include <vector>

namespace streamwright::analysis::rules::poe_class_too_low {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 asks for PoE class %2 (%3 at the port), but %4 gives class %5 (%6) at most."),
    STREAMWRIGHT_TEXT("%1 asks for PoE class %2 (%3 at the port), but %4 gives class %5 (%6) at most: it needs its own "
                      "supply."),
    STREAMWRIGHT_TEXT("%1 is powered over its cable only, but %2 gives no power.")};

constexpr standards::Citation sources[] = {{"IEEE", "802.3", "clauses 33 and 145 (classes)"}};

constexpr RuleWords words{.id = "poe-class-too-low",
                          .theme = Theme::power,
                          .title = "PoE class above what the port gives",
                          .meaning = "The device stays dark, or starts and restarts under load.",
                          .measured =
                              "The class that the powered device asks for against the class that the port at the "
                              "other end of the run gives: that of its type, or the highest within the limit set on "
                              "the port. A device with its own supply gets a warning only.",
                          .remedy = "Use a port that gives the class, an injector, or the device's own supply.",
                          .patterns = patterns,
                          .sources = sources};

bool has_supply(const graph::Wiring& wiring, int device) { return wiring.devices[at(device)].type->power.has_value(); }

void judge_feed(const graph::Wiring& wiring, const PoeFeed& feed, Findings& out) {
    const auto* wanted = standards::poe_class(feed.wanted_class);
    const auto* given = standards::poe_class(feed.given_class);
    if (!wanted || !given || wanted->at_supply <= given->at_supply) return;
    const bool own = has_supply(wiring, feed.device.device);
    auto finding = found(words.id, own ? Severity::warning : Severity::error,
                         {port_subject(wiring, feed.device), port_subject(wiring, feed.supply)},
                         {port_ref(wiring, feed.device), std::int64_t{feed.wanted_class}, wanted->at_supply,
                          port_ref(wiring, feed.supply), std::int64_t{feed.given_class}, given->at_supply},
                         own ? 1 : 0);
    finding.measured = wanted->at_supply;
    finding.limit = given->at_supply;
    finding.terms.push_back(line(STREAMWRIGHT_TEXT("%1 for class %2 - %3 of class %4 = %5 too little"),
                                 {wanted->at_supply, std::int64_t{feed.wanted_class}, given->at_supply,
                                  std::int64_t{feed.given_class}, wanted->at_supply - given->at_supply}));
    out.push_back(std::move(finding));
}

/// Has no other supply than its network port.
bool lives_on_power(const graph::Wiring& wiring, graph::PortAt device) {
    const auto& taking = wiring.port_type(device).poe;
    return taking && taking->side == catalogue::PoeSide::takes && !has_supply(wiring, device.device);
}

bool asks_power(const graph::Wiring& wiring, const graph::Run& run) {
    if (!run.a || !run.b || !wiring.is_network_port(*run.a) || !wiring.is_network_port(*run.b)) return false;
    return lives_on_power(wiring, *run.a) || lives_on_power(wiring, *run.b);
}

void judge_unfed(const graph::Wiring& wiring, graph::PortAt device, graph::PortAt supply,
                 const std::vector<bool>& fed_devices, Findings& out) {
    if (!lives_on_power(wiring, device) || fed_devices[at(device.device)]) return;
    out.push_back(found(words.id, Severity::error, {port_subject(wiring, device), port_subject(wiring, supply)},
                        {port_ref(wiring, device), port_ref(wiring, supply)}, 2));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const PowerBudget& power, Findings& out) {
    std::vector<bool> fed(wiring.devices.size(), false);
    for (const auto& feed : power.feeds) {
        fed[at(feed.device.device)] = true;
        judge_feed(wiring, feed, out);
    }
    graph::ByKind<bool> asking(runs);
    for (std::size_t i = 0; i < runs.list.size(); ++i) {
        if (!asking.of(i, [&](const graph::Run& each) { return asks_power(wiring, each); })) continue;
        const auto& run = runs.list[i];
        judge_unfed(wiring, *run.a, *run.b, fed, out);
        judge_unfed(wiring, *run.b, *run.a, fed, out);
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::poe_class_too_low
