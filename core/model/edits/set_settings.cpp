#include "core/model/edits/set_settings.h"

#include "core/model/edits/edit_helpers.h"

namespace streamwright::model {

base::Result<Delta> make(const Design& design, const SetSettings& edit) {
    Editing editing(design);
    if (auto trouble = edit_detail::put_checked(editing, edit.row)) return *trouble;
    return editing.done();
}

}  // namespace streamwright::model
