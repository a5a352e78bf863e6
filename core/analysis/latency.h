// How late a picture is: from the encoder's input to the decoder's output, per subscription. Worked out when a schedule
// or the properties ask for it and not kept as a fact, for no rule reads it and no edit should wait for it.
#pragma once

#include "core/analysis/facts_set.h"

#include <optional>
#include <vector>

namespace streamwright::analysis {

/// What each part adds; none: not known, and then the sums that hold it are not known either.
struct LatencyParts {
    std::optional<base::Duration> encoding, decoding;  // as the types state
    std::optional<base::Duration> serialising;         // a full packet put on every line of the way
    std::optional<base::Duration> switching;           // forwarding latency of the switches, as their types state
    std::optional<base::Duration>
        queueing;  // at most: one full packet of each other stream of the preset, on each line
    std::optional<base::Duration> propagation;
    friend bool operator==(const LatencyParts&, const LatencyParts&) = default;
};

struct SubscriptionLatency {
    model::SubscriptionId subscription;
    model::PresetId preset;
    model::StreamId stream;
    LatencyParts parts;
    std::optional<base::Duration> most;                 // from end to end
    std::optional<base::Duration> way_least, way_most;  // without encoding; least: nothing queues
    friend bool operator==(const SubscriptionLatency&, const SubscriptionLatency&) = default;
};

/// What latencies are worked out from.
struct LatencyFacts {
    const graph::Wiring& wiring;
    const graph::Runs& runs;
    const graph::NetworkGraph& network;
    const LinkCapacity& capacity;
    const VlanPaths& paths;
    const Forwarding& forwarding;
    const SpanningTrees& trees;
    const LinkLoads& loads;
    const CableLengths& lengths;
};

/// Over the network alone, without encoding and decoding; least: nothing queues.
struct WayTime {
    base::Duration least, most;
};
/// Nothing where a part is not known.
std::optional<WayTime> way_time(const LatencyFacts& facts, const PresetLoad& load, int stream, int decoder);

/// Of every subscription, or of one decoder's, by id. Nothing is known of one that its stream does not reach over the
/// network. Queueing is bounded by one packet of each other stream ahead on each line: encoders space their packets and
/// lines are not overfull (common practice; with bursts it is more); other traffic is not counted. An overfull line has
/// no bound.
std::vector<SubscriptionLatency> find_latencies(const Facts& facts, std::optional<model::DeviceId> decoder = {});

/// How far apart the displays of the same stream in the same preset may be at most: the latest arrival of one less the
/// earliest of another. None where only one shows it, or something is not known.
std::optional<base::Duration> skew(const std::vector<SubscriptionLatency>& all, const SubscriptionLatency& of);

}  // namespace streamwright::analysis
