#include "tests/support/demo_maker.h"

#include <stdexcept>

namespace streamwright::test {

namespace demo_maker_detail {

template <class T>
T wanted(std::optional<T> value, const std::string& text) {
    if (!value) throw std::invalid_argument("not readable: " + text);
    return *value;
}

}  // namespace demo_maker_detail

using demo_maker_detail::wanted;

const catalogue::Catalogue& shipped_types() {
    static const catalogue::Catalogue types = [] {
        auto read = catalogue::read_catalogue(STREAMWRIGHT_SOURCE_DIR "/resources/types");
        if (!read) throw std::runtime_error(read.error().english());
        return std::move(*read);
    }();
    return types;
}

DemoMaker::DemoMaker(std::uint64_t seed) : ids_(seed), library_(shipped_types()) {}

void DemoMaker::run(const model::AnyEdit& edit) {
    const auto delta = model::make_edit(demo_.design, edit);
    if (!delta)
        throw std::runtime_error(std::string(model::edit_names()[edit.index()]) + ": " + delta.error().english());
    model::apply(demo_.design, *delta);
    demo_.edits.push_back(edit);
}

model::RoomId DemoMaker::room(const std::string& number, const std::string& name, const std::string& floor) {
    auto row = model::Room::blank(fresh<model::RoomId>());
    row.number = number;
    row.name = name;
    row.floor = floor;
    run(model::AddRows{{row}});
    return row.id;
}

model::RackId DemoMaker::rack(const std::string& name, const std::string& type, model::RoomId room) {
    const auto shape = device_type(type);
    run(model::EmbedTypes{{shape}, {}});
    auto row = model::Rack::blank(fresh<model::RackId>());
    row.name = name;
    row.type = shape->key;
    row.room = room;
    row.units = shape->size.rack_units;
    row.depth = shape->size.depth;
    run(model::AddRows{{row}});
    return row.id;
}

model::VlanId DemoMaker::vlan(int vid, const std::string& name, model::VlanPurpose purpose, const std::string& subnet,
                              const std::string& gateway) {
    auto row = model::Vlan::blank(fresh<model::VlanId>());
    row.vid = vid;
    row.name = name;
    row.purpose = purpose;
    row.subnet = wanted(base::parse_ipv4_prefix(subnet), subnet);
    if (!gateway.empty()) row.gateway = wanted(base::parse_ipv4(gateway), gateway);
    run(model::AddRows{{row}});
    return row.id;
}

model::PresetId DemoMaker::preset(int number, const std::string& name, const std::string& note) {
    auto row = model::Preset::blank(fresh<model::PresetId>());
    row.number = number;
    row.name = name;
    row.note = note;
    run(model::AddRows{{row}});
    return row.id;
}

model::SheetId DemoMaker::sheet(int number, const std::string& title, const std::string& supplement,
                                model::PaperSize paper) {
    auto row = model::Sheet::blank(fresh<model::SheetId>());
    row.number = number;
    row.title = title;
    row.supplement = supplement;
    row.paper = paper;
    run(model::AddRows{{row}});
    return row.id;
}

void DemoMaker::revision(int number, const std::string& letter, const std::string& date, const std::string& what) {
    auto row = model::Revision::blank(fresh<model::RevisionId>());
    row.number = number;
    row.letter = letter;
    row.date = date;
    row.what = what;
    row.by = "design";
    run(model::AddRows{{row}});
}

model::DeviceId DemoMaker::device(const std::string& type, const std::string& tag, std::optional<model::RoomId> room,
                                  const std::string& note) {
    const auto id = fresh<model::DeviceId>();
    run(model::PlaceDevice{id, device_type(type), tag, room, std::nullopt, {}});
    by_tag_.emplace(tag, id);
    if (!note.empty()) run(model::Rename{id, std::nullopt, note});
    return id;
}

void DemoMaker::mount(model::DeviceId device, model::RackId rack, int unit, model::RackFace face) {
    const auto* held = demo_.design.racks.find(rack);
    run(model::StandInRoom{{device}, held->room, std::nullopt, model::RackPlace{rack, unit, face}, std::nullopt});
}

void DemoMaker::slot(model::DeviceId card, model::DeviceId chassis, int slot) {
    const auto* held = demo_.design.devices.find(chassis);
    run(model::StandInRoom{{card}, held->room, std::nullopt, std::nullopt, model::ChassisPlace{chassis, slot}});
}

void DemoMaker::role(model::DeviceId device, catalogue::Role role) {
    configure(device, [&](model::Device& row) { row.roles = {role}; });
}

void DemoMaker::address(model::DeviceId device, model::VlanId vlan, const std::string& address) {
    configure(device, [&](model::Device& row) {
        model::HostAddress host;
        host.vlan = vlan;
        host.address = wanted(base::parse_ipv4(address), address);
        row.addresses.push_back(host);
    });
}

void DemoMaker::module(model::DeviceId device, const std::string& port, const std::string& type) {
    const model::PortRef ref{device, {port}};
    const auto* held = demo_.design.port_overrides.find(ref);
    model::ConfigurePort edit{held ? *held : model::PortOverride::blank(ref), device_type(type)};
    edit.row.module = edit.module->key;
    run(edit);
}

model::CableId DemoMaker::cable(const std::string& type, model::DeviceId a, const std::string& a_port,
                                model::DeviceId b, const std::string& b_port, std::optional<int> metres,
                                const std::string& tag) {
    const auto id = fresh<model::CableId>();
    std::optional<base::Length> length;
    if (metres) length = base::Length::from_count(std::int64_t{*metres} * 1000000);
    run(model::Connect{
        id, cable_type(type), model::PortRef{a, {a_port}}, model::PortRef{b, {b_port}}, length, tag, std::nullopt, {}});
    return id;
}

namespace demo_maker_detail {

model::Stream named_stream(model::StreamId id, model::DeviceId encoder, const std::string& tag,
                           const std::string& group, const std::string& note) {
    auto row = model::Stream::blank(id);
    row.tag = tag;
    row.note = note;
    row.encoder = encoder;
    if (!group.empty()) row.group = base::parse_ipv4(group);
    return row;
}

}  // namespace demo_maker_detail

model::StreamId DemoMaker::packed_picture(model::DeviceId encoder, const std::string& tag, const std::string& group,
                                          const model::PictureEssence& picture, const std::string& note) {
    auto row = demo_maker_detail::named_stream(fresh<model::StreamId>(), encoder, tag, group, note);
    row.picture = picture;
    run(model::SetStream{row});
    return row.id;
}

model::StreamId DemoMaker::sound_flow(model::DeviceId encoder, const std::string& tag, const std::string& group,
                                      const standards::AudioStream& flow, const std::string& note) {
    auto row = demo_maker_detail::named_stream(fresh<model::StreamId>(), encoder, tag, group, note);
    row.kind = catalogue::StreamKind::audio;
    row.sound = model::SoundEssence{flow};
    run(model::SetStream{row});
    return row.id;
}

model::StreamId DemoMaker::stream(model::DeviceId encoder, const std::string& tag, const std::string& group,
                                  const std::string& note) {
    const auto* type = demo_.design.type_of(*demo_.design.devices.find(encoder));
    auto row = model::Stream::blank(fresh<model::StreamId>());
    row.tag = tag;
    row.note = note;
    row.encoder = encoder;
    if (!group.empty()) row.group = wanted(base::parse_ipv4(group), group);
    row.payload_rate = type->codec->usual_rate.value();
    row.payload_octets = type->codec->payload_octets.value_or(row.payload_octets);
    row.rtp = type->codec->rtp;
    run(model::SetStream{row});
    return row.id;
}

void DemoMaker::show(model::PresetId preset, model::DeviceId decoder, model::StreamId stream,
                     const std::string& input) {
    const auto* type = demo_.design.type_of(*demo_.design.devices.find(decoder));
    const auto key = input.empty() ? type->codec->inputs.at(0).key : model::InputKey{input};
    run(model::Subscribe{fresh<model::SubscriptionId>(), preset, decoder, key, stream});
}

std::shared_ptr<const catalogue::DeviceType> DemoMaker::device_type(const std::string& key) const {
    if (const auto* row = demo_.design.device_types.find({key})) return row->type;
    const auto* type = library_.device({key});
    if (!type) throw std::invalid_argument("no device type " + key);
    return std::make_shared<const catalogue::DeviceType>(*type);
}

std::shared_ptr<const catalogue::CableType> DemoMaker::cable_type(const std::string& key) const {
    if (const auto* row = demo_.design.cable_types.find({key})) return row->type;
    const auto* type = library_.cable({key});
    if (!type) throw std::invalid_argument("no cable type " + key);
    return std::make_shared<const catalogue::CableType>(*type);
}

model::DeviceId DemoMaker::tagged(const std::string& tag) const {
    const auto at = by_tag_.find(tag);
    if (at == by_tag_.end()) throw std::invalid_argument("no device " + tag);
    return at->second;
}

}  // namespace streamwright::test
