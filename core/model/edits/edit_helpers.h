// Small steps that several edits share.
#pragma once

#include "core/base/result.h"
#include "core/catalogue/contradictions.h"
#include "core/model/delta.h"
#include "core/model/row_checks.h"

#include <memory>
#include <optional>
#include <string>

namespace streamwright::model::edit_detail {

/// Checks and puts a row; keys of it that this version does not know stay those of the row it replaces.
template <class Row>
Trouble put_checked(Editing& editing, Row row) {
    if (const Row* held = (editing.now.*table_of<Row>()).find(row.key())) row.unknown = held->unknown;
    if (auto trouble = trouble_with(editing.now, row)) return trouble;
    editing.put(std::move(row));
    return std::nullopt;
}

/// Puts a type; refuses one that contradicts itself, since a file with it could not be opened again.
template <class Row>
Trouble embed(Editing& editing, Row row) {
    if (auto trouble = wrong_value(row)) return trouble;
    if (auto trouble = catalogue::contradiction(*row.type, row.type->name)) return trouble;
    editing.put(std::move(row));
    return std::nullopt;
}

/// Puts a type that the design does not have yet; its own copy is left as it is.
inline Trouble embed_if_new(Editing& editing, const std::shared_ptr<const catalogue::DeviceType>& type) {
    if (editing.now.device_types.contains(type->key)) return std::nullopt;
    return embed(editing, DeviceTypeRow{type});
}
inline Trouble embed_if_new(Editing& editing, const std::shared_ptr<const catalogue::CableType>& type) {
    if (editing.now.cable_types.contains(type->key)) return std::nullopt;
    return embed(editing, CableTypeRow{type});
}

template <class Id>
base::Error no_such(const char* what, const Id& id) {
    return {"The design has no %1 %2.", {what, key_text(id)}};
}

/// The lowest number from `first` that stands behind the prefix in none of the rows' tags, at least so many digits.
template <class Rows>
std::string next_numbered(const Rows& rows, const std::string& prefix, std::size_t digits, std::size_t first = 1) {
    std::vector<bool> used(rows.size() + first + 1);
    for (const auto& row : rows) {
        if (row.tag.size() <= prefix.size() || row.tag.size() > prefix.size() + 9) continue;
        if (row.tag.compare(0, prefix.size(), prefix) != 0) continue;
        if (row.tag.find_first_not_of("0123456789", prefix.size()) != std::string::npos) continue;
        const auto number = std::stoul(row.tag.substr(prefix.size()));
        if (number < used.size()) used[number] = true;
    }
    std::size_t number = first;
    while (used[number]) ++number;
    const auto text = std::to_string(number);
    return prefix + std::string(text.size() < digits ? digits - text.size() : 0, '0') + text;
}

}  // namespace streamwright::model::edit_detail
