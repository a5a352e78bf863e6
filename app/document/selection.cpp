#include "app/document/selection.h"

namespace streamwright::app {

namespace selection_detail {

bool stands(const model::Design& design, const Chosen& subject) {
    struct Find {
        const model::Design& design;
        bool operator()(model::DeviceId id) const { return design.devices.contains(id); }
        bool operator()(model::CableId id) const { return design.cables.contains(id); }
        bool operator()(const model::PortRef& ref) const { return design.devices.contains(ref.device); }
        bool operator()(model::StreamId id) const { return design.streams.contains(id); }
        bool operator()(model::FrameId id) const { return design.room_frames.contains(id); }
        bool operator()(model::NoteId id) const { return design.notes.contains(id); }
        bool operator()(model::VlanId id) const { return design.vlans.contains(id); }
    };
    return std::visit(Find{design}, subject);
}

}  // namespace selection_detail

std::optional<Chosen> Selection::only() const {
    return all_.size() == 1 ? std::optional<Chosen>(*all_.begin()) : std::nullopt;
}

void Selection::set(std::set<Chosen> subjects) {
    if (subjects == all_) return;
    all_ = std::move(subjects);
    Q_EMIT changed();
}

void Selection::toggle(const Chosen& subject) {
    auto next = all_;
    if (!next.erase(subject)) next.insert(subject);
    set(std::move(next));
}

void Selection::keep_only_rows_of(const model::Design& design) {
    auto next = all_;
    std::erase_if(next, [&](const Chosen& each) { return !selection_detail::stands(design, each); });
    set(std::move(next));
    if (preset_ && !design.presets.contains(*preset_)) set_preset(std::nullopt);
}

void Selection::set_preset(std::optional<model::PresetId> preset) {
    if (preset == preset_) return;
    preset_ = preset;
    Q_EMIT preset_changed();
}

std::optional<Chosen> chosen_for(const model::Design& design, const analysis::Subject& subject) {
    if (const auto* device = std::get_if<model::DeviceId>(&subject)) return Chosen(*device);
    if (const auto* cable = std::get_if<model::CableId>(&subject)) return Chosen(*cable);
    if (const auto* port = std::get_if<model::PortRef>(&subject)) return Chosen(*port);
    if (const auto* stream = std::get_if<model::StreamId>(&subject)) return Chosen(*stream);
    if (const auto* vlan = std::get_if<model::VlanId>(&subject)) return Chosen(*vlan);
    if (const auto* id = std::get_if<model::SubscriptionId>(&subject))
        if (const auto* row = design.subscriptions.find(*id)) return Chosen(row->decoder);
    return std::nullopt;
}

}  // namespace streamwright::app
