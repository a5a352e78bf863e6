// On demand, since no rule asks for it. All that must be bought, counted from the drawing; the bill of materials reads
// it.
#pragma once

#include "core/analysis/facts/power_budget.h"
#include "core/base/units.h"
#include "core/graph/wiring.h"

#include <compare>
#include <optional>
#include <string>
#include <vector>

namespace streamwright::analysis {

enum class PartKind {
    device,
    cable,
    patch_lead,
    mains_lead,
    plug_in_supply,
    licence,
    fixing_set,  // cage nuts and screws for one unit, shelf or blank
    rack_shelf,
    blank_panel,  // of one rack unit
    earthing_kit,
    cable_label
};

enum class PartFrom { drawn, derived };  // derived: follows from the drawing (transceivers in cages, chassis for cards)

/// A lead that is not drawn has no type yet, for its length is chosen on site: what it must be all the same.
struct LeadNeed {
    catalogue::Signal signal = catalogue::Signal::copper;
    catalogue::Medium medium = catalogue::Medium::balanced_copper;
    catalogue::CableGrade grade = catalogue::CableGrade::none;
    bool screened = false;
    catalogue::Connector near = catalogue::Connector::rj45;  // the socket of the device
    catalogue::Connector far = catalogue::Connector::rj45;   // the end of the installed cable; mains: unused
    friend auto operator<=>(const LeadNeed&, const LeadNeed&) = default;
};

/// What a licence was counted from.
struct LicenceCount {
    catalogue::LicenceNeed need;
    int counted = 0;    // encoders, decoders or endpoints of the design
    int undecided = 0;  // endpoints whose role here is not set, so not counted
    friend bool operator==(const LicenceCount&, const LicenceCount&) = default;
};

struct Part {
    PartKind kind = PartKind::device;
    std::string key;  // type key; of a supply or licence the type that needs it; of a lead not drawn empty
    std::string name, maker;
    PartFrom from = PartFrom::drawn;
    int quantity = 0;                      // pieces
    int spare = 0;                         // pieces beside them, by the plan of spares
    std::optional<base::Length> length;    // installed cable: sum of known lengths
    int unknown_lengths = 0;               // cables whose length is not known
    std::optional<LeadNeed> lead;          // leads that are not drawn
    std::optional<LicenceCount> licence;   // licences
    std::vector<model::DeviceId> devices;  // where they are
    std::vector<model::CableId> cables;
    std::vector<model::RackId> racks;
    friend bool operator==(const Part&, const Part&) = default;
};

struct Parts {
    std::vector<Part> list;  // by kind, each by key
    friend bool operator==(const Parts&, const Parts&) = default;
};

Parts find_parts(const graph::Wiring&, const PowerBudget&);

}  // namespace streamwright::analysis
