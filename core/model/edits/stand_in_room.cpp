// One device is placed wholly: what is not given is cleared. Several devices change room only; what tied them to the
// old room (place, rack, slot) goes where the room changes.
#include "core/model/edits/stand_in_room.h"

#include "core/model/edits/edit_helpers.h"

namespace streamwright::model {

namespace {

Trouble rack_refused(const Design& design, const Device& device, const RackPlace& place) {
    const Rack* rack = design.racks.find(place.rack);
    if (!rack) return edit_detail::no_such("rack", place.rack);
    const auto* type = design.type_of(device);
    const int height = type && type->size.rack_units > 1 ? type->size.rack_units : 1;
    if (place.unit >= 1 && place.unit + height - 1 <= rack->units) return std::nullopt;
    return base::Error{
        "%1 takes %2 units from unit %3, but rack %4 has units 1 to %5.",
        {device.tag, std::to_string(height), std::to_string(place.unit), rack->name, std::to_string(rack->units)}};
}

Trouble slot_refused(const Design& design, const Device& device, const ChassisPlace& place) {
    const Device* chassis = design.devices.find(place.chassis);
    if (!chassis) return edit_detail::no_such("device", place.chassis);
    const auto* home = design.type_of(*chassis);
    const auto* card = design.type_of(device);
    if (!home || !home->chassis) return base::Error{"%1 is not a chassis and takes no card.", {chassis->tag}};
    if (!card || card->card_form != home->chassis->takes)
        return base::Error{"%1 is not a card that fits chassis %2.", {device.tag, chassis->tag}};
    if (place.slot < 1 || place.slot > home->chassis->slots)
        return base::Error{"Chassis %1 has slots 1 to %2; slot %3 was given.",
                           {chassis->tag, std::to_string(home->chassis->slots), std::to_string(place.slot)}};
    for (const auto& other : design.devices)
        if (other.id != device.id && other.chassis == place)
            return base::Error{"Slot %1 of chassis %2 already holds %3.",
                               {std::to_string(place.slot), chassis->tag, other.tag}};
    return std::nullopt;
}

Trouble place_wholly(const Design& design, Device& row, const StandInRoom& edit) {
    if (edit.rack && edit.chassis)
        return base::Error{"%1 stands either in a rack or in a chassis, not in both.", {row.tag}};
    if (edit.rack)
        if (auto trouble = rack_refused(design, row, *edit.rack)) return trouble;
    if (edit.chassis)
        if (auto trouble = slot_refused(design, row, *edit.chassis)) return trouble;
    row.room = edit.room;
    row.standing = edit.standing;
    row.rack = edit.rack;
    row.chassis = edit.chassis;
    return std::nullopt;
}

void change_room(Device& row, const std::optional<RoomId>& room) {
    if (row.room == room) return;
    row.room = room;
    row.standing.reset();
    row.rack.reset();
    row.chassis.reset();
}

}  // namespace

base::Result<Delta> make(const Design& design, const StandInRoom& edit) {
    const bool alone = edit.devices.size() == 1;
    if (!alone && (edit.standing || edit.rack || edit.chassis))
        return base::Error{"A place, a rack unit or a slot can be given to one device only.", {}};
    Editing editing(design);
    for (const auto id : edit.devices) {
        const Device* held = editing.now.devices.find(id);
        if (!held) return edit_detail::no_such("device", id);
        Device row = *held;
        if (alone) {
            if (auto trouble = place_wholly(design, row, edit)) return *trouble;
        } else {
            change_room(row, edit.room);
        }
        if (auto trouble = edit_detail::put_checked(editing, std::move(row))) return *trouble;
    }
    return editing.done();
}

}  // namespace streamwright::model
