#include "core/analysis/edid_table.h"

#include "core/analysis/facts/picture_ways.h"
#include "core/analysis/rule_help.h"

#include <algorithm>
#include <map>

namespace streamwright::analysis {

namespace edid_table_detail {

using Sound = std::optional<std::vector<catalogue::AudioFormat>>;

Sound of_port(const catalogue::PortType& port) { return port.audio.empty() ? Sound() : Sound(port.audio); }

/// Every format up to the most that is announced; two channels always are.
std::vector<catalogue::AudioFormat> up_to(catalogue::AudioFormat most) {
    std::vector<catalogue::AudioFormat> all;
    for (const auto& [format, name] : base::EnumText<catalogue::AudioFormat>::names)
        if (format <= most) all.push_back(format);
    return all;
}

Sound merged_sound(const graph::Wiring& wiring, const WayNode& node) {
    Sound common;
    for (const auto& end : node.ends) {
        if (!end.shows) continue;
        const auto& here = wiring.port_type(end.at).audio;
        if (here.empty()) return std::nullopt;
        if (!common) common = here;
        std::erase_if(*common, [&](auto format) { return std::ranges::find(here, format) == here.end(); });
    }
    return common;
}

Sound sound_of(const graph::Wiring& wiring, const EdidRow& row, const WayNode& node, const model::EdidPolicy* policy) {
    switch (row.by) {
        case EdidSource::fixed:
            if (policy->audio) return up_to(*policy->audio);
            break;
        case EdidSource::copied:
            return row.from ? of_port(wiring.port_type(*row.from)) : Sound();
        case EdidSource::merged:
        case EdidSource::passed_on:
            return merged_sound(wiring, node);
        default:
            break;
    }
    return of_port(wiring.port_type(row.in));
}

EdidSource source_of(const graph::Wiring& wiring, graph::PortAt in, const model::EdidPolicy* policy) {
    if (policy) {
        switch (policy->way) {
            case model::EdidWay::fixed:
                return EdidSource::fixed;
            case model::EdidWay::copied:
                return EdidSource::copied;
            case model::EdidWay::merged:
                return EdidSource::merged;
        }
    }
    if (picture_part(*wiring.devices[at(in.device)].type) == PicturePart::passes) return EdidSource::passed_on;
    return wiring.port_type(in).picture ? EdidSource::own : EdidSource::not_known;
}

std::vector<standards::VideoFormat> rasters_of(const FormatSpace& space, const FormatSet& set) {
    std::vector<standards::VideoFormat> rasters;
    for (int raster = space.rasters() - 1; raster >= 0; --raster) {
        FormatSet one = space.none();
        one[at(raster)] = set[at(raster)];
        if (const auto best = best_of(one)) rasters.push_back(space.format(*best));
    }
    return rasters;
}

/// Pictures known to come, by input: at the first input of their way, and where they end.
std::map<graph::PortAt, std::vector<standards::VideoFormat>> arriving(const graph::SignalGraph& signals,
                                                                      const VideoChains& chains) {
    std::map<graph::PortAt, std::vector<standards::VideoFormat>> all;
    const auto add = [&](graph::PortAt in, int number) {
        auto& list = all[in];
        const auto format = chains.space.format(number);
        if (std::ranges::find(list, format) == list.end()) list.push_back(format);
    };
    for (const auto& origin : chains.origins) {
        const auto first = signals.hops[at(origin.hop)].to;
        if (origin.sent) add(first, *origin.sent);
        for (const auto& arrival : origin.arrivals)
            if (arrival.left && arrival.at != first) add(arrival.at, *arrival.left);
    }
    return all;
}

}  // namespace edid_table_detail

std::vector<EdidRow> edid_table(const Facts& facts) {
    using namespace edid_table_detail;
    const auto& wiring = facts.get<graph::Wiring>();
    const auto& signals = facts.get<graph::SignalGraph>();
    PictureWays ways(wiring, facts.get<graph::Runs>(), signals);
    const auto arrives = arriving(signals, facts.get<VideoChains>());
    std::map<graph::PortAt, EdidRow> rows;
    for (const auto& hop : signals.hops) {
        if (wiring.port_type(hop.to).signal != catalogue::Signal::video) continue;
        auto& row = rows[hop.to];
        row.in = hop.to;
        row.fed_by.push_back(hop.from);
    }
    std::vector<EdidRow> table;
    for (auto& [in, row] : rows) {
        const auto* settings = wiring.port_override(in);
        const auto* policy = settings && settings->edid ? &*settings->edid : nullptr;
        const auto& node = ways.node(ways.node_at(in));
        row.by = source_of(wiring, in, policy);
        if (policy && policy->from) row.from = wiring.port_at(*policy->from);
        if (row.by != EdidSource::not_known) row.rasters = rasters_of(ways.space(), ways.sets().set(node.announced));
        row.audio = sound_of(wiring, row, node, policy);
        if (const auto found = arrives.find(in); found != arrives.end()) row.arrives = found->second;
        table.push_back(std::move(row));
    }
    return table;
}

}  // namespace streamwright::analysis
