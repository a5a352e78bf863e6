#include "core/analysis/number_chains.h"

#include "core/analysis/chain_parts.h"
#include "core/model/mating.h"

namespace streamwright::analysis {

namespace number_chains_detail {

struct Chains {
    const Facts& facts;
    std::vector<NumberChain> list;

    const graph::Wiring& wiring() const { return facts.get<graph::Wiring>(); }

    void about(model::DeviceId id) {
        const auto device = wiring().device_index(id);
        const auto* type = device ? wiring().devices[static_cast<std::size_t>(*device)].type : nullptr;
        if (!type) return;
        for (int port = 0; port < static_cast<int>(type->ports.size()); ++port)
            add_picture_chains(facts, {*device, port}, list);
        add_delay_chains(facts, *device, list);
        add_power_chains(facts, *device, list);
    }
    void about(model::CableId id) {
        if (const auto cable = wiring().cable_index(id)) add_link_chains(facts, *cable, list);
    }
    void about(model::StreamId id) {
        if (const auto stream = wiring().stream_index(id)) add_stream_chains(facts, *stream, list);
    }
    void about(model::SubscriptionId id) {
        const auto* row = wiring().design.subscriptions.find(id);
        if (!row) return;
        about(row->stream);
        if (const auto decoder = wiring().device_index(row->decoder)) add_delay_chains(facts, *decoder, list);
    }
    void about(const model::PortRef& ref) {
        const auto port = wiring().port_at(ref);
        if (!port) return;
        add_picture_chains(facts, *port, list);
        for (const int cable : wiring().cables_at(*port)) add_link_chains(facts, cable, list);
    }
    void about(model::PresetId) {}
    void about(model::VlanId) {}
};

template <class Row>
void add_tagged(const model::Table<Row>& rows, std::string_view name, std::vector<Subject>& out) {
    for (const auto& row : rows)
        if (row.tag == name) out.emplace_back(row.id);
}

template <class Row>
void add_named(const model::Table<Row>& rows, std::string_view name, std::vector<Subject>& out) {
    for (const auto& row : rows)
        if (row.name == name) out.emplace_back(row.id);
}

/// "SW-M1 7": the tag of a device, a space, and a port of it.
void add_ports(const model::Design& design, std::string_view name, std::vector<Subject>& out) {
    for (const auto& device : design.devices) {
        const auto length = device.tag.size();
        if (length == 0 || name.size() < length + 2 || !name.starts_with(device.tag) || name[length] != ' ') continue;
        const auto* type = design.device_types.find(device.type);
        if (!type) continue;
        const auto wanted = name.substr(length + 1);
        for (const auto& port : type->type->ports)
            if (port.key.text == wanted || port.label == wanted) out.emplace_back(model::PortRef{device.id, port.key});
    }
}

template <class Row>
void add_of_id(const model::Table<Row>& rows, std::string_view name, std::vector<Subject>& out) {
    for (const auto& row : rows)
        if (subject_text(row.id) == name) out.emplace_back(row.id);
}

}  // namespace number_chains_detail

std::vector<NumberChain> number_chains(const Facts& facts, const Subject& subject) {
    number_chains_detail::Chains chains{facts, {}};
    std::visit([&](const auto& id) { chains.about(id); }, subject);
    return std::move(chains.list);
}

std::vector<Subject> subjects_named(const model::Design& design, std::string_view name) {
    using namespace number_chains_detail;
    std::vector<Subject> found;
    if (name.empty()) return found;
    add_tagged(design.devices, name, found);
    add_tagged(design.cables, name, found);
    add_tagged(design.streams, name, found);
    add_named(design.presets, name, found);
    add_named(design.vlans, name, found);
    add_ports(design, name, found);
    add_of_id(design.devices, name, found);
    add_of_id(design.cables, name, found);
    add_of_id(design.streams, name, found);
    add_of_id(design.subscriptions, name, found);
    add_of_id(design.presets, name, found);
    add_of_id(design.vlans, name, found);
    return found;
}

}  // namespace streamwright::analysis
