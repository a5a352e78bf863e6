// Prompt. Which streams load which arc in each preset, and their exact wire rate there.
#pragma once

#include "core/analysis/facts/forwarding.h"
#include "core/base/rate.h"

#include <vector>

namespace streamwright::analysis {

struct ArcLoad {
    base::Rate wire;           // exact
    std::vector<int> streams;  // stream indices (by id), sorted
    friend bool operator==(const ArcLoad&, const ArcLoad&) = default;
};

struct PresetLoad {
    model::PresetId preset;
    std::vector<ArcLoad> arcs;               // per arc
    std::vector<std::vector<int>> unserved;  // per stream: subscriptions (indices by id) its stream cannot reach
    friend bool operator==(const PresetLoad&, const PresetLoad&) = default;
};

struct LinkLoads {
    std::vector<PresetLoad> presets;              // by number, then id
    PresetLoad idle{model::PresetId(0), {}, {}};  // nothing subscribed
    friend bool operator==(const LinkLoads&, const LinkLoads&) = default;
};

LinkLoads find_link_loads(const graph::Wiring&, const graph::NetworkGraph&, const VlanPaths&, const SpanningTrees&,
                          const Forwarding&);

/// Wire rate of a stream: payload x (payload + headers + Ethernet overhead) / payload, by RFC 3550, 768, 791, IEEE
/// 802.3.
base::Rate wire_rate(const model::Stream& stream, bool tagged);

}  // namespace streamwright::analysis
