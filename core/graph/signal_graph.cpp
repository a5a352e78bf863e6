#include "core/graph/signal_graph.h"

#include <algorithm>

namespace streamwright::graph {

namespace signal_detail {

using catalogue::DeviceKind;
using catalogue::Signal;
using catalogue::Way;

bool carries_signal(const catalogue::PortType& port) {
    return port.signal == Signal::video || port.signal == Signal::extender || port.signal == Signal::audio;
}

bool gives(Way way) { return way == Way::out || way == Way::both; }
bool takes(Way way) { return way == Way::in || way == Way::both; }

/// Which way the signal goes over the run; none if neither end gives what the other takes.
std::optional<SignalHop> hop_over(const Wiring& wiring, const Run& run, int index) {
    if (!run.a || !run.b) return {};
    const auto& a = wiring.port_type(*run.a);
    const auto& b = wiring.port_type(*run.b);
    if (!carries_signal(a) || a.signal != b.signal) return {};
    if (gives(a.way) && takes(b.way)) return SignalHop{*run.a, *run.b, index};
    if (gives(b.way) && takes(a.way)) return SignalHop{*run.b, *run.a, index};
    return {};
}

const catalogue::DeviceType* type_at(const Wiring& wiring, int device) {
    return wiring.devices[static_cast<std::size_t>(device)].type;
}

bool is_kind(const catalogue::DeviceType* type, std::initializer_list<DeviceKind> kinds) {
    return type && std::find(kinds.begin(), kinds.end(), type->kind) != kinds.end();
}

bool picture(const catalogue::PortType& port) {
    return port.signal == Signal::video || port.signal == Signal::extender;
}

/// Whether what enters one port can leave another. Endpoints pass a picture on to their local output only.
bool passes_picture(const catalogue::DeviceType* type, const catalogue::PortType& out) {
    if (!type) return true;
    return !type->codec || out.local_output;
}

/// Follows picture hops from the device, backward or forward, until `found` says so; rings end.
template <class Next, class Found>
bool reaches(const Wiring& wiring, int device, Next&& next, Found&& found) {
    std::vector<bool> seen(wiring.devices.size(), false);
    std::vector<int> open{device};
    seen[static_cast<std::size_t>(device)] = true;
    while (!open.empty()) {
        const int at = open.back();
        open.pop_back();
        for (const int there : next(at)) {
            if (seen[static_cast<std::size_t>(there)]) continue;
            if (found(there)) return true;
            seen[static_cast<std::size_t>(there)] = true;
            open.push_back(there);
        }
    }
    return false;
}

}  // namespace signal_detail

SignalGraph build_signals(const Wiring& wiring, const Runs& runs) {
    SignalGraph graph;
    for (std::size_t i = 0; i < runs.list.size(); ++i) {
        const auto hop = signal_detail::hop_over(wiring, runs.list[i], static_cast<int>(i));
        if (!hop) continue;
        graph.hops.push_back(*hop);
    }
    const auto devices = wiring.devices.size();
    graph.hops_from = HopLists(devices, graph.hops, [](const SignalHop& hop) { return hop.from.device; });
    graph.hops_to = HopLists(devices, graph.hops, [](const SignalHop& hop) { return hop.to.device; });
    return graph;
}

bool fed_by_source(const Wiring& wiring, const SignalGraph& signals, int device) {
    using namespace signal_detail;
    const auto before = [&](int at) {
        std::vector<int> devices;
        for (const int h : signals.hops_to[static_cast<std::size_t>(at)]) {
            const auto& hop = signals.hops[static_cast<std::size_t>(h)];
            const auto& out = wiring.port_type(hop.from);
            if (!picture(out)) continue;
            const auto* type = type_at(wiring, hop.from.device);
            // A decoder makes pictures out of the network; its picture feeds whoever is behind it.
            if (passes_picture(type, out) || (type && type->can(catalogue::Role::decoder)))
                devices.push_back(hop.from.device);
        }
        return devices;
    };
    return reaches(wiring, device, before, [&](int at) {
        const auto* type = type_at(wiring, at);
        return is_kind(type, {DeviceKind::source, DeviceKind::camera}) || (type && type->can(catalogue::Role::decoder));
    });
}

bool reaches_display(const Wiring& wiring, const SignalGraph& signals, int device) {
    using namespace signal_detail;
    const auto after = [&](int at) {
        std::vector<int> devices;
        for (const int h : signals.hops_from[static_cast<std::size_t>(at)]) {
            const auto& hop = signals.hops[static_cast<std::size_t>(h)];
            if (!picture(wiring.port_type(hop.from))) continue;
            if (at == device || passes_picture(type_at(wiring, at), wiring.port_type(hop.from)))
                devices.push_back(hop.to.device);
        }
        return devices;
    };
    return reaches(wiring, device, after, [&](int at) {
        return is_kind(type_at(wiring, at), {DeviceKind::display, DeviceKind::projector, DeviceKind::wall_tile});
    });
}

}  // namespace streamwright::graph
