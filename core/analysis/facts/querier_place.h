// Deferred. Where the querier of each VLAN stands, and where it would stand best: every switch of its part of the
// network is tried, and the greatest load of a direction between two bridges is taken, idle or in any preset. All
// streams go toward the querier (RFC 4541 2.1.2), so its place decides which trunks carry them unasked.
#pragma once

#include "core/analysis/facts/link_load.h"

#include <cstdint>
#include <optional>
#include <stop_token>
#include <vector>

namespace streamwright::analysis {

/// The fullest direction between two bridges that carries the VLAN; other VLANs on it count.
struct FullestArc {
    int arc = -1;  // none: the VLAN crosses no link
    base::Rate wire;
    friend bool operator==(const FullestArc&, const FullestArc&) = default;
};

struct QuerierPlace {
    VlanIndex vlan = 0;
    int now = 0, best = 0;  // bridges; equal where no place is better
    FullestArc with_now, with_best;
    friend bool operator==(const QuerierPlace&, const QuerierPlace&) = default;
};

/// Only parts of the network where streams enter, and where exactly one switch asks, from an address.
struct QuerierPlaces {
    std::vector<QuerierPlace> places;  // by VLAN, then bridge
    friend bool operator==(const QuerierPlaces&, const QuerierPlaces&) = default;
};

/// A VLAN with more switches times arcs is not tried: each trial works out all loads again.
inline constexpr std::int64_t most_querier_trials = 200'000;

FullestArc fullest_arc(const graph::NetworkGraph&, const VlanPaths&, const LinkLoads&, VlanIndex vlan);

/// Nothing if stopped.
std::optional<QuerierPlaces> find_querier_places(const graph::Wiring&, const graph::NetworkGraph&, const VlanPaths&,
                                                 const SpanningTrees&, const Forwarding&, const LinkLoads&,
                                                 const std::stop_token&);

}  // namespace streamwright::analysis
