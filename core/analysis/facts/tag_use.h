// Prompt. Which tags more than one row of a kind bears. Read from the design itself, so that a rename need not resolve
// the wiring again.
#pragma once

#include "core/model/design.h"

#include <string>
#include <variant>
#include <vector>

namespace streamwright::analysis {

using TaggedRow = std::variant<model::DeviceId, model::CableId, model::StreamId>;

struct SharedTag {
    std::string tag;
    std::vector<TaggedRow> rows;  // two or more, of one kind, by id
    friend bool operator==(const SharedTag&, const SharedTag&) = default;
};

struct TagUse {
    std::vector<SharedTag> shared;  // by kind (devices, cables, streams), then tag; empty tags are left out
    friend bool operator==(const TagUse&, const TagUse&) = default;
};

TagUse find_tag_use(const model::Design& design);

}  // namespace streamwright::analysis
