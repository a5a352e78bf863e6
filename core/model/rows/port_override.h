// What is set on one port beyond its type: module, VLANs, tree cost, marks. A port without a row follows its type.
#pragma once

#include "core/base/enum_text.h"
#include "core/base/units.h"
#include "core/model/ids.h"
#include "core/model/rows/edid_policy.h"
#include "core/model/rows/unknown_keys.h"

#include <optional>
#include <string>
#include <vector>

namespace streamwright::model {

/// Who keeps power when a switch runs out of it: critical before high before low, then the lower port number.
enum class PoePriority { low, high, critical };

/// Power over the port, where it supplies any.
struct PoeSettings {
    bool off = false;
    PoePriority priority = PoePriority::low;
    std::optional<base::Power> limit;  // at the port; a device of a higher class gets the highest class within it
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("off", s.off);
        v("priority", s.priority);
        v("limit_mw", s.limit);
    }
    friend bool operator==(const PoeSettings&, const PoeSettings&) = default;
};

struct PortOverride {
    PortRef port;
    std::string label;               // what is printed beside the port on site
    std::optional<TypeKey> module;   // transceiver in the cage
    std::optional<VlanId> untagged;  // none: the design's usual VLAN, unless no_untagged
    bool no_untagged = false;
    std::vector<VlanId> tagged;
    std::optional<base::BitRate> rate_limit;  // set to a lower speed
    std::optional<int> path_cost;
    std::optional<int> port_priority;  // 0 to 240 in steps of 16; default 128
    std::string aggregate;             // ports of a switch with the same non-empty name form one group
    bool router_port = false;          // multicast router port set by hand
    bool fast_leave = false;
    bool edge = false;
    bool bpdu_guard = false;
    bool loop_guard = false;
    bool disabled = false;
    PoeSettings poe;
    std::optional<standards::VideoFormat> picture;     // picture outputs: the format set there
    std::optional<standards::HdcpContent> protection;  // of what a source plays; none: not stated
    std::optional<EdidPolicy> edid;                    // picture inputs; none: the type's own
    UnknownKeys unknown;

    using Key = PortRef;
    static PortOverride blank(Key key) { return PortOverride{std::move(key)}; }
    Key key() const { return port; }
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("device", s.port.device);
        v("port", s.port.port);
        v("label", s.label);
        v("module", s.module);
        v("untagged", s.untagged);
        v("no_untagged", s.no_untagged);
        v("tagged", s.tagged);
        v("rate_limit_bps", s.rate_limit);
        v("path_cost", s.path_cost);
        v("port_priority", s.port_priority);
        v("aggregate", s.aggregate);
        v("router_port", s.router_port);
        v("fast_leave", s.fast_leave);
        v("edge", s.edge);
        v("bpdu_guard", s.bpdu_guard);
        v("loop_guard", s.loop_guard);
        v("disabled", s.disabled);
        v("poe", s.poe);
        v("picture", s.picture);
        v("protection", s.protection);
        v("edid", s.edid);
    }
    friend bool operator==(const PortOverride&, const PortOverride&) = default;
};

}  // namespace streamwright::model

template <>
struct streamwright::base::EnumText<streamwright::model::PoePriority> {
    using E = streamwright::model::PoePriority;
    static constexpr std::array<std::pair<E, std::string_view>, 3> names{
        {{E::low, "low"}, {E::high, "high"}, {E::critical, "critical"}}};
};
