// A keyboard and mouse session over the network has one computer on one end and its peripherals on one other end.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <map>
#include <set>
#include <utility>

namespace streamwright::analysis::rules::kvm_sides {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 in %2 has %3 USB hosts and %4 ends with peripherals: one host only can be served."),
    STREAMWRIGHT_TEXT("%1 in %2 has no USB host and %4 ends with peripherals: no end is cabled toward a computer."),
    STREAMWRIGHT_TEXT("%1 in %2 has one USB host and %4 ends with peripherals: one end only controls."),
    STREAMWRIGHT_TEXT("%1 in %2 has one USB host and no end with peripherals.")};

constexpr RuleWords words{.id = "kvm-sides",
                          .theme = Theme::signals,
                          .title = "USB session without one host and one device side",
                          .meaning =
                              "USB needs one computer on one end and its peripherals on the other. Two computers, or "
                              "peripherals alone, face each other in silence.",
                          .measured =
                              "For each preset the ends of a USB stream are counted: those cabled toward a computer "
                              "and those cabled toward peripherals. There must be one of each.",
                          .remedy = "Subscribe one host end and one end with peripherals, and cable both.",
                          .patterns = patterns,
                          .no_source = "Common practice with USB over a network."};

bool cabled(const graph::Wiring& wiring, int device, catalogue::Way way) {
    const auto& ports = wiring.devices[at(device)].type->ports;
    for (int p = 0; p < static_cast<int>(ports.size()); ++p)
        if (ports[at(p)].way == way && !wiring.cables_at({device, p}).empty()) return true;
    return false;
}

using Ends = std::set<model::DeviceId>;

void judge(const graph::Wiring& wiring, model::PresetId preset, model::StreamId stream, const Ends& ends,
           Findings& out) {
    std::int64_t hosts = 0, peripherals = 0;
    for (const auto id : ends) {
        const auto device = wiring.device_index(id);
        if (!device || !wiring.devices[at(*device)].type) return;  // what is plugged in where is not known
        hosts += cabled(wiring, *device, catalogue::Way::usb_device);
        peripherals += cabled(wiring, *device, catalogue::Way::usb_host);
    }
    if (hosts == 1 && peripherals == 1) return;
    const int variant = hosts > 1 ? 0 : hosts == 0 ? 1 : peripherals > 1 ? 2 : 3;
    out.push_back(found(words.id, Severity::error, {stream, preset}, {named(stream), named(preset), hosts, peripherals},
                        variant));
}

void check(const graph::Wiring& wiring, Findings& out) {
    std::map<model::StreamId, model::DeviceId> usb_senders;  // few, or none: looked up before any subscription is
    for (const auto& stream : wiring.design.streams)
        if (stream.kind == catalogue::StreamKind::usb) usb_senders.emplace(stream.id, stream.encoder);
    if (usb_senders.empty()) return;
    std::map<std::pair<model::PresetId, model::StreamId>, Ends> sessions;
    for (const auto& row : wiring.design.subscriptions) {
        const auto sender = usb_senders.find(row.stream);
        if (sender == usb_senders.end()) continue;
        auto& ends = sessions[{row.preset, row.stream}];
        ends.insert(sender->second);
        ends.insert(row.decoder);
    }
    for (const auto& [key, ends] : sessions) judge(wiring, key.first, key.second, ends, out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::kvm_sides
