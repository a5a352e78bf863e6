#include "core/analysis/plan_addresses.h"

#include "core/analysis/address_pool.h"
#include "core/analysis/facts/address_plan.h"
#include "core/model/new_vlan.h"
#include "core/standards/host_name.h"
#include "core/standards/multicast.h"

#include <algorithm>
#include <bit>
#include <iterator>
#include <map>
#include <set>
#include <tuple>

namespace streamwright::analysis {

namespace plan_addresses_detail {

using base::Ipv4;
using base::Ipv4Prefix;
using model::VlanId;

constexpr int usual_length = 24, shortest_length = 8;

bool overlaps_another(const model::Design& design, VlanId vlan, const Ipv4Prefix& subnet) {
    return std::any_of(design.vlans.begin(), design.vlans.end(), [&](const model::Vlan& row) {
        return row.id != vlan && row.subnet && row.subnet->overlaps(subnet);
    });
}

/// The smallest subnet that holds them all and none at its ends, from /24 up, with room for as many again as there are
/// devices where that overlaps nobody.
std::optional<Ipv4Prefix> subnet_around(const model::Design& design, const model::Vlan& vlan,
                                        const std::vector<Ipv4>& typed) {
    int length = usual_length;
    for (const auto each : typed) length = std::min(length, std::countl_zero(typed.front().bits ^ each.bits));
    std::optional<Ipv4Prefix> best;
    for (; length >= shortest_length; --length) {
        const auto subnet = Ipv4Prefix::around(typed.front(), length);
        if (overlaps_another(design, vlan.id, subnet)) break;
        auto row = vlan;
        row.subnet = subnet;
        row.lease_first.reset();
        row.lease_last.reset();
        const AddressPool pool(row);
        if (!std::all_of(typed.begin(), typed.end(), [&](Ipv4 each) { return pool.sound(each); })) continue;
        best = subnet;
        if (subnet.usable_hosts() >= 2 * static_cast<std::int64_t>(design.devices.size())) break;
    }
    return best;
}

struct Planner {
    const model::Design& design;
    graph::Wiring wiring;
    graph::Runs runs;
    AddressPlan typed;
    model::Editing editing;
    std::set<Ipv4> used;
    std::map<VlanId, AddressPool> pools;
    std::vector<int> order;        // devices that have a network port, by room and tag
    std::set<std::string> stacks;  // whose members have their address
    PlannedAddresses plan;

    explicit Planner(const model::Design& from)
        : design(from),
          wiring(graph::wire(from)),
          runs(graph::find_runs(wiring)),
          typed(find_address_plan(wiring, runs)),
          editing(from) {}

    const model::Device& row(int device) const { return *wiring.devices[static_cast<std::size_t>(device)].row; }

    const catalogue::DeviceType* type_with_network(int device) const {
        const auto* type = wiring.devices[static_cast<std::size_t>(device)].type;
        if (!type || type->module) return nullptr;
        for (int i = 0; i < static_cast<int>(type->ports.size()); ++i)
            if (wiring.is_network_port({device, i})) return type;
        return nullptr;
    }
    bool is_switch(int device) const {
        const auto* type = wiring.devices[static_cast<std::size_t>(device)].type;
        return type && type->kind == catalogue::DeviceKind::network_switch;
    }

    /// Devices of no room come last.
    std::tuple<bool, std::string, std::uint64_t, std::string, std::uint64_t> place_in_order(
        const model::Device& device) const {
        const auto* room = device.room ? design.rooms.find(*device.room) : nullptr;
        return {!room, room ? room->number : std::string(), room ? room->id.bits() : 0, device.tag, device.id.bits()};
    }

    void put_in_order() {
        for (int i = 0; i < static_cast<int>(wiring.devices.size()); ++i)
            if (type_with_network(i)) order.push_back(i);
        std::sort(order.begin(), order.end(),
                  [&](int a, int b) { return place_in_order(row(a)) < place_in_order(row(b)); });
    }

    void read_typed() {
        for (const auto& use : typed.hosts) used.insert(use.address);
        for (const auto& vlan : design.vlans)
            if (vlan.gateway) used.insert(*vlan.gateway);
        for (const auto& device : design.devices)
            if (!device.bridging.stack.empty() && has_address(device)) stacks.insert(device.bridging.stack);
    }
    static bool has_address(const model::Device& device) {
        return std::any_of(device.addresses.begin(), device.addresses.end(),
                           [](const auto& each) { return each.address.has_value(); });
    }

    /// A typed host within the typed lease range, or a lease outside, would only be found fault with.
    std::optional<Ipv4Prefix> subnet_for(const model::Vlan& vlan) const {
        std::vector<Ipv4> hosts;
        for (const auto& use : typed.hosts)
            if (use.vlan == vlan.id) hosts.push_back(use.address);
        auto all = hosts;
        for (const auto& each : {vlan.gateway, vlan.lease_first, vlan.lease_last})
            if (each) all.push_back(*each);
        if (all.empty()) return model::free_subnet(editing.now, vlan.vid, used);
        auto row = vlan;
        row.subnet = subnet_around(editing.now, vlan, all);
        if (!row.subnet) return std::nullopt;
        const AddressPool pool(row);
        const bool good = std::all_of(hosts.begin(), hosts.end(), [&](Ipv4 each) { return pool.sound(each); });
        return good ? row.subnet : std::nullopt;
    }

    void give_subnets() {
        std::vector<std::pair<int, VlanId>> numbers;
        for (const auto& vlan : design.vlans) numbers.emplace_back(vlan.vid, vlan.id);
        std::sort(numbers.begin(), numbers.end());
        for (const auto& [number, id] : numbers) {
            auto vlan = *design.vlans.find(id);
            PlannedVlan planned{id};
            if (!vlan.subnet) {
                vlan.subnet = subnet_for(vlan);
                planned.subnet_given = vlan.subnet.has_value();
                if (vlan.subnet) editing.put(vlan);
            }
            planned.subnet = vlan.subnet;
            if (vlan.subnet) pools.emplace(id, AddressPool(vlan));
            plan.vlans.push_back(std::move(planned));
        }
    }

    PlannedVlan& told(VlanId vlan) {
        return *std::find_if(plan.vlans.begin(), plan.vlans.end(), [&](const auto& each) { return each.vlan == vlan; });
    }
    void tell_without(VlanId vlan, model::DeviceId device) {
        auto& without = told(vlan).without;
        if (without.empty() || without.back() != device) without.push_back(device);
    }

    /// An address in the VLAN for the device; none is told.
    std::optional<Ipv4> take(std::optional<VlanId> vlan, model::DeviceId device, Ipv4 above = {}) {
        if (!vlan || !design.vlans.contains(*vlan)) {
            if (plan.in_no_vlan.empty() || plan.in_no_vlan.back() != device) plan.in_no_vlan.push_back(device);
            return std::nullopt;
        }
        const auto pool = pools.find(*vlan);
        auto address = pool == pools.end() ? std::nullopt : pool->second.take(used, above);
        if (!address) tell_without(*vlan, device);
        return address;
    }

    std::optional<VlanId> vlan_of(int device, const model::HostAddress& host) const {
        return host.vlan ? host.vlan : vlan_of_address(wiring, runs, device, host.port);
    }
    bool leases(std::optional<VlanId> vlan) const {
        const auto* held = vlan ? design.vlans.find(*vlan) : nullptr;
        return held && held->lease_first && held->lease_last;
    }

    void give_host_addresses(int device) {
        auto now = *editing.now.devices.find(row(device).id);
        if (!now.bridging.stack.empty() && stacks.contains(now.bridging.stack)) return;
        if (now.addresses.empty()) now.addresses.emplace_back();
        const bool listed = !row(device).addresses.empty();
        bool given = false;
        for (auto& host : now.addresses) {
            const auto vlan = vlan_of(device, host);
            if (host.address || (listed && leases(vlan))) continue;
            host.address = take(vlan, now.id);
            if (!host.address) continue;
            given = true;
            ++(is_switch(device) ? told(*vlan).switches : told(*vlan).endpoints);
        }
        if (!given) return;
        if (!now.bridging.stack.empty()) stacks.insert(now.bridging.stack);
        editing.put(std::move(now));
    }

    /// The lowest address that somebody typed for a querier of the VLAN, which asks on; 0.0.0.0 where there is none.
    Ipv4 asking(VlanId vlan) const {
        for (const auto& use : typed.hosts)
            if (use.querier && use.vlan == vlan) return use.address;
        return {};
    }
    std::optional<Ipv4> own_address(int device, VlanId vlan, Ipv4 above) const {
        const auto pool = pools.find(vlan);
        if (pool == pools.end()) return std::nullopt;
        for (const auto& host : editing.now.devices.find(row(device).id)->addresses) {
            if (!host.address || vlan_of(device, host) != vlan || *host.address <= above) continue;
            if (!pool->second.sound(*host.address)) continue;
            const auto shared = std::any_of(typed.hosts.begin(), typed.hosts.end(), [&](const HostUse& use) {
                return use.address == *host.address && use.device != device;
            });
            if (!shared) return host.address;
        }
        return std::nullopt;
    }

    void give_querier_addresses(int device) {
        if (row(device).bridging.queriers.empty()) return;
        auto now = *editing.now.devices.find(row(device).id);
        for (auto& querier : now.bridging.queriers) {
            if (querier.address) continue;
            const auto above = asking(querier.vlan);
            querier.address = own_address(device, querier.vlan, above);
            if (!querier.address) querier.address = take(querier.vlan, now.id, above);
            if (querier.address) ++told(querier.vlan).queriers;
        }
        editing.put(std::move(now));
    }

    /// A tag may make the name of another device; then -2, -3 and on are added.
    void give_host_names() {
        std::set<std::string> names;
        for (const auto& device : design.devices) names.insert(standards::host_label(device.host_name));
        for (const int device : order) {
            auto now = *editing.now.devices.find(row(device).id);
            const auto label = standards::host_label(now.tag);
            if (!now.host_name.empty() || label.empty()) continue;
            now.host_name = label;
            for (int i = 2; !names.insert(now.host_name).second; ++i) {
                const auto number = "-" + std::to_string(i);
                now.host_name =
                    standards::host_label(label.substr(0, standards::longest_host_label - number.size())) + number;
            }
            ++plan.host_names;
            editing.put(std::move(now));
        }
    }

    void give_groups() {
        using standards::first_plan_group, standards::last_plan_group;
        std::set<base::MacAddress> macs;
        for (const auto& use : typed.groups) macs.insert(use.mac);
        const auto key = [&](const model::Stream& stream) {
            const auto* encoder = design.devices.find(stream.encoder);
            return std::tuple(place_in_order(encoder ? *encoder : model::Device::blank(stream.encoder)), stream.tag,
                              stream.id.bits());
        };
        std::vector<std::pair<decltype(key(*design.streams.begin())), const model::Stream*>> wanting;
        for (const auto& stream : design.streams)
            if (!stream.group) wanting.emplace_back(key(stream), &stream);
        std::sort(wanting.begin(), wanting.end());
        auto next = first_plan_group;
        for (const auto& [place, stream] : wanting) {
            while (next <= last_plan_group && macs.contains(standards::group_mac(next))) ++next.bits;
            if (next > last_plan_group) {
                plan.without_group.push_back(stream->id);
                continue;
            }
            auto now = *stream;
            now.group = next;
            macs.insert(standards::group_mac(next));
            editing.put(std::move(now));
            ++plan.groups;
        }
        const auto first = standards::group_mac(first_plan_group), last = standards::group_mac(last_plan_group);
        plan.groups_free = std::int64_t{last_plan_group.bits} - first_plan_group.bits + 1 -
                           std::distance(macs.lower_bound(first), macs.upper_bound(last));
    }

    void count_free() {
        for (auto& planned : plan.vlans)
            if (const auto pool = pools.find(planned.vlan); pool != pools.end()) planned.free = pool->second.free(used);
    }
};

}  // namespace plan_addresses_detail

PlannedAddresses plan_addresses(const model::Design& design) {
    plan_addresses_detail::Planner planner(design);
    planner.put_in_order();
    planner.read_typed();
    planner.give_subnets();
    for (const int device : planner.order)
        if (planner.is_switch(device)) planner.give_host_addresses(device);
    for (const int device : planner.order) planner.give_querier_addresses(device);
    for (const int device : planner.order)
        if (!planner.is_switch(device)) planner.give_host_addresses(device);
    planner.give_host_names();
    planner.give_groups();
    planner.count_free();
    planner.plan.delta = planner.editing.done();
    return std::move(planner.plan);
}

}  // namespace streamwright::analysis
