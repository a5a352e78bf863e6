// Prompt. All that must be bought, counted once from the drawing; the bill of materials and sizing both read it.
#pragma once

#include "core/base/units.h"
#include "core/graph/runs.h"

#include <optional>
#include <string>
#include <vector>

namespace streamwright::analysis {

enum class PartFrom { drawn, derived };  // derived: follows from the drawing (transceivers in cages, chassis for cards)

struct Part {
    std::string key;  // type key
    bool is_cable = false;
    std::string name, maker;
    PartFrom from = PartFrom::drawn;
    int quantity = 0;                      // pieces
    std::optional<base::Length> length;    // installed cable: sum of known lengths
    int unknown_lengths = 0;               // cables whose length is not known
    std::vector<model::DeviceId> devices;  // where they are
    std::vector<model::CableId> cables;
    friend bool operator==(const Part&, const Part&) = default;
};

struct Parts {
    std::vector<Part> list;  // devices first, then cables, each by key
    friend bool operator==(const Parts&, const Parts&) = default;
};

Parts find_parts(const graph::Wiring&, const graph::Runs&);

}  // namespace streamwright::analysis
