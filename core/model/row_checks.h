// What may stand in a row by itself, and what it may name: one place for edits, loading and debug checks.
#pragma once

#include "core/base/error.h"
#include "core/model/design.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace streamwright::model {

using Trouble = std::optional<base::Error>;

/// A number out of its range, or two values that contradict each other.
Trouble wrong_value(const Settings& row);
Trouble wrong_value(const Room& row);
Trouble wrong_value(const Rack& row);
Trouble wrong_value(const Vlan& row);
Trouble wrong_value(const Device& row);
Trouble wrong_value(const PortOverride& row);
Trouble wrong_value(const Cable& row);
Trouble wrong_value(const Stream& row);
/// Of a stream that states what it carries.
Trouble wrong_essence(const Stream& row);
Trouble wrong_value(const Preset& row);
Trouble wrong_value(const Subscription& row);
Trouble wrong_value(const Wall& row);
Trouble wrong_value(const Sheet& row);
Trouble wrong_value(const Place& row);
Trouble wrong_value(const CableLine& row);
Trouble wrong_value(const RoomFrame& row);
Trouble wrong_value(const Note& row);
Trouble wrong_value(const Waiver& row);
Trouble wrong_value(const Revision& row);
Trouble wrong_value(const DeviceTypeRow& row);
Trouble wrong_value(const CableTypeRow& row);

/// A row named here that the design does not have.
Trouble broken_bond(const Design& design, const Settings& row);
Trouble broken_bond(const Design& design, const Room& row);
Trouble broken_bond(const Design& design, const Rack& row);
Trouble broken_bond(const Design& design, const Vlan& row);
Trouble broken_bond(const Design& design, const Device& row);
Trouble broken_bond(const Design& design, const PortOverride& row);
Trouble broken_bond(const Design& design, const Cable& row);
Trouble broken_bond(const Design& design, const Stream& row);
Trouble broken_bond(const Design& design, const Preset& row);
Trouble broken_bond(const Design& design, const Subscription& row);
Trouble broken_bond(const Design& design, const Wall& row);
Trouble broken_bond(const Design& design, const Sheet& row);
Trouble broken_bond(const Design& design, const Place& row);
Trouble broken_bond(const Design& design, const CableLine& row);
Trouble broken_bond(const Design& design, const RoomFrame& row);
Trouble broken_bond(const Design& design, const Note& row);
Trouble broken_bond(const Design& design, const Waiver& row);
Trouble broken_bond(const Design& design, const Revision& row);
Trouble broken_bond(const Design& design, const DeviceTypeRow& row);
Trouble broken_bond(const Design& design, const CableTypeRow& row);

/// Refuses a text that is not UTF-8, holds control characters (line ends and tabs pass where `lines`) or is too long.
Trouble wrong_text(const std::string& field, std::string_view text, bool lines = false, std::size_t most = 10000);

/// wrong_text for every text of a row.
template <class Row>
Trouble wrong_texts(const Row& row) {
    Trouble trouble;
    const auto look = [&](auto&& self, const char* name, const auto& field) -> void {
        using F = std::remove_cvref_t<decltype(field)>;
        if (trouble) return;
        const std::string_view called = name;
        if constexpr (std::is_same_v<F, std::string>)
            trouble = wrong_text(name, field, called == "note" || called == "text" || called == "reason");
        else if constexpr (requires { F::visit(field, [](const char*, const auto&) {}); })
            F::visit(field, [&](const char* inner, const auto& value) { self(self, inner, value); });
        else if constexpr (requires { field.has_value(); }) {
            if (field) self(self, name, *field);
        } else if constexpr (requires { field.begin(); })
            for (const auto& each : field) self(self, name, each);
        else if constexpr (requires { field.text; })
            trouble = wrong_text(name, field.text);
    };
    look(look, "", row);
    return trouble;
}

/// A display of this wall that another wall has already.
Trouble shared_tile(const Design& design, const Wall& row);

/// All of the above for a row about to be put.
template <class Row>
Trouble trouble_with(const Design& design, const Row& row) {
    if (auto trouble = wrong_value(row)) return trouble;
    if (auto trouble = wrong_texts(row)) return trouble;
    return broken_bond(design, row);
}

Trouble wrong_length(std::string_view field, base::Length length);

/// Keys as messages and journals print them.
template <class Tag>
std::string key_text(base::Id<Tag> key) {
    return key.text();
}
template <class Tag>
std::string key_text(const base::Key<Tag>& key) {
    return key.text;
}
std::string key_text(const PortRef& key);
std::string key_text(const Place::Key& key);
std::string key_text(const CableLine::Key& key);
std::string key_text(const Settings::Key& key);

}  // namespace streamwright::model
