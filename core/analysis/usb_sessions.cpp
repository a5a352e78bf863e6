#include "core/analysis/usb_sessions.h"

#include <map>
#include <set>

namespace streamwright::analysis {

namespace usb_session_detail {

bool cabled(const graph::Wiring& wiring, int device, catalogue::Way way) {
    const auto* type = wiring.devices[static_cast<std::size_t>(device)].type;
    if (!type) return false;
    for (int p = 0; p < static_cast<int>(type->ports.size()); ++p)
        if (type->ports[static_cast<std::size_t>(p)].way == way && !wiring.cables_at({device, p}).empty()) return true;
    return false;
}

}  // namespace usb_session_detail

std::vector<UsbSession> usb_sessions(const graph::Wiring& wiring) {
    std::map<model::StreamId, model::DeviceId> senders;  // few, or none: looked up before any subscription is
    for (const auto& stream : wiring.design.streams)
        if (stream.kind == catalogue::StreamKind::usb) senders.emplace(stream.id, stream.encoder);
    if (senders.empty()) return {};
    std::map<std::pair<model::PresetId, model::StreamId>, std::set<model::DeviceId>> ends;
    for (const auto& row : wiring.design.subscriptions)
        if (const auto sender = senders.find(row.stream); sender != senders.end())
            ends[{row.preset, row.stream}].insert({sender->second, row.decoder});
    std::vector<UsbSession> sessions;
    for (const auto& [key, devices] : ends) {
        UsbSession session{key.first, key.second, {}, true};
        for (const auto id : devices) {
            const auto device = wiring.device_index(id);
            session.known = session.known && device && wiring.devices[static_cast<std::size_t>(*device)].type;
            if (device) session.ends.push_back(*device);
        }
        sessions.push_back(std::move(session));
    }
    return sessions;
}

bool faces_computer(const graph::Wiring& wiring, int device) {
    return usb_session_detail::cabled(wiring, device, catalogue::Way::usb_device);
}

bool bears_peripherals(const graph::Wiring& wiring, int device) {
    return usb_session_detail::cabled(wiring, device, catalogue::Way::usb_host);
}

}  // namespace streamwright::analysis
