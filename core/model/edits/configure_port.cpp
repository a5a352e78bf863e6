#include "core/model/edits/configure_port.h"

#include "core/model/edits/edit_helpers.h"
#include "core/model/mating.h"

namespace streamwright::model {

namespace {

Trouble unfit_module(const Design& now, const PortOverride& row, const catalogue::PortType& port) {
    if (!row.module) return std::nullopt;
    if (!catalogue::is_cage(port.connector))
        return base::Error{"%1 is not a cage and takes no transceiver.", {port_name(now, row.port)}};
    const auto* type = now.device_types.find(*row.module);
    if (type && !type->type->module)
        return base::Error{"%1 is not a transceiver and cannot be set into %2.",
                           {type->type->name, port_name(now, row.port)}};
    return std::nullopt;
}

}  // namespace

base::Result<Delta> make(const Design& design, const ConfigurePort& edit) {
    const auto facts = port_facts(design, edit.row.port);
    if (!facts.device) return edit_detail::no_such("device", edit.row.port.device);
    if (!facts.port) return base::Error{"%1 has no port %2.", {facts.device->tag, edit.row.port.port.text}};
    Editing editing(design);
    if (edit.module) {
        if (edit.row.module != edit.module->key)
            return base::Error{"The transceiver type given is not the one named for the port.", {}};
        if (auto trouble = edit_detail::embed_if_new(editing, edit.module)) return *trouble;
    }
    if (auto trouble = unfit_module(editing.now, edit.row, *facts.port)) return *trouble;
    if (auto trouble = edit_detail::put_checked(editing, edit.row)) return *trouble;
    if (*editing.now.port_overrides.find(edit.row.port) == PortOverride::blank(edit.row.port))
        editing.erase<PortOverride>(edit.row.port);
    return editing.done();
}

}  // namespace streamwright::model
