// One thing whose loss takes pictures of others with it, where the design asks that pictures outlive it. A device's own
// cable is none: nothing else hangs on it. Nothing is found until something is asked, for a room with one switch has a
// single point by its nature, and only the designer knows whether that is meant.
#include "core/analysis/failure_help.h"
#include "core/analysis/rule.h"

#include <algorithm>
#include <map>
#include <set>

namespace streamwright::analysis::rules::single_point_of_failure {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 is a single point of failure: %2 pictures are lost without it."),
    STREAMWRIGHT_TEXT("Without %1, %2 pictures of devices that hang on it alone are lost."),
    STREAMWRIGHT_TEXT("%1 is a single point of failure: %2 pictures are lost where all its cables are cut.")};

constexpr RuleWords words{
    .id = "single-point-of-failure",
    .severity = Severity::warning,
    .theme = Theme::links,
    .title = "Single point of failure",
    .meaning =
        "When it goes, pictures go with it that the event cannot be without, and they stay away until "
        "somebody has mended it.",
    .measured =
        "Each link, each duct and, where the design asks for it, each switch and power feed is taken out alone; what "
        "it "
        "alone feeds with power goes with it. Spanning tree, snooping and all presets are worked out again over what "
        "is left, and the pictures counted that no longer arrive. A warning where others lose pictures, advice where "
        "only devices do that hang on a switch by their one cable. Said only where the design's settings ask that "
        "pictures outlive it, and of the presets they name.",
    .remedy =
        "Lay a second way by another route: a second uplink to another switch, a second duct, a second feed. Spread "
        "encoders and displays that matter over several switches.",
    .patterns = patterns,
    .no_source = "What pictures must outlive is the choice of those who plan the event."};

struct Reader {
    const graph::Wiring& wiring;
    const graph::NetworkGraph& network;
    const LinkLoads& loads;
    std::vector<const model::Subscription*> subscriptions;

    std::set<int> ends_of(const Picture& picture) const {
        const auto& row = *subscriptions[at(picture.subscription)];
        std::set<int> ends;
        if (const auto decoder = wiring.device_index(row.decoder)) ends.insert(*decoder);
        const auto* stream = wiring.design.streams.find(row.stream);
        if (const auto encoder = stream ? wiring.device_index(stream->encoder) : std::nullopt) ends.insert(*encoder);
        return ends;
    }

    /// The endpoints at the ends of a cable; what goes with something else.
    std::set<int> own_devices(const Failing& failing) const {
        std::set<int> own(failing.lost.devices.begin(), failing.lost.devices.end());
        if (failing.cable < 0) return own;
        const auto& cable = wiring.cables[at(failing.cable)];
        for (const auto& end : {cable.a, cable.b}) {
            if (!end) continue;
            const int bridge = network.bridge_of_device[at(end->device)];
            if (bridge < 0 || network.bridges[at(bridge)].endpoint) own.insert(end->device);
        }
        return own;
    }

    /// Devices that reach the network by the lost bridges alone.
    std::set<int> hanging_on(const Failing& failing) const {
        std::set<int> bridges, hanging;
        for (const int device : failing.lost.devices) bridges.insert(network.bridge_of_device[at(device)]);
        for (std::size_t i = 0; i < network.leaves_of_device.size(); ++i) {
            const auto& leaves = network.leaves_of_device[i];
            const bool all = !leaves.empty() && std::all_of(leaves.begin(), leaves.end(), [&](int leaf) {
                return bridges.contains(network.leaves[at(leaf)].bridge);
            });
            if (all) hanging.insert(static_cast<int>(i));
        }
        return hanging;
    }
};

bool touches(const std::set<int>& ends, const std::set<int>& devices) {
    return std::any_of(ends.begin(), ends.end(), [&](int end) { return devices.contains(end); });
}

std::vector<base::Text> terms_of(const Reader& r, const std::vector<Picture>& lost) {
    std::map<int, std::vector<base::Ref>> decoders;
    for (const auto& picture : lost)
        decoders[picture.preset].push_back(named(r.subscriptions[at(picture.subscription)]->decoder));
    std::vector<base::Text> terms;
    for (auto& [preset, refs] : decoders)
        terms.push_back(line(STREAMWRIGHT_TEXT("lost in %1: %2"), {named(r.loads.presets[at(preset)].preset), refs}));
    return terms;
}

void judge(const Reader& r, const Outcome& outcome, Findings& out) {
    const auto& failing = outcome.failing;
    if (failing.kind == FailingKind::duct && failing.lost.cables.size() < 2) return;  // the cable tells the same
    const auto own = r.own_devices(failing);
    std::vector<Picture> lost;
    bool others = false;
    const auto hanging = r.hanging_on(failing);
    for (const auto& picture : outcome.lost) {
        const auto ends = r.ends_of(picture);
        if (!must_outlive(r.wiring, r.loads, picture.preset) || touches(ends, own)) continue;
        lost.push_back(picture);
        others = others || !touches(ends, hanging);
    }
    if (lost.empty()) return;
    const auto count = static_cast<std::int64_t>(lost.size());
    const int variant = failing.kind == FailingKind::duct ? 2 : others ? 0 : 1;
    auto finding = found(words.id, others ? Severity::warning : Severity::advice, failing_subjects(r.wiring, failing),
                         {failing_name(r.wiring, failing), count}, variant);
    finding.measured = count;
    finding.limit = std::int64_t{0};
    finding.terms = terms_of(r, lost);
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::NetworkGraph& network, const LinkLoads& loads,
           const Failures& failures, Findings& out) {
    const Reader reader{wiring, network, loads, subscriptions_by_index(wiring)};
    for (const auto& outcome : failures.outcomes) judge(reader, outcome, out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::single_point_of_failure
