#include "core/analysis/facts/aggregation_risk.h"

#include "core/analysis/facts/rate_table.h"
#include "core/standards/multicast.h"

#include <algorithm>
#include <map>

namespace streamwright::analysis {

namespace aggregation_risk_detail {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

/// What stands in the device's row for the port that the stream leaves by: of the port, else of the device.
template <class Field>
std::optional<std::uint64_t> sender_octet(const graph::Wiring& wiring, const model::Stream& stream, Field&& field) {
    const auto encoder = wiring.device_index(stream.encoder);
    if (!encoder) return std::nullopt;
    std::optional<std::uint64_t> general;
    for (const auto& each : wiring.devices[at(*encoder)].row->addresses) {
        const std::optional<std::uint64_t> octet = field(each);
        if (!octet) continue;
        if (each.port && each.port == stream.network_port) return octet;
        if (!general) general = octet;
    }
    return general;
}

std::optional<std::uint64_t> octet_of(const graph::Wiring& wiring, const model::Stream& stream,
                                      catalogue::MemberChoice field) {
    using catalogue::MemberChoice;
    using Octet = std::optional<std::uint64_t>;
    switch (field) {
        case MemberChoice::source_mac:
            return sender_octet(wiring, stream, [](const model::HostAddress& each) {
                return each.mac ? Octet(each.mac->bits & 0xFF) : Octet();
            });
        case MemberChoice::source_ip:
            return sender_octet(wiring, stream, [](const model::HostAddress& each) {
                return each.address ? Octet(each.address->bits & 0xFF) : Octet();
            });
        case MemberChoice::destination_mac:
            return stream.group ? Octet(standards::group_mac(*stream.group).bits & 0xFF) : Octet();
        case MemberChoice::destination_ip:
            return stream.group ? Octet(stream.group->bits & 0xFF) : Octet();
        case MemberChoice::destination_port:
            return static_cast<std::uint64_t>(stream.udp_port) & 0xFF;
    }
    return std::nullopt;
}

struct Finder {
    const graph::Wiring& wiring;
    const graph::NetworkGraph& network;
    const LinkCapacity& capacity;
    const VlanPaths& paths;
    const Forwarding& forwarding;
    const LinkLoads& loads;
    const WorstCase& worst;
    const std::stop_token& stop;
    RateTable rates{wiring.design.streams};
    std::vector<const model::Stream*> rows;

    bool tagged(int arc, int stream) const {
        return paths.links[at(arc / 2)].a.tags(forwarding.streams[at(stream)].vlan);
    }

    std::optional<base::BitRate> each_member(const graph::Link& link) const {
        std::optional<base::BitRate> slowest;
        for (const int run : link.runs) {
            const auto& rate = capacity.runs[at(run)].rate;
            if (!rate) return std::nullopt;
            if (!slowest || *rate < *slowest) slowest = rate;
        }
        return slowest;
    }

    GroupLoad fall(int arc, std::span<const int> streams, int members, base::BitRate each) const {
        GroupLoad load;
        std::vector<base::Rate> sums(at(members));
        std::vector<int> counts(at(members), 0);
        const int bridge = network.bridge_before(arc);
        for (const int stream : streams) {
            const auto member = member_of_stream(wiring, network, bridge, *rows[at(stream)], members);
            if (!member) {
                load.fits = chance(arc, streams, members, each);
                return load;
            }
            sums[at(*member)] += rates.of(stream, tagged(arc, stream));
            ++counts[at(*member)];
        }
        load.loads = std::move(sums);
        load.streams = std::move(counts);
        return load;
    }

    FitChance chance(int arc, std::span<const int> streams, int members, base::BitRate each) const {
        std::map<base::BitRate, int> counts;
        for (const int stream : streams) ++counts[rates.of(stream, tagged(arc, stream)).ceil()];
        std::vector<AlikeStreams> alike;
        for (const auto& [rate, count] : counts) alike.push_back({rate, count});
        return fit_chance(alike, members, each, stop);
    }

    static bool graver(const GroupLoad& a, const GroupLoad& b) {
        if (a.fits && b.fits) return a.fits->fits < b.fits->fits;
        if (a.fits || b.fits) return a.fits.has_value();
        return a.loads[at(a.fullest())] > b.loads[at(b.fullest())];
    }

    std::optional<GroupLoad> of_presets(int arc, int members, base::BitRate each) const {
        std::optional<GroupLoad> gravest;
        for (int p = 0; p < static_cast<int>(loads.presets.size()); ++p) {
            const auto& streams = loads.presets[at(p)].arcs[at(arc)].streams;
            if (streams.empty()) continue;
            auto load = fall(arc, streams, members, each);
            load.preset = p;
            if (!gravest || graver(load, *gravest)) gravest = std::move(load);
        }
        return gravest;
    }

    std::optional<GroupLoad> of_worst(int arc, int members, base::BitRate each) const {
        auto streams = worst.arcs[at(arc)].unasked;
        const auto& routed = worst.arcs[at(arc)].routed;
        streams.insert(streams.end(), routed.begin(), routed.end());
        if (streams.empty()) return std::nullopt;
        return fall(arc, streams, members, each);
    }
};

}  // namespace aggregation_risk_detail

int GroupLoad::fullest() const {
    return static_cast<int>(std::max_element(loads.begin(), loads.end()) - loads.begin());
}

std::optional<int> member_of_stream(const graph::Wiring& wiring, const graph::NetworkGraph& network, int bridge,
                                    const model::Stream& stream, int members) {
    const auto* type =
        wiring
            .devices[aggregation_risk_detail::at(network.bridges[aggregation_risk_detail::at(bridge)].devices.front())]
            .type;
    if (!type || !type->bridging || !type->bridging->member_by || members < 1) return std::nullopt;
    std::uint64_t mixed = 0;
    for (const auto field : *type->bridging->member_by) {
        const auto octet = aggregation_risk_detail::octet_of(wiring, stream, field);
        if (!octet) return std::nullopt;
        mixed ^= *octet;
    }
    return static_cast<int>(mixed % static_cast<std::uint64_t>(members));
}

std::optional<AggregationRisk> find_aggregation_risk(const graph::Wiring& wiring, const graph::NetworkGraph& network,
                                                     const LinkCapacity& capacity, const VlanPaths& paths,
                                                     const Forwarding& forwarding, const LinkLoads& loads,
                                                     const WorstCase& worst, const std::stop_token& stop) {
    AggregationRisk risk;
    if (std::none_of(network.links.begin(), network.links.end(),
                     [](const graph::Link& link) { return link.aggregated && link.runs.size() > 1; }))
        return risk;
    aggregation_risk_detail::Finder finder{wiring, network, capacity, paths, forwarding, loads, worst, stop};
    for (const auto& stream : wiring.design.streams) finder.rows.push_back(&stream);
    for (int link = 0; link < static_cast<int>(network.links.size()); ++link) {
        const auto& row = network.links[aggregation_risk_detail::at(link)];
        const auto each = finder.each_member(row);
        const auto members = static_cast<int>(row.runs.size());
        if (!row.aggregated || members < 2 || !each) continue;
        for (const bool a_to_b : {true, false}) {
            if (stop.stop_requested()) return std::nullopt;
            const int arc = network.link_arc(link, a_to_b);
            GroupRisk group{arc, finder.of_presets(arc, members, *each), finder.of_worst(arc, members, *each)};
            if (group.preset || group.worst) risk.groups.push_back(std::move(group));
        }
    }
    return risk;
}

}  // namespace streamwright::analysis
