#include "core/model/edits/reconnect.h"

#include "core/model/edits/edit_helpers.h"
#include "core/model/mating.h"

namespace streamwright::model {

namespace {

Trouble unreachable_port(const Design& design, const PortRef& ref) {
    const auto facts = port_facts(design, ref);
    if (!facts.device) return edit_detail::no_such("device", ref.device);
    if (!facts.port) return base::Error{"%1 has no port %2.", {facts.device->tag, ref.port.text}};
    return std::nullopt;
}

}  // namespace

base::Result<Delta> make(const Design& design, const Reconnect& edit) {
    const Cable* held = design.cables.find(edit.cable);
    if (!held) return edit_detail::no_such("cable", edit.cable);
    if (edit.port)
        if (auto trouble = unreachable_port(design, *edit.port)) return *trouble;
    Cable row = *held;
    (edit.end == WhichEnd::a ? row.a : row.b) = edit.port ? std::optional(CableEnd{*edit.port}) : std::nullopt;
    if (!row.a && !row.b) return base::Error{"Cable %1 would have no end on a port; remove it instead.", {row.tag}};
    Editing editing(design);
    if (auto trouble = edit_detail::put_checked(editing, std::move(row))) return *trouble;
    if (edit.sheet) {
        auto line = CableLine::blank({*edit.sheet, edit.cable});
        line.bends = edit.bends;
        if (auto trouble = edit_detail::put_checked(editing, std::move(line))) return *trouble;
    }
    return editing.done();
}

}  // namespace streamwright::model
