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
/// The last two are multimode fibres older than the OM names: 62.5 um with 160 MHz.km, 50 um with 400 MHz.km.
enum class CableGrade { none, cat5e, cat6, cat6a, cat8, om1, om2, om3, om4, om5, os1a, os2, old_62_5, old_50 };
/// Installed cable of a permanent link, or a flexible lead with plugs.
enum class CableUse { installed, lead };

/// What coaxial cable loses over 100 m at one frequency, as its data sheet states.
struct CoaxLoss {
    int megahertz = 0;
    base::Loss per_100m;
    friend bool operator==(const CoaxLoss&, const CoaxLoss&) = default;
};

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
    std::optional<int> awg;                   // gauge of the conductors of balanced copper
    std::optional<bool> crossed;              // fibre of two strands: swaps them from end to end
    std::optional<Polish> polish;             // of its fibre connectors
    std::optional<base::Loss> loss_per_km;    // fibre: stated for the type; none: the most its grade may lose
    std::vector<CoaxLoss> coax_losses;        // rising by frequency
    std::optional<int> conductor_mm2_tenths;  // loudspeaker line: one conductor, tenths of a square millimetre
    std::optional<int> picofarad_per_m;       // serial and audio lines
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
    static constexpr std::array<std::pair<E, std::string_view>, 14> names{{{E::none, "none"},
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
                                                                           {E::os2, "os2"},
                                                                           {E::old_62_5, "old_62_5"},
                                                                           {E::old_50, "old_50"}}};
};
template <>
struct streamwright::base::EnumText<streamwright::catalogue::CableUse> {
    using E = streamwright::catalogue::CableUse;
    static constexpr std::array<std::pair<E, std::string_view>, 2> names{
        {{E::installed, "installed"}, {E::lead, "lead"}}};
};
