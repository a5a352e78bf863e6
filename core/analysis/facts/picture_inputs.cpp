#include "core/analysis/facts/picture_inputs.h"

#include "core/analysis/stream_decoding.h"

#include <algorithm>

namespace streamwright::analysis {

namespace picture_inputs_detail {

constexpr std::size_t at(int index) { return static_cast<std::size_t>(index); }

const catalogue::DeviceType* type_of(const graph::Wiring& wiring, int device) {
    return wiring.devices[at(device)].type;
}

}  // namespace picture_inputs_detail

SentStreams sent_streams(const graph::Wiring& wiring) {
    using namespace picture_inputs_detail;
    SentStreams sent(wiring.devices.size());
    std::vector<int> encoders;  // per stream; -1: none, or no picture
    encoders.reserve(wiring.streams.size());
    for (const auto& [row, device] : wiring.streams) {
        const auto* type = device < 0 ? nullptr : type_of(wiring, device);
        const bool picture = type && type->codec && row->kind == catalogue::StreamKind::video;
        encoders.push_back(picture ? device : -1);
    }
    for (const auto& [row, stream, decoder] : wiring.subscriptions) {
        if (stream < 0 || decoder < 0 || encoders[at(stream)] < 0) continue;
        const int encoder = encoders[at(stream)];
        const auto* type = type_of(wiring, decoder);
        if (!type || !type->can(catalogue::Role::decoder) ||
            !shows_stream(*type->codec, catalogue::StreamKind::video, *wiring.streams[at(stream)].row,
                          &*type_of(wiring, encoder)->codec))
            continue;
        sent[at(encoder)].emplace_back(stream, decoder);
    }
    for (auto& each : sent) {
        std::sort(each.begin(), each.end());
        each.erase(std::unique(each.begin(), each.end()), each.end());
    }
    return sent;
}

PictureInputs picture_inputs(const graph::Wiring& wiring, const graph::Runs& runs, const graph::SignalGraph& signals) {
    using namespace picture_inputs_detail;
    PictureInputs inputs;
    for (const auto& row : wiring.design.device_types) inputs.device_types.push_back(row.type);
    for (const auto& row : wiring.design.cable_types) inputs.cable_types.push_back(row.type);
    inputs.devices.reserve(wiring.devices.size());
    for (const auto& device : wiring.devices) inputs.devices.push_back(device.type);
    inputs.hops.reserve(signals.hops.size());
    for (const auto& hop : signals.hops) {
        inputs.hops.emplace_back(hop.from, hop.to);
        const auto& cables = runs.list[at(hop.run)].cables;
        inputs.cables_of_hop.push_back(static_cast<int>(cables.size()));
        for (const int cable : cables) inputs.cables.push_back(wiring.cables[at(cable)].type);
    }
    inputs.sent = sent_streams(wiring);
    for (const auto& row : wiring.design.port_overrides) {
        if (!row.picture && !row.edid) continue;
        const auto port = wiring.port_at(row.port);
        if (!port) continue;
        const auto from = row.edid && row.edid->from ? wiring.port_at(*row.edid->from) : std::nullopt;
        inputs.settings.push_back({*port, row.picture, row.edid, from});
    }
    return inputs;
}

}  // namespace streamwright::analysis
