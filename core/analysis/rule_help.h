// What several rules share: subjects and findings made short, streams by index, free ports and free groups for
// remedies.
#pragma once

#include "core/analysis/facts_set.h"
#include "core/analysis/finding.h"

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace streamwright::analysis {

/// Indices of facts are int; containers want size_t.
constexpr std::size_t at(int index) { return static_cast<std::size_t>(index); }

Finding found(std::string_view rule, Severity severity, std::vector<Subject> subjects, std::vector<base::Value> values,
              int variant = 0);
base::Text line(std::string pattern, std::vector<base::Value> values);

/// The row's name, looked up when shown.
inline base::Ref named(const Subject& subject) { return {subject_text(subject)}; }
Subject port_subject(const graph::Wiring& wiring, graph::PortAt port);
base::Ref port_ref(const graph::Wiring& wiring, graph::PortAt port);
model::DeviceId device_id(const graph::Wiring& wiring, int device);
model::CableId cable_id(const graph::Wiring& wiring, int cable);

/// The streams in the order of their indices.
std::vector<const model::Stream*> streams_by_index(const graph::Wiring& wiring);
/// Whether the device encodes (decodes) here; a dual-role device of no set role does what streams (subscriptions) ask.
bool encodes(const graph::Wiring& wiring, int device);
bool decodes(const graph::Wiring& wiring, int device);

/// Which end of the cable is plugged into the port.
std::optional<model::WhichEnd> end_at(const graph::Wiring& wiring, int cable, graph::PortAt port);
/// A free port of the device that takes what `like` takes, but of that way.
std::optional<graph::PortAt> free_port(const graph::Wiring& wiring, graph::PortAt like, catalogue::Way way);
/// Moves the cable's end from one port to another.
std::optional<Remedy> move_end(const graph::Wiring& wiring, int cable, graph::PortAt from, graph::PortAt to);

/// The settings of a port, blank where nothing is set.
model::PortOverride port_settings(const graph::Wiring& wiring, graph::PortAt port);
/// The device as an edit takes it: without the tag, which the edit leaves alone.
model::Device device_settings(const graph::Wiring& wiring, int device);

/// Gives the stream the next group whose MAC address nobody uses; nothing if there is none in the block.
std::optional<Remedy> other_group(const AddressPlan& plan, const model::Stream& stream);
/// An address of the VLAN's subnet that nobody has and no lease covers; nothing without a subnet.
std::optional<base::Ipv4> free_address(const AddressPlan& plan, const model::Vlan& vlan);
/// What the device would ask from as querier: an address of its own in the VLAN and its subnet, else a free one.
std::optional<base::Ipv4> querier_address(const AddressPlan& plan, const model::Device& device,
                                          const model::Vlan& vlan);
/// Gives the device the next free address of the VLAN's subnet in place of this one.
std::optional<Remedy> other_address(const graph::Wiring& wiring, const AddressPlan& plan, const HostUse& use);

}  // namespace streamwright::analysis
