#include "core/model/edits/add_rows.h"

#include "core/model/edits/edit_helpers.h"

namespace streamwright::model {

base::Result<Delta> make(const Design& design, const AddRows& edit) {
    Editing editing(design);
    // Rooms, sheets and presets first, so that rows of the same edit may name them.
    for (const bool first : {true, false})
        for (const auto& row : edit.rows) {
            const bool is_first = std::holds_alternative<Room>(row) || std::holds_alternative<Sheet>(row) ||
                                  std::holds_alternative<Preset>(row);
            if (is_first != first) continue;
            const auto trouble =
                std::visit([&](const auto& each) { return edit_detail::put_checked(editing, each); }, row);
            if (trouble) return *trouble;
        }
    return editing.done();
}

}  // namespace streamwright::model
