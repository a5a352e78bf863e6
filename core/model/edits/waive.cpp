#include "core/model/edits/waive.h"

#include "core/model/edits/edit_helpers.h"

namespace streamwright::model {

base::Result<Delta> make(const Design& design, const Waive& edit) {
    if (edit.row.reason.find_first_not_of(" \t\n") == std::string::npos)
        return base::Error{"An accepted finding needs a reason: say why it may stand.", {}};
    Editing editing(design);
    if (auto trouble = edit_detail::put_checked(editing, edit.row)) return *trouble;
    return editing.done();
}

}  // namespace streamwright::model
