#include "app/tools/connecting.h"

#include "core/layout/cable_route.h"
#include "core/model/edits/connect.h"
#include "core/model/mating.h"

#include <algorithm>

namespace streamwright::app {

namespace connecting_detail {

/// The bends the sheet would have for the cable once `delta` is applied.
std::vector<model::SheetPoint> bends_after(const model::Design& design, const model::Delta& delta, model::SheetId sheet,
                                           model::CableId cable) {
    auto after = design;
    model::apply(after, delta);
    // A line stored by hand would be left as it is; this one is to be found anew.
    after.cable_lines.erase({sheet, cable});
    const model::CableId only[] = {cable};
    const auto lines = layout::reroute(after, sheet, only);
    return lines.empty() ? std::vector<model::SheetPoint>{} : lines.front().bends;
}

}  // namespace connecting_detail

std::optional<base::Error> lead_refusal(const ToolBox& box, const model::Design& design, const model::PortRef& from,
                                        const model::PortRef& to, std::optional<model::CableId> moving) {
    if (auto refused = model::refusal(design, from, to, moving)) return refused;
    if (moving) {
        const auto* cable = design.cables.find(*moving);
        const auto* type = cable ? design.type_of(*cable) : nullptr;
        return type ? model::refusal(design, *type, to) : std::nullopt;
    }
    if (!box.cables.fitting(*box.library, design, from, to).empty()) return std::nullopt;
    return base::Error{"No cable type of the catalogue has plugs for both %1 and %2.",
                       {model::port_name(design, from), model::port_name(design, to)}};
}

base::Result<model::Delta> connect_on_sheet(ToolBox& box, const model::Design& design, base::IdSource& ids,
                                            model::SheetId sheet, const model::PortRef& from,
                                            const model::PortRef& to) {
    if (auto refused = lead_refusal(box, design, from, to, {})) return *refused;
    const auto type = box.cables.fitting(*box.library, design, from, to).front();
    model::Connect edit{ids.next<model::CableId>(), type, from, to, {}, {}, sheet, {}};
    const auto facts = model::port_facts(design, to);
    if (facts.port && facts.port->way == catalogue::Way::out) std::swap(edit.a, edit.b);
    auto plain = model::make(design, edit);
    if (!plain) return plain;
    edit.bends = connecting_detail::bends_after(design, *plain, sheet, edit.id);
    box.cables.used(type);
    return model::make(design, edit);
}

base::Result<model::Delta> reconnect_on_sheet(const model::Design& design, model::SheetId sheet, model::CableId cable,
                                              model::WhichEnd end, std::optional<model::PortRef> to) {
    model::Reconnect edit{cable, end, std::move(to), sheet, {}};
    auto plain = model::make(design, edit);
    if (!plain) return plain;
    edit.bends = connecting_detail::bends_after(design, *plain, sheet, cable);
    return model::make(design, edit);
}

}  // namespace streamwright::app
