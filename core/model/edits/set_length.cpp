#include "core/model/edits/set_length.h"

#include "core/model/edits/edit_helpers.h"

namespace streamwright::model {

base::Result<Delta> make(const Design& design, const SetLength& edit) {
    Editing editing(design);
    for (const auto id : edit.cables) {
        const Cable* held = editing.now.cables.find(id);
        if (!held) return edit_detail::no_such("cable", id);
        Cable row = *held;
        row.length = edit.length;
        if (auto trouble = edit_detail::put_checked(editing, std::move(row))) return *trouble;
    }
    return editing.done();
}

}  // namespace streamwright::model
