// A type of cable or lead: what it carries, its grade, its plugs, what limits it.
#pragma once

#include "core/catalogue/module_facts.h"
#include "core/catalogue/port_type.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace streamwright::catalogue {

/// Grade of balanced or optical cabling, named as the standards do.
enum class CableGrade { none, cat5e, cat6, cat6a, cat8, om1, om2, om3, om4, om5, os1a, os2 };
/// Installed cable of a permanent link, or a flexible lead with plugs.
enum class CableUse { installed, lead };

struct CableType {
    CableTypeKey key;
    std::string name;
    std::string maker;
    std::string note;
    Signal signal = Signal::copper;
    Medium medium = Medium::other;
    CableGrade grade = CableGrade::none;
    CableUse use = CableUse::installed;
    std::vector<Connector> plugs;  // that either end may bear; a made lead with two has one at each
    bool screened = false;
    int pairs = 4;                     // balanced copper
    int strands = 2;                   // fibre
    std::vector<base::BitRate> rates;  // direct-attach cables: what their ends support
    std::string picture_link;          // fastest picture link it is made for, such as "HDMI 2.0"; empty: not stated
    std::optional<base::Length> made_length;  // leads come in fixed lengths
    std::optional<base::Length> most_length;  // the type's own limit, where it states one
    std::map<std::string, std::string> unknown;
    friend bool operator==(const CableType&, const CableType&) = default;

    /// Whether its plugs meet both connectors at once. A made lead with two plugs has one of each; on cable cut to
    /// length either end is fitted with what it needs.
    bool joins(Connector one, Connector other) const {
        if (plugs.size() != 2 || !made_length) return true;
        return (plugs[0] == one && plugs[1] == other) || (plugs[0] == other && plugs[1] == one);
    }
};

}  // namespace streamwright::catalogue

template <>
struct streamwright::base::EnumText<streamwright::catalogue::CableGrade> {
    using E = streamwright::catalogue::CableGrade;
    static constexpr std::array<std::pair<E, std::string_view>, 12> names{{{E::none, "none"},
                                                                           {E::cat5e, "cat5e"},
                                                                           {E::cat6, "cat6"},
                                                                           {E::cat6a, "cat6a"},
                                                                           {E::cat8, "cat8"},
                                                                           {E::om1, "om1"},
                                                                           {E::om2, "om2"},
                                                                           {E::om3, "om3"},
                                                                           {E::om4, "om4"},
                                                                           {E::om5, "om5"},
                                                                           {E::os1a, "os1a"},
                                                                           {E::os2, "os2"}}};
};
template <>
struct streamwright::base::EnumText<streamwright::catalogue::CableUse> {
    using E = streamwright::catalogue::CableUse;
    static constexpr std::array<std::pair<E, std::string_view>, 2> names{
        {{E::installed, "installed"}, {E::lead, "lead"}}};
};
