// What the tests of counted parts share: the parts of a design, and how they are found in the list.
#pragma once

#include "core/analysis/facts/parts.h"
#include "core/graph/runs.h"
#include "tests/support/design_builder.h"

#include <memory>
#include <vector>

namespace streamwright::test::counted_parts {

using analysis::Part;
using analysis::PartFrom;
using analysis::PartKind;

inline std::vector<Part> parts_of(const model::Design& design) {
    const auto wiring = graph::wire(design);
    return analysis::find_parts(wiring, analysis::find_power_budget(wiring, graph::find_runs(wiring))).list;
}

inline bool has_type(const Part& part) { return part.kind == PartKind::device || part.kind == PartKind::cable; }

inline const Part* find(const std::vector<Part>& parts, const std::string& key, PartFrom from = PartFrom::drawn) {
    for (const auto& part : parts)
        if (has_type(part) && part.key == key && part.from == from) return &part;
    return nullptr;
}

/// The only part of the kind; null where there is none or more than one.
inline const Part* only(const std::vector<Part>& parts, PartKind kind) {
    const Part* found = nullptr;
    for (const auto& part : parts) {
        if (part.kind != kind) continue;
        if (found) return nullptr;
        found = &part;
    }
    return found;
}

/// Pieces of all parts of the kind.
inline int pieces(const std::vector<Part>& parts, PartKind kind) {
    int sum = 0;
    for (const auto& part : parts)
        if (part.kind == kind) sum += part.quantity;
    return sum;
}

inline types::CablePtr direct_attach() {
    catalogue::CableType type;
    type.key = {"test.dac"};
    type.name = "Direct-attach cable, 3 m";
    type.medium = catalogue::Medium::twinax;
    type.use = catalogue::CableUse::lead;
    type.plugs = {catalogue::Connector::sfp_plus};
    return std::make_shared<const catalogue::CableType>(type);
}

}  // namespace streamwright::test::counted_parts
