#include "core/model/edits/set_up_vlan.h"

#include "core/model/edits/edit_helpers.h"

#include <algorithm>

namespace streamwright::model {

namespace set_up_vlan_detail {

Trouble clash(const Design& design, const Vlan& row) {
    for (const auto& other : design.vlans) {
        if (other.id == row.id) continue;
        if (other.vid == row.vid)
            return base::Error{"VLAN %1 is there already, called '%2'; take another number.",
                               {std::to_string(row.vid), other.name}};
        if (row.subnet && other.subnet && row.subnet->overlaps(*other.subnet))
            return base::Error{"The subnet %1 overlaps %2 of VLAN %3; take another one.",
                               {base::print(*row.subnet), base::print(*other.subnet), std::to_string(other.vid)}};
    }
    return std::nullopt;
}

Trouble outside(const Vlan& row, const char* what, std::optional<base::Ipv4> address) {
    if (!address || !row.subnet || row.subnet->holds(*address)) return std::nullopt;
    return base::Error{"The %1 %2 is not in the subnet %3.", {what, base::print(*address), base::print(*row.subnet)}};
}

Trouble add_querier(Editing& editing, const SetUpVlan& edit) {
    const auto* held = editing.now.devices.find(*edit.asked_by);
    if (!held) return edit_detail::no_such("device", *edit.asked_by);
    const auto* type = editing.now.type_of(*held);
    if (!type || !type->bridging)
        return base::Error{"%1 is no switch and cannot ask for members of groups.", {held->tag}};
    if (auto trouble = outside(edit.row, "querier's address", edit.from)) return trouble;
    auto device = *held;
    std::erase_if(device.bridging.queriers, [&](const Querier& each) { return each.vlan == edit.row.id; });
    device.bridging.queriers.push_back({edit.row.id, edit.from});
    return edit_detail::put_checked(editing, std::move(device));
}

}  // namespace set_up_vlan_detail

base::Result<Delta> make(const Design& design, const SetUpVlan& edit) {
    using namespace set_up_vlan_detail;
    if (auto trouble = clash(design, edit.row)) return *trouble;
    if (auto trouble = outside(edit.row, "gateway", edit.row.gateway)) return *trouble;
    for (const auto& lease : {edit.row.lease_first, edit.row.lease_last})
        if (auto trouble = outside(edit.row, "lease", lease)) return *trouble;
    Editing editing(design);
    if (auto trouble = edit_detail::put_checked(editing, edit.row)) return *trouble;
    auto settings = design.settings();
    if (edit.usual)
        settings.usual_vlan = edit.row.id;
    else if (settings.usual_vlan == edit.row.id)
        settings.usual_vlan.reset();
    if (auto trouble = edit_detail::put_checked(editing, std::move(settings))) return *trouble;
    if (edit.asked_by)
        if (auto trouble = add_querier(editing, edit)) return *trouble;
    return editing.done();
}

}  // namespace streamwright::model
