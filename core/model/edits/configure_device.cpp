#include "core/model/edits/configure_device.h"

#include "core/model/edits/edit_helpers.h"

namespace streamwright::model {

namespace {

Trouble impossible_roles(const Device& row, const catalogue::DeviceType& type) {
    for (const auto role : row.roles)
        if (!type.can(role))
            return base::Error{"%1 cannot be set to the role %2: its type %3 does not have it.",
                               {row.tag, std::string(base::enum_text(role)), type.name}};
    return std::nullopt;
}

Trouble addressed_port_missing(const Device& row, const catalogue::DeviceType& type) {
    for (const auto& host : row.addresses)
        if (host.port && !type.find_port(*host.port))
            return base::Error{"%1 has no port %2 to give an address to.", {row.tag, host.port->text}};
    return std::nullopt;
}

}  // namespace

base::Result<Delta> make(const Design& design, const ConfigureDevice& edit) {
    const Device* held = design.devices.find(edit.row.id);
    if (!held) return edit_detail::no_such("device", edit.row.id);
    Device row = edit.row;
    row.type = held->type;
    row.tag = held->tag;
    row.room = held->room;
    row.standing = held->standing;
    row.rack = held->rack;
    row.chassis = held->chassis;
    if (const auto* type = design.type_of(*held)) {
        if (auto trouble = impossible_roles(row, *type)) return *trouble;
        if (auto trouble = addressed_port_missing(row, *type)) return *trouble;
    }
    Editing editing(design);
    if (auto trouble = edit_detail::put_checked(editing, std::move(row))) return *trouble;
    return editing.done();
}

}  // namespace streamwright::model
