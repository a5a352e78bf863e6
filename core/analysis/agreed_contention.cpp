#include "core/analysis/agreed_contention.h"

#include "core/analysis/facts/arc_sides.h"
#include "core/analysis/facts/stream_walk.h"
#include "core/analysis/facts/twins.h"
#include "core/analysis/load_words.h"

#include <algorithm>
#include <set>

namespace streamwright::analysis {

namespace agreed_contention_detail {

bool is_picture(const model::Stream& stream) { return stream.kind == catalogue::StreamKind::video; }

/// The bridges beyond an arc, VLAN by VLAN.
class Beyond {
public:
    Beyond(const graph::NetworkGraph& network, const VlanPaths& paths, const SpanningTrees& trees,
           const Forwarding& forwarding, int arc) {
        for (VlanIndex vlan = 0; vlan < static_cast<VlanIndex>(trees.trees.size()); ++vlan) {
            orders_.push_back(order_tree(network, trees.trees[at(vlan)], forwarding.vlans[at(vlan)]));
            sides_.push_back(sides_of(network, paths, orders_.back(), vlan, arc));
        }
    }
    bool holds(VlanIndex vlan, int bridge) const {
        const int position = orders_[at(vlan)].position[at(bridge)];
        const auto& sides = sides_[at(vlan)];
        return sides && sides->part(position) && !sides->behind(position);
    }

private:
    std::vector<TreeOrder> orders_;
    std::vector<std::optional<ArcSides>> sides_;
};

}  // namespace agreed_contention_detail

std::vector<Agreement> find_agreements(const graph::Wiring& wiring, const graph::Runs& runs,
                                       const graph::NetworkGraph& network) {
    std::vector<Agreement> agreements;
    if (std::none_of(wiring.cables.begin(), wiring.cables.end(),
                     [](const graph::WiredCable& cable) { return cable.row->agreed.has_value(); }))
        return agreements;
    for (int link = 0; link < static_cast<int>(network.links.size()); ++link) {
        std::optional<Agreement> least;
        for (const int run : network.links[at(link)].runs)
            for (const int cable : runs.list[at(run)].cables) {
                const auto& row = *wiring.cables[at(cable)].row;
                if (row.agreed && (!least || row.agreed->sources < least->agreed.sources))
                    least = {link, row.id, *row.agreed};
            }
        if (least) agreements.push_back(std::move(*least));
    }
    return agreements;
}

std::string by_whom(const model::AgreedContention& agreed) {
    return agreed.on.empty() ? agreed.by : agreed.by + ", " + agreed.on;
}

std::vector<int> sources_across(const graph::Wiring& wiring, const graph::NetworkGraph& network, const VlanPaths& paths,
                                const SpanningTrees& trees, const Forwarding& forwarding, const PresetLoad& preset,
                                int arc) {
    const auto& on_arc = preset.arcs[at(arc)].streams;
    if (on_arc.empty()) return {};
    const agreed_contention_detail::Beyond beyond(network, paths, trees, forwarding, arc);
    const auto rows = streams_by_index(wiring);
    graph::IdIndex index;
    index.reserve(rows.size());
    for (const auto* row : rows) index.add(row->id.bits());
    const auto twins = twin_streams(wiring);
    std::set<std::pair<VlanIndex, std::uint64_t>> groups;  // on the arc
    const auto group_of = [&](int stream) {
        const auto& way = forwarding.streams[at(stream)];
        return std::pair(way.vlan, way.group.mac());
    };
    for (const int stream : on_arc) groups.insert(group_of(stream));
    const auto comes = [&](int stream) {  // itself or another of its group, or its twin
        const int twin = twins[at(stream)];
        return groups.contains(group_of(stream)) ||
               (twin >= 0 && std::binary_search(on_arc.begin(), on_arc.end(), twin));
    };
    std::set<int> watched;
    for (const auto& subscription : wiring.design.subscriptions) {
        if (subscription.preset != preset.preset) continue;
        const auto stream = index.find(subscription.stream.bits());
        const auto decoder = wiring.device_index(subscription.decoder);
        if (!stream || !decoder || !agreed_contention_detail::is_picture(*rows[at(*stream)])) continue;
        if (!comes(*stream)) continue;
        const auto vlan = forwarding.streams[at(*stream)].vlan;
        const auto receiver = receiver_of(network, paths, *decoder, vlan);
        const int twin = twins[at(*stream)];
        if (receiver && beyond.holds(vlan, receiver->bridge))
            watched.insert(twin >= 0 ? std::min(twin, *stream) : *stream);
    }
    return {watched.begin(), watched.end()};
}

AgreedPictures agreed_pictures(const graph::Wiring& wiring, const graph::Runs& runs,
                               const graph::NetworkGraph& network) {
    AgreedPictures limits;
    for (const auto& each : find_agreements(wiring, runs, network))
        for (const bool a_to_b : {true, false})
            limits.emplace(network.link_arc(each.link, a_to_b), each.agreed.sources);
    return limits;
}

}  // namespace streamwright::analysis
