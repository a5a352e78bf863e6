// A USB device that needs more than the way to its computer carries: a camera over a channel for keyboards.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/analysis/usb_sessions.h"
#include "core/graph/usb_tree.h"
#include "core/standards/usb.h"

#include <algorithm>
#include <set>
#include <string>

namespace streamwright::analysis::rules::usb_device_not_carried {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 sends up to %2; %3 between it and its computer carries %4 of such a device."),
    STREAMWRIGHT_TEXT("%1 sends up to %2; %3 between it and its computer carries keyboards, mice and touch only."),
    STREAMWRIGHT_TEXT("%1 sends up to %2, more than the %4 that one such device may take of a USB 2.0 lead to %3."),
    STREAMWRIGHT_TEXT("%1 sends up to %2; what %3 carries of such a device is not known.")};

constexpr standards::Citation sources[] = {standards::usb_isochronous_source};

constexpr RuleWords words{
    .id = "usb-device-not-carried",
    .theme = Theme::signals,
    .title = "USB device the way does not carry",
    .meaning =
        "The camera is found with small pictures or not at all; keyboards beside it work. It "
        "sends its pictures at fixed times (isochronous), and the way has less room for that.",
    .measured =
        "What a camera's largest format sends, against what the types of both ends carry over the "
        "network, and against 196.608 Mb/s, the most that one such device takes of a high-speed "
        "USB 2.0 lead. Where a type is silent the finding is advice.",
    .remedy =
        "Set the camera to a smaller format, take ends that carry it, or plug it in at the "
        "computer.",
    .patterns = patterns,
    .sources = sources};

/// Ports of high speed and less share the limit of one isochronous device.
bool is_usb_2(const catalogue::PortType& port) {
    return std::any_of(port.standards.begin(), port.standards.end(),
                       [](const std::string& name) { return name == "USB 2.0" || name == "USB 1.1"; });
}

struct Camera {
    Subject subject;
    base::Ref name;
    base::BitRate sends;
};

std::optional<Camera> camera_at(const graph::Wiring& wiring, graph::PortAt port) {
    const auto& usb = wiring.port_type(port).usb;
    if (!usb || !usb->isochronous) return std::nullopt;
    return Camera{device_id(wiring, port.device), named(device_id(wiring, port.device)), *usb->isochronous};
}

Finding finding_of(const Camera& camera, Severity severity, const Subject& way, int variant,
                   std::optional<base::BitRate> limit) {
    std::vector<base::Value> values{camera.name, camera.sends, named(way)};
    if (limit) values.emplace_back(*limit);
    auto finding = found(words.id, severity, {camera.subject, way}, std::move(values), variant);
    if (!limit) return finding;
    finding.measured = camera.sends;
    finding.limit = *limit;
    finding.terms.push_back(line(STREAMWRIGHT_TEXT("asked %1, carried %2"), {camera.sends, *limit}));
    return finding;
}

/// The end that carries least; an end that is silent says nothing.
void judge_session(const graph::Wiring& wiring, const UsbSession& session, const Camera& camera, Findings& out) {
    std::optional<std::pair<base::BitRate, int>> least;
    std::optional<int> silent;
    for (const int end : session.ends) {
        const auto& codec = wiring.devices[at(end)].type->codec;
        const auto* usb = codec && codec->usb ? &*codec->usb : nullptr;
        if (usb && usb->human_interface_only)
            return out.push_back(finding_of(camera, Severity::error, device_id(wiring, end), 1, {}));
        if (!usb || !usb->isochronous)
            silent = end;
        else if (!least || *usb->isochronous < least->first)
            least = {*usb->isochronous, end};
    }
    if (least && camera.sends > least->first)
        out.push_back(finding_of(camera, Severity::error, device_id(wiring, least->second), 0, least->first));
    else if (silent)
        out.push_back(finding_of(camera, Severity::advice, device_id(wiring, *silent), 3, {}));
}

void judge_lead(const graph::Wiring& wiring, const graph::Runs& runs, graph::PortAt port, Findings& out) {
    const auto camera = camera_at(wiring, port);
    const auto socket = graph::usb_partner(wiring, runs, port);
    if (!camera || !socket || camera->sends <= standards::usb_isochronous_limit) return;
    if (!is_usb_2(wiring.port_type(port)) && !is_usb_2(wiring.port_type(*socket))) return;
    out.push_back(
        finding_of(*camera, Severity::error, device_id(wiring, socket->device), 2, standards::usb_isochronous_limit));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, Findings& out) {
    for (int i = 0; i < static_cast<int>(wiring.devices.size()); ++i) {
        const auto* type = wiring.devices[at(i)].type;
        for (int p = 0; type && p < static_cast<int>(type->ports.size()); ++p)
            if (type->ports[at(p)].way == catalogue::Way::usb_device) judge_lead(wiring, runs, {i, p}, out);
    }
    std::set<std::string> told;  // one finding a camera and way, in the first preset that has it
    for (const auto& session : usb_sessions(wiring)) {
        if (!session.known) continue;
        Findings found_here;
        for (const int end : session.ends)
            for (const auto& plugged : graph::plugged_into(wiring, runs, end))
                if (const auto camera = camera_at(wiring, plugged.at))
                    judge_session(wiring, session, *camera, found_here);
        for (auto& finding : found_here)
            if (told.insert(finding.key()).second) out.push_back(std::move(finding));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::usb_device_not_carried
