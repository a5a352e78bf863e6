// How far balanced copper and direct-attach cables carry Ethernet: by physical layer and cable grade, by the geometry
// of structured cabling (permanent link, channel, cords), and less where it is hot.
#pragma once

#include "core/base/units.h"
#include "core/standards/citation.h"

#include <optional>
#include <span>
#include <string_view>

namespace streamwright::standards {

enum class CopperGrade { cat5e, cat6, cat6a, cat8 };

/// conditional: works only if the installed cabling proves it (alien crosstalk, bundling): a caution, never a pass.
enum class Support { full, conditional, none };

struct CopperReach {
    std::string_view phy;  // "10GBASE-T"
    base::BitRate rate;
    CopperGrade grade;
    Support support;
    base::Length channel;  // longest channel; zero where not supported
    Citation source;
};

std::span<const CopperReach> copper_reaches();

/// Null where no row speaks of that physical layer or rate: not known.
const CopperReach* copper_reach(std::string_view phy, CopperGrade grade);
const CopperReach* copper_reach(base::BitRate rate, CopperGrade grade);

/// Longest channel of 10GBASE-T on category 6 among hostile neighbours (alien crosstalk).
const CopperReach& cat6_among_hostile_neighbours();

/// Direct-attach (twinax) cables by their physical layer, for example "25GBASE-CR".
struct TwinaxReach {
    std::string_view phy;
    base::BitRate rate;
    base::Length most;
    Citation source;
};
std::span<const TwinaxReach> twinax_reaches();
/// The longest that any physical layer of that rate allows; null: not known.
const TwinaxReach* twinax_reach(base::BitRate rate);

/// Structured cabling at 20 degrees C.
inline constexpr base::Length permanent_link_limit = base::Length::from_count(90'000'000);
inline constexpr base::Length channel_limit = base::Length::from_count(100'000'000);
inline constexpr base::Length cords_limit = base::Length::from_count(10'000'000);  // both ends together
inline constexpr base::Length single_cord_limit = base::Length::from_count(5'000'000);
inline constexpr Citation cabling_geometry{"TIA / ISO/IEC", "568.2-D / 11801-1", "channel and permanent link"};

/// How a permanent link shrinks with heat. The three differ by more than a metre at 40 degrees C: name the one in
/// force.
///   table:    the lengths printed in the TIA-568 annex (taken for the next warmer row)
///   linear:   90 m less 0.4 % per degree above 20, 0.6 % above 40 (screened: 0.2 %)
///   quotient: 90 m divided by the growth of attenuation
enum class DeratingRule { table, linear, quotient };
/// Nothing above 60 degrees C, where no document gives a length.
std::optional<base::Length> permanent_link_at(base::Temperature average, bool screened, DeratingRule rule);
Citation derating_source(DeratingRule rule);

/// Cords where the fixed cable is shorter than 90 m (TIA-568 open-office clause): all cords together, and the one at
/// the work area. Gauges 24 and 26 AWG; nothing for others.
std::optional<base::Length> combined_cords(base::Length horizontal, int awg);
std::optional<base::Length> work_area_cord(base::Length horizontal, int awg);
/// Metres of fixed cable that each metre of 26 AWG cord beyond 10 m costs, by rule of thumb: 1.5.
base::Length horizontal_given_up(base::Length extra_cord);

}  // namespace streamwright::standards
