#include "core/model/edits/rename.h"

#include "core/model/edits/edit_helpers.h"

namespace streamwright::model {

namespace {

std::string* name_of(Device& row) { return &row.tag; }
std::string* name_of(Cable& row) { return &row.tag; }
std::string* name_of(Stream& row) { return &row.tag; }
std::string* name_of(Preset& row) { return &row.name; }
std::string* name_of(Room& row) { return &row.name; }
std::string* name_of(Rack& row) { return &row.name; }
std::string* name_of(Vlan& row) { return &row.name; }
std::string* name_of(Sheet& row) { return &row.title; }

template <class Row>
std::string* note_of(Row& row) {
    if constexpr (requires { row.note; })
        return &row.note;
    else
        return nullptr;
}

template <class Row>
base::Result<Delta> renamed(const Design& design, const typename Row::Key& key, const Rename& edit) {
    const Row* held = (design.*table_of<Row>()).find(key);
    if (!held) return edit_detail::no_such("row", key);
    Row row = *held;
    if (edit.name) {
        if (edit.name->find_first_not_of(' ') == std::string::npos) return base::Error{"A name must not be empty.", {}};
        if (auto trouble = wrong_text("the name", *edit.name, false, 200)) return *trouble;
        *name_of(row) = *edit.name;
    }
    if (edit.note) {
        if (!note_of(row)) return base::Error{"%1 has no note.", {*name_of(row)}};
        if (auto trouble = wrong_text("the note", *edit.note, true)) return *trouble;
        *note_of(row) = *edit.note;
    }
    Editing editing(design);
    editing.put(std::move(row));
    return editing.done();
}

base::Result<Delta> rename_row(const Design& d, DeviceId id, const Rename& e) { return renamed<Device>(d, id, e); }
base::Result<Delta> rename_row(const Design& d, CableId id, const Rename& e) { return renamed<Cable>(d, id, e); }
base::Result<Delta> rename_row(const Design& d, StreamId id, const Rename& e) { return renamed<Stream>(d, id, e); }
base::Result<Delta> rename_row(const Design& d, PresetId id, const Rename& e) { return renamed<Preset>(d, id, e); }
base::Result<Delta> rename_row(const Design& d, RoomId id, const Rename& e) { return renamed<Room>(d, id, e); }
base::Result<Delta> rename_row(const Design& d, RackId id, const Rename& e) { return renamed<Rack>(d, id, e); }
base::Result<Delta> rename_row(const Design& d, VlanId id, const Rename& e) { return renamed<Vlan>(d, id, e); }
base::Result<Delta> rename_row(const Design& d, SheetId id, const Rename& e) { return renamed<Sheet>(d, id, e); }

}  // namespace

base::Result<Delta> make(const Design& design, const Rename& edit) {
    return std::visit([&](auto id) { return rename_row(design, id, edit); }, edit.row);
}

}  // namespace streamwright::model
