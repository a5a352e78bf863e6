#include "core/model/edits/place_device.h"

#include "core/model/edits/edit_helpers.h"

namespace streamwright::model {

namespace {

Trouble unplaceable(const Design& design, const PlaceDevice& edit) {
    if (!edit.type) return base::Error{"A device needs a type.", {}};
    if (design.devices.contains(edit.id)) return base::Error{"The design already has a device %1.", {edit.id.text()}};
    if (edit.type->kind == catalogue::DeviceKind::transceiver)
        return base::Error{"%1 is a transceiver: set it into the cage of a port.", {edit.type->name}};
    if (edit.type->kind == catalogue::DeviceKind::rack)
        return base::Error{"%1 is a rack: add it to a room, then mount devices in it.", {edit.type->name}};
    return std::nullopt;
}

}  // namespace

std::string next_tag(const Design& design, const std::string& prefix) {
    return edit_detail::next_numbered(design.devices, (prefix.empty() ? "DEV" : prefix) + '-', 3);
}

base::Result<Delta> make(const Design& design, const PlaceDevice& edit) {
    if (auto trouble = unplaceable(design, edit)) return *trouble;
    Editing editing(design);
    if (auto trouble = edit_detail::embed_if_new(editing, edit.type)) return *trouble;
    auto row = Device::blank(edit.id);
    row.type = edit.type->key;
    row.tag = edit.tag.empty() ? next_tag(design, edit.type->tag_prefix) : edit.tag;
    row.room = edit.room;
    if (auto trouble = edit_detail::put_checked(editing, std::move(row))) return *trouble;
    if (edit.sheet) {
        auto place = Place::blank({*edit.sheet, edit.id});
        place.at = edit.at;
        if (auto trouble = edit_detail::put_checked(editing, std::move(place))) return *trouble;
    }
    return editing.done();
}

}  // namespace streamwright::model
