// The arithmetic of a load, line by line, and which arcs a single stream already overfills; shared by the load rules.
#pragma once

#include "core/analysis/rule_help.h"

#include <optional>
#include <span>
#include <vector>

namespace streamwright::analysis {

/// What every rule about loads reads.
struct LoadReader {
    const graph::Wiring& wiring;
    const graph::Runs& runs;
    const graph::NetworkGraph& network;
    const LinkCapacity& capacity;
    const VlanPaths& paths;
    const Forwarding& forwarding;
};

/// Whether streams bear a tag on this arc.
bool tagged_on_arc(const graph::NetworkGraph& network, const VlanPaths& paths, int arc, VlanIndex vlan);

/// The speed that one stream can use: of the slowest member of the link, or of the leaf.
std::optional<base::BitRate> member_rate(const graph::NetworkGraph& network, const LinkCapacity& capacity, int arc);

/// Streams of equal rate together: "12 x 938.6 Mb/s = 11.3 Gb/s", greatest first.
std::vector<base::Text> load_terms(const graph::Wiring& wiring, const graph::NetworkGraph& network,
                                   const VlanPaths& paths, const Forwarding& forwarding, int arc,
                                   std::span<const int> streams);

/// The greatest wire rate of one of the streams on the arc.
base::Rate greatest_stream(const graph::Wiring& wiring, const graph::NetworkGraph& network, const VlanPaths& paths,
                           const Forwarding& forwarding, int arc, std::span<const int> streams);

/// Whether one of the streams is faster than the arc all by itself: that is a rule of its own.
bool too_fast_alone(const LoadReader& reader, int arc, std::span<const int> streams);

/// The share above which a load is warned of. Headroom is kept for what may be added: nothing joins a single stream on
/// the link of one device, so there the link may be filled to 90 % (common practice), or to the design's headroom if
/// that is higher.
int headroom_percent(const graph::Wiring& wiring, const graph::ArcEnds& ends, std::size_t streams);

/// Per link, whether it belongs to a chain of endpoints: something else hangs on the built-in switch at one of its
/// ends.
std::vector<bool> chained_links(const graph::NetworkGraph& network);

/// The preset that loads the arc most, first of equals; null without presets.
const PresetLoad* fullest_preset(const LinkLoads& loads, int arc);
/// "too full in other presets as well: 2", where others than `told` load the arc above the share of its capacity too.
std::optional<base::Text> other_presets(const LinkLoads& loads, int arc, const PresetLoad& told, base::BitRate capacity,
                                        int percent);

enum class Fill { fits, above_headroom, overfull };
/// How full the arc is against its capacity and the design's headroom; fits where the capacity is not known.
Fill fill_of(const ArcLoad& load, const std::optional<base::BitRate>& capacity, int headroom_percent);
Fill fill_of(const base::Rate& load, const std::optional<base::BitRate>& capacity, int headroom_percent);

}  // namespace streamwright::analysis
