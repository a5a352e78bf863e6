#include "core/analysis/load_words.h"

#include "core/model/stream_packets.h"

#include <algorithm>
#include <array>
#include <map>

namespace streamwright::analysis {

namespace load_words_detail {

base::Rate rate_on(const graph::Wiring&, const graph::NetworkGraph& network, const VlanPaths& paths,
                   const Forwarding& forwarding, int arc, const model::Stream& stream, int index) {
    return wire_rate(stream, tagged_on_arc(network, paths, arc, forwarding.streams[at(index)].vlan));
}

/// How many streams of each rate. Most streams of a design weigh like one of a few before: exact rates cost more to
/// make than all the rest.
struct RateCounts {
    std::map<base::Rate, std::int64_t> rates;

    void add(const model::Stream& stream, bool tagged) {
        for (const auto& known : lately_)
            if (known.row && known.tagged == tagged && model::weigh_alike(*known.row, stream)) {
                ++*known.count;
                return;
            }
        auto& count = rates[wire_rate(stream, tagged)];
        lately_[next_++ % lately_.size()] = {&stream, tagged, &count};
        ++count;
    }

private:
    struct Known {
        const model::Stream* row = nullptr;
        bool tagged = false;
        std::int64_t* count = nullptr;
    };
    std::array<Known, 4> lately_;
    std::size_t next_ = 0;
};

}  // namespace load_words_detail

bool tagged_on_arc(const graph::NetworkGraph& network, const VlanPaths& paths, int arc, VlanIndex vlan) {
    const auto edge = at(arc / 2);
    if (edge < network.links.size()) return paths.links[edge].a.tags(vlan) && paths.links[edge].b.tags(vlan);
    return paths.leaves[edge - network.links.size()].tags(vlan);
}

std::optional<base::BitRate> member_rate(const graph::NetworkGraph& network, const LinkCapacity& capacity, int arc) {
    const auto edge = at(arc / 2);
    if (edge >= network.links.size()) return capacity.runs[at(network.leaves[edge - network.links.size()].run)].rate;
    std::optional<base::BitRate> slowest;
    for (const int run : network.links[edge].runs) {
        const auto& rate = capacity.runs[at(run)].rate;
        if (rate && (!slowest || *rate < *slowest)) slowest = rate;
    }
    return slowest;
}

std::vector<base::Text> load_terms(const graph::Wiring& wiring, const graph::NetworkGraph& network,
                                   const VlanPaths& paths, const Forwarding& forwarding, int arc,
                                   std::span<const int> streams) {
    load_words_detail::RateCounts counts;
    for (const int index : streams) {
        const bool tagged = tagged_on_arc(network, paths, arc, forwarding.streams[at(index)].vlan);
        counts.add(*wiring.streams[at(index)].row, tagged);
    }
    std::vector<base::Text> terms;
    for (auto it = counts.rates.rbegin(); it != counts.rates.rend(); ++it)
        terms.push_back(line(STREAMWRIGHT_TEXT("%1 x %2 = %3 on the wire"),
                             {it->second, it->first.ceil(), (it->first * it->second).ceil()}));
    return terms;
}

base::Rate greatest_stream(const graph::Wiring& wiring, const graph::NetworkGraph& network, const VlanPaths& paths,
                           const Forwarding& forwarding, int arc, std::span<const int> streams) {
    base::Rate greatest;
    for (const int index : streams)
        greatest = std::max(greatest, load_words_detail::rate_on(wiring, network, paths, forwarding, arc,
                                                                 *wiring.streams[at(index)].row, index));
    return greatest;
}

int headroom_percent(const graph::Wiring& wiring, const graph::ArcEnds& ends, std::size_t streams) {
    constexpr int lone_stream = 90;
    const int wanted = wiring.design.settings().headroom_percent;
    return !ends.is_link && streams == 1 ? std::max(wanted, lone_stream) : wanted;
}

bool too_fast_alone(const LoadReader& r, int arc, std::span<const int> streams) {
    const auto slowest = member_rate(r.network, r.capacity, arc);
    return slowest && greatest_stream(r.wiring, r.network, r.paths, r.forwarding, arc, streams) > base::Rate(*slowest);
}

std::vector<bool> chained_links(const graph::NetworkGraph& network) {
    std::vector<int> hung(network.bridges.size());
    for (const auto& link : network.links) ++hung[at(link.a)], ++hung[at(link.b)];
    for (const auto& leaf : network.leaves) ++hung[at(leaf.bridge)];
    const auto chains = [&](int bridge) { return network.bridges[at(bridge)].endpoint && hung[at(bridge)] > 1; };
    std::vector<bool> chained;
    for (const auto& link : network.links) chained.push_back(chains(link.a) || chains(link.b));
    return chained;
}

const PresetLoad* fullest_preset(const LinkLoads& loads, int arc) {
    const PresetLoad* fullest = nullptr;
    for (const auto& preset : loads.presets)
        if (!fullest || fullest->arcs[at(arc)].whole < preset.arcs[at(arc)].whole) fullest = &preset;
    return fullest;
}

std::optional<base::Text> other_presets(const LinkLoads& loads, int arc, const PresetLoad& told, base::BitRate capacity,
                                        int percent) {
    std::int64_t others = 0;
    for (const auto& preset : loads.presets)
        if (preset.preset != told.preset && preset.arcs[at(arc)].wire * 100 > base::Rate(capacity) * percent) ++others;
    if (others == 0) return std::nullopt;
    return line(STREAMWRIGHT_TEXT("too full in other presets as well: %1"), {others});
}

Fill fill_of(const ArcLoad& load, const std::optional<base::BitRate>& capacity, int headroom_percent) {
    if (!capacity || load.whole.count() <= capacity->count() / 100 * headroom_percent) return Fill::fits;
    return fill_of(load.wire, capacity, headroom_percent);
}

Fill fill_of(const base::Rate& load, const std::optional<base::BitRate>& capacity, int headroom_percent) {
    if (!capacity || capacity->count() <= 0 || load.is_zero()) return Fill::fits;
    // Whole bits first: nearly every arc is far below, and exact rates cost more to compare.
    if (load.ceil().count() <= capacity->count() / 100 * headroom_percent) return Fill::fits;
    if (load > base::Rate(*capacity)) return Fill::overfull;
    return load * 100 > base::Rate(*capacity) * headroom_percent ? Fill::above_headroom : Fill::fits;
}

}  // namespace streamwright::analysis
