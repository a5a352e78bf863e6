// The list of parts while it is being counted: each part once, found again by what it is. Helper of the fact `Parts`.
#pragma once

#include "core/analysis/facts/parts.h"

#include <map>
#include <tuple>

namespace streamwright::analysis {

class PartList {
public:
    /// Drawn and derived parts of one type stand apart.
    Part& device(const catalogue::DeviceType* type, const std::string& key, PartFrom from);
    Part& cable(const graph::WiredCable& cable);
    Part& lead(PartKind kind, const LeadNeed& need);
    /// A supply or licence that a type needs.
    Part& needed_by(const catalogue::DeviceType& type, PartKind kind, const std::string& name);
    Part& fitting(PartKind kind);
    std::vector<Part> done() &&;

private:
    using Key = std::tuple<PartKind, std::string, PartFrom, std::string, std::optional<LeadNeed>>;
    Part& at(Key key);
    std::map<Key, Part> parts_;
};

/// One piece more, for that device.
void add_piece(Part& part, model::DeviceId where);

/// Patch leads at the ends of installed cable, and mains leads at inlets, where the drawing draws none.
void add_leads(const graph::Wiring& wiring, PartList& parts);
/// Plug-in supplies of devices that the network does not feed.
void add_supplies(const graph::Wiring& wiring, const PowerBudget& power, PartList& parts);
/// Fixings, shelves, blanks and earthing kits of racks; labels of cables.
void add_fittings(const graph::Wiring& wiring, PartList& parts);
void add_licences(const graph::Wiring& wiring, PartList& parts);
/// Spares by the plan in the design's settings.
void add_spares(const model::Design& design, std::vector<Part>& parts);

/// Both ends go straight into cages: it is lead and two transceivers in one.
bool is_direct_attach(const catalogue::CableType& type);

}  // namespace streamwright::analysis
