// One editor per kind of subject; each returns a form that keeps itself true to the design.
#pragma once

#include "app/document/library.h"
#include "app/document/selection.h"
#include "app/panels/properties/property_form.h"

namespace streamwright::app {

/// What editors are made with.
struct EditorContext {
    Document& document;
    Selection& selection;
    std::shared_ptr<const Library> library;
    const Theme& theme;
};

PropertyForm* device_editor(const EditorContext& context, model::DeviceId device, QWidget* parent);
PropertyForm* cable_editor(const EditorContext& context, model::CableId cable, QWidget* parent);
PropertyForm* port_editor(const EditorContext& context, const model::PortRef& port, QWidget* parent);
PropertyForm* stream_editor(const EditorContext& context, model::StreamId stream, QWidget* parent);
PropertyForm* frame_editor(const EditorContext& context, model::FrameId frame, QWidget* parent);
PropertyForm* note_editor(const EditorContext& context, model::NoteId note, QWidget* parent);
PropertyForm* vlan_editor(const EditorContext& context, model::VlanId vlan, QWidget* parent);
/// Nothing is selected: the design as a whole.
PropertyForm* design_editor(const EditorContext& context, QWidget* parent);
/// Changes the settings of the design; a sentence why it was refused, or nothing.
std::optional<QString> change_settings(PropertyForm& form, const QString& words,
                                       const std::function<void(model::Settings&)>& change);
/// The questions of the security plan, part of the design's form.
void add_plan(PropertyForm& form);
/// How many spares to buy, part of the design's form.
void add_spares(PropertyForm& form);
/// The design's VLANs and a way to add one, part of the design's form.
void add_vlans(PropertyForm& form, Selection& selection);
/// "10 AV".
QString vlan_name(const model::Vlan& vlan);
std::vector<const model::Vlan*> vlans_by_number(const model::Design& design);
/// Several things are selected.
PropertyForm* several_editor(const EditorContext& context, QWidget* parent);

/// The streams a device sends and what its inputs show in the chosen preset; nothing for devices without a codec.
void add_streams(PropertyForm& form, const EditorContext& context, model::DeviceId device);

/// What a stream carries and how it is packed; the typed rate where nothing is. And the chain of numbers to its rate.
void add_essence(PropertyForm& form, model::StreamId stream);
/// "JPEG XS", "sound", empty where the rate is typed in: what the form's fields depend on.
std::string packed_as(const model::Stream& stream);

/// The transceiver of a cage, of the medium where one is given; nothing for other ports.
void add_transceiver(PropertyForm& form, const EditorContext& context, const model::PortRef& port, const QString& label,
                     std::function<std::optional<catalogue::Medium>()> medium);
/// What is set on a picture port: format, content, EDID; and what comes of it. Nothing for other ports.
void add_picture(PropertyForm& form, const EditorContext& context, const model::PortRef& port);
/// Spanning tree, snooping and queriers of a switch; nothing for other devices.
void add_bridging(PropertyForm& form, const EditorContext& context, model::DeviceId device,
                  const catalogue::DeviceType& type);
/// Pair swaps, splices and connector pairs of a fibre; nothing for other cables.
void add_fibre_work(PropertyForm& form, model::CableId cable);
/// Supplies of a switch and how it sets aside PoE; nothing where no port gives any.
void add_poe_supply(PropertyForm& form, model::DeviceId device, const catalogue::DeviceType& type);
/// Priority and limit of a port that gives PoE; nothing for others.
void add_poe_port(PropertyForm& form, const model::PortRef& ref, const catalogue::PortType& port);
/// What cabling is held to, part of the design's form.
void add_cabling(PropertyForm& form);
/// How many sources may cross the link that the cable is part of; nothing for cables that join no two switches.
void add_agreement(PropertyForm& form, const EditorContext& context, model::CableId cable);
/// Rack, unit and face, or chassis and slot; nothing for devices that are not mounted.
void add_mounting(PropertyForm& form, const EditorContext& context, model::DeviceId device,
                  const catalogue::DeviceType& type);

/// The video wall that the display is a tile of; nothing for others.
void add_wall_of(PropertyForm& form, const EditorContext& context, model::DeviceId display);
/// Every video wall, part of the design's form.
void add_walls(PropertyForm& form, const EditorContext& context);
/// Farthest viewer, viewing task and element height of a room.
void add_viewing(PropertyForm& form, model::RoomId room);

/// A text field of one row, renamed or set through `edit`.
std::vector<PropertyForm::Option> room_options(const model::Design& design);

}  // namespace streamwright::app
