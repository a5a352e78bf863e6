#include "core/model/edits/move_on_sheet.h"

#include "core/model/edits/edit_helpers.h"

namespace streamwright::model {

namespace {

template <class Row>
Trouble move_rows(Editing& editing, const std::vector<Row>& rows) {
    for (const auto& row : rows)
        if (auto trouble = edit_detail::put_checked(editing, row)) return trouble;
    return std::nullopt;
}

template <class Row>
Trouble move_held_rows(Editing& editing, const std::vector<Row>& rows, const char* what) {
    for (const auto& row : rows)
        if (!(editing.now.*table_of<Row>()).contains(row.key())) return edit_detail::no_such(what, row.key());
    return move_rows(editing, rows);
}

}  // namespace

base::Result<Delta> make(const Design& design, const MoveOnSheet& edit) {
    Editing editing(design);
    if (auto trouble = move_rows(editing, edit.places)) return *trouble;
    if (auto trouble = move_held_rows(editing, edit.frames, "room frame")) return *trouble;
    if (auto trouble = move_held_rows(editing, edit.notes, "note")) return *trouble;
    if (auto trouble = move_rows(editing, edit.lines)) return *trouble;
    return editing.done();
}

}  // namespace streamwright::model
