// More USB hubs one behind the other than USB allows, counting those inside endpoints, docks and displays.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/analysis/usb_sessions.h"
#include "core/graph/usb_tree.h"
#include "core/standards/usb.h"

#include <algorithm>
#include <map>

namespace streamwright::analysis::rules::usb_too_many_hubs {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 stands behind %2 USB hubs in series; %3 are allowed."),
    STREAMWRIGHT_TEXT("%1 stands behind %2 USB hubs in series, those on its way over the network with it; %3 are "
                      "allowed.")};

constexpr standards::Citation sources[] = {standards::usb_hubs_source};

constexpr RuleWords words{.id = "usb-too-many-hubs",
                          .theme = Theme::signals,
                          .title = "Too many USB hubs in series",
                          .meaning =
                              "The computer does not find what is plugged in last. Docks, displays with sockets and "
                              "extension over the network each count for a hub.",
                          .measured =
                              "Hubs between a device and its computer, over leads and over the network; a device with "
                              "sockets counts for one unless its type states another number.",
                          .remedy = "Plug the device in nearer to the computer, or take a hub away.",
                          .patterns = patterns,
                          .sources = sources};

struct Depth {
    int hubs = 0;
    bool over_network = false;
};
using Deepest = std::map<int, Depth>;  // per device plugged in

void note(Deepest& deepest, const std::vector<graph::UsbPlugged>& plugged, int before, bool over_network) {
    for (const auto& each : plugged) {
        auto& known = deepest[each.at.device];
        if (each.hubs + before > known.hubs) known = {each.hubs + before, over_network};
    }
}

/// A computer: it has USB sockets and nothing over USB above it.
bool is_root(const catalogue::DeviceType& type) {
    const auto has = [&](catalogue::Way way) {
        return std::any_of(type.ports.begin(), type.ports.end(), [&](const auto& port) { return port.way == way; });
    };
    return !type.codec && has(catalogue::Way::usb_host) && !has(catalogue::Way::usb_device);
}

int hubs_of(const graph::Wiring& wiring, const UsbSession& session) {
    int hubs = 0;
    for (const int end : session.ends)
        if (const auto& codec = wiring.devices[at(end)].type->codec; codec && codec->usb)
            hubs = std::max(hubs, codec->usb->hubs.value_or(0));
    return hubs;
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, Findings& out) {
    Deepest deepest;
    for (int i = 0; i < static_cast<int>(wiring.devices.size()); ++i)
        if (const auto* type = wiring.devices[at(i)].type; type && is_root(*type))
            note(deepest, graph::plugged_into(wiring, runs, i), 0, false);
    for (const auto& session : usb_sessions(wiring))
        for (std::size_t end = 0; session.known && end < session.ends.size(); ++end)
            note(deepest, graph::plugged_into(wiring, runs, session.ends[end]), hubs_of(wiring, session), true);
    for (const auto& [device, depth] : deepest) {
        if (depth.hubs <= standards::most_usb_hubs) continue;
        const auto id = device_id(wiring, device);
        auto finding = found(words.id, Severity::error, {id},
                             {named(id), std::int64_t{depth.hubs}, std::int64_t{standards::most_usb_hubs}},
                             depth.over_network ? 1 : 0);
        finding.measured = std::int64_t{depth.hubs};
        finding.limit = std::int64_t{standards::most_usb_hubs};
        finding.terms.push_back(line(STREAMWRIGHT_TEXT("%1 hubs in series, %2 allowed"),
                                     {std::int64_t{depth.hubs}, std::int64_t{standards::most_usb_hubs}}));
        out.push_back(std::move(finding));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::usb_too_many_hubs
