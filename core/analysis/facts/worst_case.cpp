#include "core/analysis/facts/worst_case.h"

#include "core/analysis/facts/worst_families.h"
#include "core/analysis/facts/worst_general.h"

#include <algorithm>
#include <utility>

namespace streamwright::analysis {

struct WorstFinder::Parts {
    WorstInput input;
    RateTable rates;
    StreamClasses classes;
    WorstFamilies families;
    std::optional<WorstGeneral> general;  // made when the first arc asks for it

    explicit Parts(WorstInput given)
        : input(std::move(given)),
          rates(input.wiring.design.streams),
          classes(input),
          families(input, classes, rates) {}

    /// Who asks for a stream asks for its twin in another VLAN too, and the link may carry both: counted each by
    /// itself, all of them weigh at least half of what they do in pairs.
    void bound_twins(int arc, ArcWorst& worst) {
        if (!classes.twins_apart || worst.at_most || worst.routed.empty() || input.sides(arc).size() < 2) return;
        const auto tagged = [&](int s) { return input.tagged_on(arc, input.way(s).vlan); };
        const auto apart = [&](int s) {
            const int twin = classes.twins[static_cast<std::size_t>(s)];
            return twin >= 0 && input.way(twin).vlan != input.way(s).vlan;
        };
        if (std::none_of(worst.routed.begin(), worst.routed.end(), apart)) return;
        worst.at_most = true;
        worst.wire += rates.sum(worst.routed, tagged);
    }

    /// Inputs and streams that go together are a matroid: of one, the best set of so many is the first of the best.
    void keep_pictures(ArcWorst& worst, int pictures) {
        std::vector<int> kept;
        for (const int stream : worst.routed)
            if (!input.is_picture(stream) || pictures-- > 0) kept.push_back(stream);
        worst.routed = std::move(kept);
        std::erase_if(worst.witness, [&](const Routed& each) {
            return std::find(worst.routed.begin(), worst.routed.end(), each.stream) == worst.routed.end();
        });
    }

    void finish(int arc, ArcWorst& worst, std::optional<int> pictures) {
        if (worst.routed.empty()) return;
        const auto tagged = [&](int s) { return input.tagged_on(arc, input.way(s).vlan); };
        std::sort(worst.routed.begin(), worst.routed.end(), [&](int a, int b) {
            return std::pair(-rates.rank(a, tagged(a)), a) < std::pair(-rates.rank(b, tagged(b)), b);
        });
        std::sort(worst.witness.begin(), worst.witness.end());
        if (pictures) keep_pictures(worst, *pictures);
        if (!worst.at_most) worst.wire += rates.sum(worst.routed, tagged);
    }
};

WorstFinder::WorstFinder(const graph::Wiring& wiring, const graph::NetworkGraph& network, const VlanPaths& paths,
                         const SpanningTrees& trees, const Forwarding& forwarding, const LinkLoads& loads,
                         const Compatibility& compatibility, WorstFlow flow)
    : parts_(
          std::make_unique<Parts>(WorstInput(wiring, network, paths, trees, forwarding, loads, compatibility, flow))) {}

WorstFinder::~WorstFinder() = default;

ArcWorst WorstFinder::of(int arc) { return find(arc, std::nullopt); }
ArcWorst WorstFinder::within(int arc, int pictures) { return find(arc, pictures); }

ArcWorst WorstFinder::find(int arc, std::optional<int> pictures) {
    auto& [input, rates, classes, families, general] = *parts_;
    ArcWorst worst;
    auto sides = input.sides(arc);
    worst.inputs_beyond = families.count_inputs_beyond(arc, sides);
    const bool forwarded = input.flow == WorstFlow::forwarded;
    if (forwarded) {
        const auto& idle = input.loads.idle.arcs[static_cast<std::size_t>(arc)];
        worst.unasked.assign(idle.streams.begin(), idle.streams.end());
        worst.wire = idle.wire;
    }
    if (forwarded && families.answers(arc)) {
        families.judge(arc, std::move(sides), worst);
        parts_->finish(arc, worst, pictures);
    } else {
        if (!general) general.emplace(input, classes, rates);
        general->judge(arc, worst, pictures);
        parts_->finish(arc, worst, std::nullopt);
    }
    parts_->bound_twins(arc, worst);
    return worst;
}

std::optional<WorstCase> find_worst_case(const graph::Wiring& wiring, const graph::NetworkGraph& network,
                                         const VlanPaths& paths, const SpanningTrees& trees,
                                         const Forwarding& forwarding, const LinkLoads& loads,
                                         const Compatibility& compatibility, std::stop_token stop, WorstFlow flow,
                                         const AgreedPictures& agreed) {
    WorstFinder finder(wiring, network, paths, trees, forwarding, loads, compatibility, flow);
    WorstCase answer;
    answer.arcs.reserve(static_cast<std::size_t>(network.arc_count()));
    for (int arc = 0; arc < network.arc_count(); ++arc) {
        if (stop.stop_requested()) return {};
        answer.arcs.push_back(finder.of(arc));
    }
    for (const auto& [arc, pictures] : agreed) answer.agreed.emplace(arc, finder.within(arc, pictures));
    return answer;
}

std::optional<WorstCase> find_worst_case(const graph::Wiring& wiring, const graph::NetworkGraph& network,
                                         const VlanPaths& paths, const SpanningTrees& trees,
                                         const Forwarding& forwarding, const LinkLoads& loads, std::stop_token stop,
                                         const AgreedPictures& agreed) {
    return find_worst_case(wiring, network, paths, trees, forwarding, loads, usual_compatibility(wiring),
                           std::move(stop), WorstFlow::forwarded, agreed);
}

}  // namespace streamwright::analysis
