// Prompt. Which streams load which arc in each preset, and their exact wire rate there.
#pragma once

#include "core/analysis/facts/forwarding.h"
#include "core/base/rate.h"

#include <algorithm>
#include <memory>
#include <span>
#include <vector>

namespace streamwright::analysis {

struct ArcLoad {
    base::Rate wire;               // exact
    base::BitRate whole;           // the same, rounded up to whole bits: rules compare this first
    std::span<const int> streams;  // stream indices (by id), sorted; they lie in PresetLoad::pool
    friend bool operator==(const ArcLoad& a, const ArcLoad& b) {
        return std::ranges::equal(a.streams, b.streams) && a.wire == b.wire;
    }
};

struct PresetLoad {
    model::PresetId preset;
    std::vector<ArcLoad> arcs;               // per arc
    std::vector<std::vector<int>> unserved;  // per stream: subscriptions (indices by id) its stream cannot reach
    /// The streams of all arcs in one piece, shared by copies: a list of its own for each of ten thousand arcs costs
    /// more to make and to free than the loads themselves.
    std::shared_ptr<const std::vector<int>> pool;
    friend bool operator==(const PresetLoad& a, const PresetLoad& b) {
        return a.preset == b.preset && a.arcs == b.arcs && a.unserved == b.unserved;
    }
};

struct LinkLoads {
    std::vector<PresetLoad> presets;                  // by number, then id
    PresetLoad idle{model::PresetId(0), {}, {}, {}};  // nothing subscribed
    friend bool operator==(const LinkLoads&, const LinkLoads&) = default;
};

LinkLoads find_link_loads(const graph::Wiring&, const graph::NetworkGraph&, const VlanPaths&, const SpanningTrees&,
                          const Forwarding&);

/// Wire rate of a stream: all its packets with their headers and Ethernet overhead, by RFC 3550, 768, 791, IEEE 802.3.
base::Rate wire_rate(const model::Stream& stream, bool tagged);

}  // namespace streamwright::analysis
