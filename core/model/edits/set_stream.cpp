#include "core/model/edits/set_stream.h"

#include "core/model/edits/edit_helpers.h"

namespace streamwright::model {

std::string next_stream_tag(const Design& design) { return edit_detail::next_numbered(design.streams, "S-", 1); }

base::Result<Delta> make(const Design& design, const SetStream& edit) {
    const Device* encoder = design.devices.find(edit.row.encoder);
    if (!encoder) return edit_detail::no_such("device", edit.row.encoder);
    const auto* type = design.type_of(*encoder);
    if (edit.row.network_port && type && !type->find_port(*edit.row.network_port))
        return base::Error{"%1 has no port %2.", {encoder->tag, edit.row.network_port->text}};
    Stream row = edit.row;
    if (row.tag.empty()) row.tag = next_stream_tag(design);
    Editing editing(design);
    if (auto trouble = edit_detail::put_checked(editing, std::move(row))) return *trouble;
    return editing.done();
}

}  // namespace streamwright::model
