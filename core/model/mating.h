// What mates what: whether two ports, or a port and a cable, can be joined at all, by kind, way and connector.
#pragma once

#include "core/catalogue/cable_type.h"
#include "core/catalogue/device_type.h"
#include "core/model/design.h"

#include <string>

namespace streamwright::model {

/// A port of a device with the module set into it; the pointers live as long as the design.
struct PortFacts {
    const Device* device = nullptr;
    const catalogue::PortType* port = nullptr;
    const catalogue::ModuleFacts* module = nullptr;  // in a cage; null: none set
};

/// Null members where the device, its type or the port are not there.
PortFacts port_facts(const Design& design, const PortRef& ref);

/// "ENC-01 net", or the id where there is no such device.
std::string port_name(const Design& design, const PortRef& ref);

/// One carries what the other carries. A cage without a module may become copper or fibre; a through port carries
/// whatever mates its connector.
bool signals_mate(const PortFacts& a, const PortFacts& b);
/// An output to an input, a USB host to a USB device; network and through ports go either way.
bool ways_mate(const catalogue::PortType& a, const catalogue::PortType& b);
/// The connectors are of one family, so that a usual lead joins them.
bool connectors_mate(const PortFacts& a, const PortFacts& b);
/// The cable bears a plug for the port, and carries what the port does.
bool cable_fits(const catalogue::CableType& type, const PortFacts& end);
/// Whether a lead with two different plugs has the right one for each end; ends that are cages still to be filled pass.
bool cable_joins(const catalogue::CableType& type, const PortFacts& a, const PortFacts& b);

}  // namespace streamwright::model
