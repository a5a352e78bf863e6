// What the address plan gives: worked out by hand from RFC 1918, RFC 2365 and RFC 1112, held against the worked
// examples of tests/reference/network-examples.csv, and on random designs against brute force.
#include "core/analysis/plan_addresses.h"

#include "core/standards/addressing.h"
#include "core/standards/host_name.h"
#include "tests/support/campus.h"
#include "tests/support/clean_design.h"
#include "tests/support/random_edit.h"

#include <gtest/gtest.h>

#include <map>
#include <set>

namespace streamwright::test::plan_addresses_test {

using namespace base::literals;
using analysis::plan_addresses;

model::Design planned(const model::Design& design) {
    auto now = design;
    model::apply(now, plan_addresses(design).delta);
    return now;
}

std::string address_of(const model::Design& design, model::DeviceId id) {
    const auto& hosts = design.devices.find(id)->addresses;
    return hosts.empty() || !hosts.front().address ? "none" : base::print(*hosts.front().address);
}
std::string group_of(const model::Design& design, model::StreamId id) {
    const auto group = design.streams.find(id)->group;
    return group ? base::print(*group) : "none";
}
std::vector<std::string> words_of(const model::Design& design) {
    base::Phrasebook book;
    std::vector<std::string> words;
    for (const auto& line : analysis::plan_lines(plan_addresses(design))) {
        words.push_back(base::fill(line.given, book) + " | " + base::fill(line.room, book) +
                        (line.cannot ? " | " + base::fill(*line.cannot, book) : ""));
    }
    return words;
}

/// A switch that asks in VLAN 20, and endpoints on it.
struct Room {
    DesignBuilder b{3};
    model::VlanId vlan = b.vlan(20, "AV");
    model::DeviceId network_switch = b.device(types::switch_24(), "SW-001");
    model::DeviceId late = b.device(types::encoder(), "ENC-001"), early = b.device(types::encoder(), "ENC-002");
    model::DeviceId nowhere = b.device(types::decoder(), "DEC 1 (spare)");

    Room() {
        b.usual_vlan(vlan);
        b.querier(network_switch, vlan);
        const auto hall = b.room("2.01", "Hall"), foyer = b.room("1.01", "Foyer");
        b.change<model::Device>(late, [&](auto& row) { row.room = hall; });
        b.change<model::Device>(early, [&](auto& row) { row.room = foyer; });
    }
};

TEST(PlanAddresses, GivesAllThatIsLackingInAStatedOrder) {
    Room r;
    const auto one = r.b.stream(r.late, 100_Mbps), two = r.b.stream(r.early, 100_Mbps);
    const auto now = planned(r.b.design);
    // VLAN 20: 10.20.0.0/24, its first address kept for a gateway; the switch and its querier, then by room and tag.
    EXPECT_EQ(base::print(*now.vlans.find(r.vlan)->subnet), "10.20.0.0/24");
    EXPECT_EQ(address_of(now, r.network_switch), "10.20.0.2");
    EXPECT_EQ(now.devices.find(r.network_switch)->bridging.queriers.front().address, base::parse_ipv4("10.20.0.2"));
    EXPECT_EQ(address_of(now, r.early), "10.20.0.3") << "room 1.01";
    EXPECT_EQ(address_of(now, r.late), "10.20.0.4") << "room 2.01";
    EXPECT_EQ(address_of(now, r.nowhere), "10.20.0.5") << "in no room: last";
    EXPECT_EQ(now.devices.find(r.nowhere)->host_name, "dec-1-spare");
    EXPECT_EQ(group_of(now, two), "239.192.0.1");
    EXPECT_EQ(group_of(now, one), "239.192.0.2");
    // 254 usable, one kept, four given; 4 x 65536 groups without the first and the top 256, two given.
    const auto words = words_of(r.b.design);
    ASSERT_EQ(words.size(), 3u);
    EXPECT_EQ(words[0],
              "the subnet 10.20.0.0/24 is new; addresses: switches 1, queriers 1, others 3 | 249 of 254 addresses stay "
              "free");
    EXPECT_EQ(words[1], "host names made from tags: 4 | ");
    EXPECT_EQ(words[2], "groups given to streams: 2 | 261885 groups from 239.192.0.1 to 239.195.254.255 stay free");
}

TEST(PlanAddresses, WhatIsTypedStaysAndIsKeptClearOf) {
    Room r;
    r.b.change<model::Vlan>(r.vlan, [](auto& row) {
        row.subnet = base::parse_ipv4_prefix("192.168.7.0/28");  // hosts 1 to 14
        row.gateway = base::parse_ipv4("192.168.7.14");
        row.lease_first = base::parse_ipv4("192.168.7.3");
        row.lease_last = base::parse_ipv4("192.168.7.12");
    });
    r.b.address(r.early, "192.168.7.1");
    r.b.change<model::Device>(r.late, [](auto& row) {
        row.host_name = "Lectern";
        row.addresses.emplace_back().mac = base::parse_mac("02-00-00-00-00-01");
    });
    const auto now = planned(r.b.design);
    EXPECT_EQ(address_of(now, r.early), "192.168.7.1");
    EXPECT_EQ(address_of(now, r.network_switch), "192.168.7.2");
    EXPECT_EQ(address_of(now, r.late), "none") << "listed without an address where leases are handed out: leased";
    EXPECT_EQ(address_of(now, r.nowhere), "192.168.7.13") << "3 to 12 are leased, 14 is the gateway";
    EXPECT_EQ(now.devices.find(r.late)->host_name, "Lectern");
    EXPECT_EQ(plan_addresses(r.b.design).vlans.front().free, 0);
}

TEST(PlanAddresses, AFullSubnetAndAMissingVlanAreTold) {
    Room r;
    r.b.change<model::Vlan>(r.vlan, [](auto& row) { row.subnet = base::parse_ipv4_prefix("192.168.7.0/30"); });
    // Two hosts; one is kept for a gateway, one goes to the switch.
    const auto plan = plan_addresses(r.b.design);
    EXPECT_EQ(plan.vlans.front().without, (std::vector{r.early, r.late, r.nowhere}));
    EXPECT_NE(words_of(r.b.design)[0].find("The subnet is full; without an address: "), std::string::npos);
    r.b.change<model::Settings>({}, [](auto& row) { row.usual_vlan.reset(); });
    EXPECT_EQ(plan_addresses(r.b.design).in_no_vlan, (std::vector{r.network_switch, r.early, r.late, r.nowhere}));
}

TEST(PlanAddresses, ASubnetIsMadeAroundWhatIsTyped) {
    Room r;
    r.b.address(r.early, "172.16.5.0");  // no host of 172.16.5.0/24: one bit more, 172.16.4.0/23
    EXPECT_EQ(base::print(*planned(r.b.design).vlans.find(r.vlan)->subnet), "172.16.4.0/23");
    r.b.address(r.late, "10.0.0.1");  // no subnet holds both
    const auto plan = plan_addresses(r.b.design);
    EXPECT_EQ(plan.vlans.front().subnet, std::nullopt);
    EXPECT_EQ(plan.vlans.front().without, (std::vector{r.network_switch, r.nowhere}));
}

TEST(PlanAddresses, ANewQuerierNeverUndercutsOneThatWasTyped) {
    // Worked example I-5: of 192.0.2.9 and 192.0.2.10 the first asks, compared as numbers and not as text.
    Room r;
    r.b.change<model::Vlan>(r.vlan, [](auto& row) { row.subnet = base::parse_ipv4_prefix("192.0.2.0/28"); });
    const auto other = r.b.device(types::switch_24(), "SW-002");
    r.b.querier(other, r.vlan, "192.0.2.9");
    const auto now = planned(r.b.design);
    EXPECT_EQ(address_of(now, r.network_switch), "192.0.2.2");
    EXPECT_EQ(now.devices.find(r.network_switch)->bridging.queriers.front().address, base::parse_ipv4("192.0.2.10"));
}

TEST(PlanAddresses, MembersOfAStackShareOne) {
    Room r;
    const auto other = r.b.device(types::switch_24(), "SW-000");
    for (const auto id : {r.network_switch, other})
        r.b.change<model::Device>(id, [](auto& row) { row.bridging.stack = "core"; });
    const auto now = planned(r.b.design);
    EXPECT_EQ(address_of(now, other), "10.20.0.2");
    EXPECT_EQ(address_of(now, r.network_switch), "none");
    EXPECT_EQ(planned(now), now);
}

TEST(PlanAddresses, HostNamesDiffer) {
    DesignBuilder b;
    const auto first = b.device(types::encoder(), "Hall 1"), second = b.device(types::encoder(), "Hall-1");
    const auto third = b.device(types::encoder(), std::string(70, 'x')),
               fourth = b.device(types::encoder(), std::string(71, 'x'));
    const auto now = planned(b.design);
    const auto name = [&](model::DeviceId id) { return now.devices.find(id)->host_name; };
    EXPECT_EQ(name(first), "hall-1");
    EXPECT_EQ(name(second), "hall-1-2");
    EXPECT_EQ(name(third), std::string(63, 'x'));
    EXPECT_EQ(name(fourth), std::string(61, 'x') + "-2");
}

TEST(PlanAddresses, WorkedExamplesOfSubnetSizesFillUp) {
    // 60 devices in a /26 of 62; A-3: 500 in a /23 of 510. One more of each is kept for the gateway.
    for (const auto& [devices, subnet, left] :
         {std::tuple(60, "10.9.0.0/26", 62 - 60 - 1), std::tuple(500, "10.9.0.0/23", 510 - 500 - 1)}) {
        DesignBuilder b;
        b.usual_vlan(b.vlan(1, "AV", subnet));
        for (int i = 0; i < devices; ++i) b.device(types::encoder(), "E" + std::to_string(i));
        const auto plan = plan_addresses(b.design);
        EXPECT_EQ(plan.vlans.front().endpoints, devices);
        EXPECT_EQ(plan.vlans.front().free, left);
        EXPECT_TRUE(plan.vlans.front().without.empty());
    }
}

TEST(PlanAddresses, SixHundredStreamsHaveSixHundredMacAddresses) {
    // Worked example M-13: 600 streams from 239.192.0.1 on; 600 = 2 x 256 + 88, so the last is 239.192.2.88.
    DesignBuilder b;
    const auto encoder = b.device(types::encoder(), "E");
    for (int i = 0; i < 600; ++i) {
        const auto id = b.stream(encoder, 1_Mbps);
        b.change<model::Stream>(id, [&](auto& row) { row.tag = "S-" + std::to_string(1000 + i); });
    }
    const auto now = planned(b.design);
    std::set<base::Ipv4> groups;
    std::set<std::uint32_t> macs;
    for (const auto& stream : now.streams) {
        groups.insert(*stream.group);
        macs.insert(stream.group->bits & 0x7FFFFF);
    }
    EXPECT_EQ(groups.size(), 600u);
    EXPECT_EQ(macs.size(), 600u);
    EXPECT_EQ(base::print(*groups.begin()), "239.192.0.1");
    EXPECT_EQ(base::print(*groups.rbegin()), "239.192.2.88");
}

TEST(PlanAddresses, AGroupThatSharesAMacAddressIsPassedOver) {
    // 225.64.0.1 falls on 01-00-5E-40-00-01, as 239.192.0.1 does (M-1).
    Room r;
    r.b.stream(r.early, 1_Mbps, "225.64.0.1");
    const auto wanting = r.b.stream(r.early, 1_Mbps);
    EXPECT_EQ(group_of(planned(r.b.design), wanting), "239.192.0.2");
}

// ---- random designs

const std::set<std::string_view> address_rules{"address-outside-subnet", "address-twice", "group-reserved",
                                               "group-used-twice", "groups-share-mac"};

std::set<std::string> faults(const model::Design& design) {
    std::set<std::string> keys;
    for (const auto& finding : analysis::analyse(design).findings)
        if (address_rules.contains(finding.rule)) keys.insert(finding.key());
    return keys;
}

/// All addresses and groups with how often they stand, without a look at the facts of the program.
std::map<std::uint32_t, int> hosts_in(const model::Design& design) {
    std::map<std::uint32_t, int> hosts;
    for (const auto& device : design.devices) {
        std::set<std::uint32_t> own;  // a querier asks from its switch's own address
        for (const auto& each : device.addresses)
            if (each.address) own.insert(each.address->bits);
        for (const auto& each : device.bridging.queriers)
            if (each.address && each.address->bits != 0) own.insert(each.address->bits);
        for (const auto bits : own) ++hosts[bits];
    }
    return hosts;
}

void expect_typed_kept(const model::Design& before, const model::Design& after) {
    for (const auto& row : before.devices) {
        const auto& now = *after.devices.find(row.id);
        for (std::size_t i = 0; i < row.addresses.size(); ++i) {
            const auto& was = row.addresses[i];
            if (was.address) {
                EXPECT_EQ(now.addresses[i], was);
            }
        }
        for (std::size_t i = 0; i < row.bridging.queriers.size(); ++i)
            if (row.bridging.queriers[i].address) {
                EXPECT_EQ(now.bridging.queriers[i], row.bridging.queriers[i]);
            }
        if (!row.host_name.empty()) {
            EXPECT_EQ(now.host_name, row.host_name);
        }
    }
    for (const auto& row : before.streams)
        if (row.group) {
            EXPECT_EQ(*after.streams.find(row.id), row);
        }
    for (const auto& row : before.vlans)
        if (row.subnet) {
            EXPECT_EQ(*after.vlans.find(row.id), row);
        }
}

bool sound_host(const model::Vlan& vlan, std::uint32_t bits) {
    if (!vlan.subnet) return false;
    const auto mask = vlan.subnet->length == 0 ? 0 : ~std::uint32_t{0} << (32 - vlan.subnet->length);
    if ((bits & mask) != vlan.subnet->network.bits) return false;
    if (vlan.subnet->length < 31 && (bits == vlan.subnet->network.bits || bits == (vlan.subnet->network.bits | ~mask)))
        return false;
    const bool leased =
        vlan.lease_first && vlan.lease_last && vlan.lease_first->bits <= bits && bits <= vlan.lease_last->bits;
    return !leased;
}

/// Every address that is new is nobody else's, no gateway, no end of its subnet and not leased, by brute force.
void expect_new_hosts_sound(const model::Design& before, const model::Design& after) {
    const auto old = hosts_in(before);
    for (const auto& [bits, count] : hosts_in(after)) {
        const bool was = old.contains(bits);
        if (was) {
            EXPECT_EQ(old.at(bits), count) << base::print(base::Ipv4{bits});
            continue;
        }
        EXPECT_EQ(count, 1) << base::print(base::Ipv4{bits});
        int homes = 0;
        for (const auto& vlan : after.vlans) {
            EXPECT_NE(vlan.gateway, (base::Ipv4{bits}));
            homes += sound_host(vlan, bits) ? 1 : 0;
        }
        EXPECT_GE(homes, 1) << base::print(base::Ipv4{bits});  // typed subnets may overlap
    }
}

/// A subnet that is new meets no other.
void expect_new_subnets_apart(const model::Design& before, const model::Design& after) {
    for (const auto& row : after.vlans) {
        if (!row.subnet || before.vlans.find(row.id)->subnet) continue;
        for (const auto& other : after.vlans) {
            if (other.id == row.id || !other.subnet) continue;
            EXPECT_TRUE(row.subnet->broadcast() < other.subnet->network ||
                        other.subnet->broadcast() < row.subnet->network)
                << base::print(*row.subnet) << " " << base::print(*other.subnet);
        }
    }
}

void expect_new_groups_sound(const model::Design& before, const model::Design& after) {
    std::map<std::uint32_t, int> macs;
    for (const auto& stream : after.streams)
        if (stream.group) ++macs[stream.group->bits & 0x7FFFFF];
    for (const auto& stream : after.streams) {
        EXPECT_TRUE(stream.group);
        if (!stream.group || before.streams.find(stream.id)->group) continue;
        EXPECT_EQ(macs[stream.group->bits & 0x7FFFFF], 1) << base::print(*stream.group);
        EXPECT_EQ(stream.group->bits >> 18, 0xEFC00000U >> 18) << "239.192.0.0/14";
        EXPECT_GT((stream.group->bits & 0x7FFFFF) >> 8, 0U) << "x.0.0.y and x.128.0.y are reserved";
    }
}

void expect_good_plan(const model::Design& before) {
    const auto plan = plan_addresses(before);
    auto after = before;
    model::apply(after, plan.delta);
    const auto was = faults(before);
    for (const auto& key : faults(after)) EXPECT_TRUE(was.contains(key)) << key;
    expect_typed_kept(before, after);
    expect_new_hosts_sound(before, after);
    expect_new_groups_sound(before, after);
    expect_new_subnets_apart(before, after);
    for (const auto& device : after.devices)
        if (device.host_name != before.devices.find(device.id)->host_name) {
            EXPECT_TRUE(standards::is_host_label(device.host_name)) << device.host_name;
        }
    EXPECT_TRUE(plan_addresses(after).delta.empty()) << "a second run changes nothing";
    model::apply(after, plan.delta.inverse());
    EXPECT_EQ(after, before);
}

/// Takes away, and types in, so that something is lacking and something is in the way.
void unsettle(model::Design& design, std::mt19937_64& random) {
    const auto once_in = [&](unsigned times) { return random() % times == 0; };
    const auto near = [&](const model::Vlan& row) {
        return base::Ipv4{(row.subnet ? row.subnet->network.bits : 0x0A010000U) +
                          static_cast<std::uint32_t>(random() % 40)};
    };
    for (auto row : std::vector<model::Vlan>(design.vlans.begin(), design.vlans.end())) {
        if (once_in(3)) row.gateway = near(row);
        if (once_in(3)) {
            row.lease_first = near(row);
            row.lease_last = base::Ipv4{row.lease_first->bits + static_cast<std::uint32_t>(random() % 60)};
        }
        if (once_in(2)) row.subnet.reset();
        design.vlans.put(row);
    }
    for (auto row : std::vector<model::Device>(design.devices.begin(), design.devices.end())) {
        if (once_in(2)) row.addresses.clear();
        for (auto& each : row.addresses)
            if (once_in(4)) each.address.reset();
        for (auto& each : row.bridging.queriers)
            if (once_in(2)) each.address.reset();
        if (once_in(2)) row.host_name.clear();
        design.devices.put(row);
    }
    for (auto row : std::vector<model::Stream>(design.streams.begin(), design.streams.end())) {
        if (once_in(2)) row.group.reset();
        design.streams.put(row);
    }
}

TEST(PlanAddresses, RandomDesignsGetNoFaultThatTheyHadNot) {
    const auto library = types::all();
    int given = 0;
    for (unsigned seed = 1; seed <= 60; ++seed) {
        std::mt19937_64 random(seed);
        auto design = seed % 2 == 0 ? clean_design().design() : model::Design{};
        for (int i = 0; i < 120; ++i)
            if (const auto edit = random_edit(design, library, random))
                model::apply(design, *model::make_edit(design, *edit));
        unsettle(design, random);
        SCOPED_TRACE("seed " + std::to_string(seed));
        expect_good_plan(design);
        given += plan_addresses(design).delta.empty() ? 0 : 1;
        if (HasFailure()) break;
    }
    EXPECT_GT(given, 50);
}

TEST(PlanAddresses, ACampusGetsAll) {
    auto design = campus(300, 11);
    std::mt19937_64 random(5);
    unsettle(design, random);
    expect_good_plan(design);
    const auto plan = plan_addresses(design);
    for (const auto& vlan : plan.vlans)
        if (vlan.subnet_given) {
            EXPECT_TRUE(standards::is_private(vlan.subnet->network));
        }
}

}  // namespace streamwright::test::plan_addresses_test
