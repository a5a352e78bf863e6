#include "core/model/edits/all_edits.h"

#include <array>

namespace streamwright::model {

base::Result<Delta> make_edit(const Design& design, const AnyEdit& edit) {
    return std::visit([&](const auto& each) { return make(design, each); }, edit);
}

std::span<const std::string_view> edit_names() {
    static constexpr std::array<std::string_view, std::variant_size_v<AnyEdit>> names{
        "add_rows",       "agree_contention",
        "bend_cable",     "configure_device",
        "configure_port", "connect",
        "embed_types",    "move_on_sheet",
        "move_querier",   "paste",
        "place_device",   "reconnect",
        "remove",         "rename",
        "set_cable_type", "set_fibre_work",
        "set_length",     "set_settings",
        "set_stream",     "set_up_vlan",
        "set_wall",       "stand_in_room",
        "subscribe",      "waive"};
    return names;
}

}  // namespace streamwright::model
