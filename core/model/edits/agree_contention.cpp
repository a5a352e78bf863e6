#include "core/model/edits/agree_contention.h"

#include "core/model/edits/edit_helpers.h"

namespace streamwright::model {

base::Result<Delta> make(const Design& design, const AgreeContention& edit) {
    Editing editing(design);
    const Cable* held = editing.now.cables.find(edit.cable);
    if (!held) return edit_detail::no_such("cable", edit.cable);
    if (edit.agreed && edit.agreed->by.find_first_not_of(' ') == std::string::npos)
        return base::Error{"An agreement needs a role: say who agreed to it.", {}};
    if (edit.agreed)
        if (auto trouble = wrong_text("the role", edit.agreed->by, false, 200)) return *trouble;
    Cable row = *held;
    row.agreed = edit.agreed;
    if (auto trouble = edit_detail::put_checked(editing, std::move(row))) return *trouble;
    return editing.done();
}

}  // namespace streamwright::model
