#include "core/model/edits/set_cable_type.h"

#include "core/model/edits/edit_helpers.h"

namespace streamwright::model {

base::Result<Delta> make(const Design& design, const SetCableType& edit) {
    if (!edit.type) return base::Error{"A cable needs a type.", {}};
    Editing editing(design);
    if (auto trouble = edit_detail::embed_if_new(editing, edit.type)) return *trouble;
    for (const auto id : edit.cables) {
        const Cable* held = editing.now.cables.find(id);
        if (!held) return edit_detail::no_such("cable", id);
        Cable row = *held;
        row.type = edit.type->key;
        if (edit.type->made_length) row.length.reset();
        if (auto trouble = edit_detail::put_checked(editing, std::move(row))) return *trouble;
    }
    if (edit.cables.empty()) return Delta{};
    return editing.done();
}

}  // namespace streamwright::model
