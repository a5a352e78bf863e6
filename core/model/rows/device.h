// A device of the design: its type, its tag, where it belongs and how it is set up.
// Where it is drawn is a Place, so that tidying a drawing can never change a finding.
#pragma once

#include "core/base/net_address.h"
#include "core/base/units.h"
#include "core/catalogue/codec.h"
#include "core/catalogue/device_type.h"
#include "core/model/ids.h"
#include "core/model/rows/unknown_keys.h"

#include <optional>
#include <string>
#include <vector>

namespace streamwright::model {

/// Where a device stands in its room, measured on the plan.
struct Standing {
    base::Length x, y, z;
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("x_um", s.x);
        v("y_um", s.y);
        v("z_um", s.z);
    }
    friend bool operator==(const Standing&, const Standing&) = default;
};

enum class RackFace { front, rear };

/// Lowest unit it takes, U1 at the bottom.
struct RackPlace {
    RackId rack;
    int unit = 1;
    RackFace face = RackFace::front;
    static RackPlace blank() { return {RackId(0)}; }
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("rack", s.rack);
        v("unit", s.unit);
        v("face", s.face);
    }
    friend bool operator==(const RackPlace&, const RackPlace&) = default;
};

/// The chassis that holds a card, and the slot, counted from 1.
struct ChassisPlace {
    DeviceId chassis;
    int slot = 1;
    static ChassisPlace blank() { return {DeviceId(0)}; }
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("chassis", s.chassis);
        v("slot", s.slot);
    }
    friend bool operator==(const ChassisPlace&, const ChassisPlace&) = default;
};

/// One address of a network interface. Without a port it belongs to the device as a whole.
struct HostAddress {
    std::optional<PortKey> port;
    std::optional<VlanId> vlan;
    std::optional<base::Ipv4> address;  // none: leased
    std::optional<base::MacAddress> mac;
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("port", s.port);
        v("vlan", s.vlan);
        v("address", s.address);
        v("mac", s.mac);
    }
    friend bool operator==(const HostAddress&, const HostAddress&) = default;
};

/// A querier set on a switch for one VLAN; without an address it asks from 0.0.0.0.
struct Querier {
    VlanId vlan;
    std::optional<base::Ipv4> address;
    static Querier blank() { return {VlanId(0), {}}; }
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("vlan", s.vlan);
        v("address", s.address);
    }
    friend bool operator==(const Querier&, const Querier&) = default;
};

/// Settings of a switch; what is not set follows the type or the standard's default.
struct BridgeSettings {
    std::optional<int> priority;              // 0 to 61440 in steps of 4096; default 32768
    std::optional<base::MacAddress> address;  // bridge address; without it the device id decides ties
    bool tree_off = false;                    // runs no spanning tree
    bool snooping_off = false;
    bool fast_leave = false;  // ports with one receiver behind them drop a stream as soon as it is left
    std::string stack;        // switches of the same non-empty stack are one bridge
    std::vector<Querier> queriers;
    std::vector<VlanId> snooping_off_vlans;
    std::vector<VlanId> multicast_router_vlans;  // routes multicast in these VLANs
    // Tree timers that it gives out as root; none: the standard's 2, 20 and 15 s.
    std::optional<int> hello_s, max_age_s, forward_delay_s;
    catalogue::SupplySet supplies = catalogue::SupplySet::one;
    std::optional<catalogue::PoeAllocation> poe_allocation;  // none: as the type states
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("priority", s.priority);
        v("address", s.address);
        v("tree_off", s.tree_off);
        v("snooping_off", s.snooping_off);
        v("fast_leave", s.fast_leave);
        v("stack", s.stack);
        v("queriers", s.queriers);
        v("snooping_off_vlans", s.snooping_off_vlans);
        v("multicast_router_vlans", s.multicast_router_vlans);
        v("hello_s", s.hello_s);
        v("max_age_s", s.max_age_s);
        v("forward_delay_s", s.forward_delay_s);
        v("supplies", s.supplies);
        v("poe_allocation", s.poe_allocation);
    }
    friend bool operator==(const BridgeSettings&, const BridgeSettings&) = default;
};

struct Device {
    DeviceId id;
    TypeKey type;
    std::string tag;
    std::string note;
    std::optional<RoomId> room;
    std::optional<Standing> standing;
    std::optional<RackPlace> rack;
    std::optional<ChassisPlace> chassis;
    std::vector<catalogue::Role> roles;  // what it does here; empty: all that its type can at once, else undecided
    std::optional<catalogue::ControlMethod> control;  // asked for here; none: any that its type needs
    std::optional<base::Duration> sound_delay;        // set on it, beside what its type takes by itself
    std::string host_name;
    std::string serial;
    std::vector<HostAddress> addresses;
    BridgeSettings bridging;
    UnknownKeys unknown;

    using Key = DeviceId;
    static Device blank(Key key) { return Device{key}; }
    Key key() const { return id; }
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("id", s.id);
        v("type", s.type);
        v("tag", s.tag);
        v("note", s.note);
        v("room", s.room);
        v("standing", s.standing);
        v("rack", s.rack);
        v("chassis", s.chassis);
        v("roles", s.roles);
        v("control", s.control);
        v("sound_delay_ns", s.sound_delay);
        v("host_name", s.host_name);
        v("serial", s.serial);
        v("addresses", s.addresses);
        v("bridging", s.bridging);
    }
    friend bool operator==(const Device&, const Device&) = default;
};

}  // namespace streamwright::model

template <>
struct streamwright::base::EnumText<streamwright::model::RackFace> {
    using E = streamwright::model::RackFace;
    static constexpr std::array<std::pair<E, std::string_view>, 2> names{{{E::front, "front"}, {E::rear, "rear"}}};
};
