// The shipped types: every file reads, reads back equal, and the invented families differ as they must.
#include "core/catalogue/catalogue.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <set>
#include <string>

namespace streamwright::catalogue {

namespace library_test {

Catalogue library() {
    auto read = read_catalogue(STREAMWRIGHT_SOURCE_DIR "/resources/types");
    EXPECT_TRUE(read.ok()) << (read.ok() ? "" : read.error().english());
    return read.ok() ? std::move(*read) : Catalogue{};
}

TEST(Library, HoldsWhatTheDemoVenueNeeds) {
    const auto types = library();
    EXPECT_GE(types.devices.size(), 70U);
    EXPECT_GE(types.cables.size(), 40U);
    std::set<DeviceKind> kinds;
    for (const auto& type : types.devices) kinds.insert(type.kind);
    for (const auto& [kind, name] : base::EnumText<DeviceKind>::names) EXPECT_TRUE(kinds.count(kind)) << name;
}

TEST(Library, EveryTypeReadsBackEqualAndBearsNothingUnknown) {
    const auto types = library();
    for (const auto& type : types.devices) {
        const auto again = read_device_type(write_device_type(type), type.key.text);
        ASSERT_TRUE(again.ok()) << again.error().english();
        EXPECT_EQ(*again, type) << type.key.text;
        EXPECT_TRUE(type.unknown.empty()) << type.key.text << ": " << type.unknown.begin()->first;
    }
    for (const auto& type : types.cables) {
        const auto again = read_cable_type(write_cable_type(type), type.key.text);
        ASSERT_TRUE(again.ok()) << again.error().english();
        EXPECT_EQ(*again, type) << type.key.text;
        EXPECT_TRUE(type.unknown.empty()) << type.key.text << ": " << type.unknown.begin()->first;
    }
}

// IEC 60320-1: a C20 inlet takes 16 A by a C19; leads and something that needs them are there.
TEST(Library, HoldsLeadsForInletsOfSixteenAmperes) {
    const auto types = library();
    const auto has = [](const auto& list, Connector connector) { return std::ranges::count(list, connector) != 0; };
    int inlets = 0, leads = 0;
    for (const auto& type : types.devices)
        for (const auto& port : type.ports) inlets += port.connector == Connector::iec_c20;
    for (const auto& type : types.cables)
        leads +=
            type.signal == Signal::power && has(type.plugs, Connector::iec_c19) && has(type.plugs, Connector::iec_c20);
    EXPECT_GE(inlets, 1);
    EXPECT_EQ(leads, 1);
}

TEST(Library, NoPortKeyStandsTwiceInAType) {
    for (const auto& type : library().devices) {
        std::set<PortKey> keys;
        for (const auto& port : type.ports) EXPECT_TRUE(keys.insert(port.key).second) << type.key.text;
    }
}

TEST(Library, NamesStandOnceAndSwitchesStateTheirFacts) {
    std::set<std::string> names;
    const auto types = library();
    for (const auto& type : types.devices) EXPECT_TRUE(names.insert(type.name).second) << type.name;
    for (const auto& type : types.devices) {
        if (type.kind != DeviceKind::network_switch || !type.bridging->snooping.value_or(false)) continue;
        EXPECT_TRUE(type.bridging->unknown_groups && type.bridging->lookup && type.bridging->floods_without_querier &&
                    type.bridging->bpdus && type.bridging->group_table_size)
            << type.key.text;
    }
}

/// The abilities of design work in which families may differ, as sets of words.
std::set<std::string> abilities(const std::vector<const DeviceType*>& family) {
    std::set<std::string> found;
    for (const DeviceType* type : family) {
        if (type->card_form) found.insert("cards");
        if (type->codec && type->codec->switches_inputs) found.insert("several inputs");
        if (type->codec && type->codec->inputs.size() > 1) found.insert("windows");
        if (type->codec && type->codec->roles.size() > 1)
            found.insert(type->codec->roles_at_once ? "both roles at once" : "either role");
        for (const auto& port : type->ports) {
            if (port.local_output) found.insert("local output");
            if (port.usb_group) found.insert("USB of one role");
            if (port.auxiliary) found.insert("auxiliary port");
            if (port.signal == Signal::audio) found.insert("audio");
            if (port.signal == Signal::control) found.insert("control");
            if (is_cage(port.connector)) found.insert("fibre cage");
            if (port.poe) found.insert("PoE");
        }
    }
    return found;
}

TEST(Library, FamiliesDifferAndNoneHasAllAbilities) {
    const auto types = library();
    std::map<std::string, std::vector<const DeviceType*>> families;
    for (const auto& type : types.devices)
        if (!type.family.empty()) families[type.family].push_back(&type);
    ASSERT_GE(families.size(), 3U);
    std::set<std::string> all;
    for (const auto& [name, family] : families)
        for (const auto& ability : abilities(family)) all.insert(ability);
    EXPECT_GE(all.size(), 10U);
    bool one_without_extras = false;
    for (const auto& [name, family] : families) {
        const auto has = abilities(family);
        EXPECT_LT(has.size(), all.size()) << name;
        one_without_extras = one_without_extras || has.empty() || has == std::set<std::string>{"PoE"};
        for (const auto& [other, other_family] : families) {
            if (other == name) continue;
            const auto theirs = abilities(other_family);
            std::set<std::string> differ;
            std::set_symmetric_difference(has.begin(), has.end(), theirs.begin(), theirs.end(),
                                          std::inserter(differ, differ.end()));
            EXPECT_GE(differ.size(), 3U) << name << " and " << other;
        }
    }
    EXPECT_TRUE(one_without_extras);
}

/// The most a powered device may draw at its input by class 0 to 8: IEEE 802.3 clauses 33 and 145, class tables
/// (12.95, 3.84, 6.49, 12.95, 25.5, 40, 51, 62, 71.3 W).
TEST(Library, PoweredDevicesDrawNoMoreThanTheirClass) {
    constexpr std::int64_t most_mw[] = {12950, 3840, 6490, 12950, 25500, 40000, 51000, 62000, 71300};
    for (const auto& type : library().devices)
        for (const auto& port : type.ports) {
            if (!port.poe || port.poe->side != PoeSide::takes) continue;
            EXPECT_GT(port.poe->draw.count(), 0) << type.key.text;
            EXPECT_LE(port.poe->draw.count(), most_mw[port.poe->poe_class]) << type.key.text;
        }
}

}  // namespace library_test

}  // namespace streamwright::catalogue
