#include "core/model/edits/set_fibre_work.h"

#include "core/model/edits/edit_helpers.h"

namespace streamwright::model {

base::Result<Delta> make(const Design& design, const SetFibreWork& edit) {
    Editing editing(design);
    const Cable* held = editing.now.cables.find(edit.cable);
    if (!held) return edit_detail::no_such("cable", edit.cable);
    const auto* type = editing.now.type_of(*held);
    if (type && type->signal != catalogue::Signal::fibre && !(edit.work == FibreWork{}))
        return base::Error{"%1 is no fibre and has neither splices nor strands.", {held->tag}};
    Cable row = *held;
    row.fibre = edit.work;
    if (auto trouble = edit_detail::put_checked(editing, std::move(row))) return *trouble;
    return editing.done();
}

}  // namespace streamwright::model
