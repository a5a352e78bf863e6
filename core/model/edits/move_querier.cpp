#include "core/model/edits/move_querier.h"

#include "core/model/edits/edit_helpers.h"

#include <algorithm>

namespace streamwright::model {

namespace move_querier_detail {

void ask_no_more(Device& device, VlanId vlan) {
    std::erase_if(device.bridging.queriers, [&](const Querier& each) { return each.vlan == vlan; });
}

bool asks(const Device& device, VlanId vlan) {
    const auto& queriers = device.bridging.queriers;
    return std::any_of(queriers.begin(), queriers.end(), [&](const Querier& each) { return each.vlan == vlan; });
}

}  // namespace move_querier_detail

base::Result<Delta> make(const Design& design, const MoveQuerier& edit) {
    using namespace move_querier_detail;
    const auto* vlan = design.vlans.find(edit.vlan);
    if (!vlan) return edit_detail::no_such("VLAN", edit.vlan);
    const auto* from = design.devices.find(edit.from);
    if (!from) return edit_detail::no_such("device", edit.from);
    const auto* to = design.devices.find(edit.to);
    if (!to) return edit_detail::no_such("device", edit.to);
    if (!asks(*from, edit.vlan))
        return base::Error{"%1 does not ask for members in VLAN %2.", {from->tag, std::to_string(vlan->vid)}};
    const auto* type = design.type_of(*to);
    if (!type || !type->bridging)
        return base::Error{"%1 is no switch and cannot ask for members of groups.", {to->tag}};
    if (edit.address && vlan->subnet && !vlan->subnet->holds(*edit.address))
        return base::Error{"The querier's address %1 is not in the subnet %2.",
                           {base::print(*edit.address), base::print(*vlan->subnet)}};
    Editing editing(design);
    auto before = *from;
    ask_no_more(before, edit.vlan);
    if (auto trouble = edit_detail::put_checked(editing, std::move(before))) return *trouble;
    auto after = *editing.now.devices.find(edit.to);
    ask_no_more(after, edit.vlan);
    after.bridging.queriers.push_back({edit.vlan, edit.address});
    if (auto trouble = edit_detail::put_checked(editing, std::move(after))) return *trouble;
    return editing.done();
}

}  // namespace streamwright::model
