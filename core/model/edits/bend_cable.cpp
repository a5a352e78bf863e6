#include "core/model/edits/bend_cable.h"

#include "core/model/edits/edit_helpers.h"

namespace streamwright::model {

base::Result<Delta> make(const Design& design, const BendCable& edit) {
    Editing editing(design);
    if (auto trouble = edit_detail::put_checked(editing, edit.line)) return *trouble;
    return editing.done();
}

}  // namespace streamwright::model
