// More USB devices behind the ends of one session over the network than the endpoints carry.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/analysis/usb_sessions.h"
#include "core/graph/usb_tree.h"

#include <algorithm>
#include <map>

namespace streamwright::analysis::rules::usb_too_many_devices {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 carries %2 USB devices at most; %4 are plugged in behind the ends of %5 in preset %3.")};

constexpr standards::Citation sources[] = {{"USB", "2.0", "4.8 (a hub is a device too)", standards::Standing::memory}};

constexpr RuleWords words{.id = "usb-too-many-devices",
                          .theme = Theme::signals,
                          .title = "More USB devices than the way carries",
                          .meaning =
                              "What is plugged in last is not found, mostly the one thing that is needed: the touch "
                              "surface after keyboard, mouse and headset.",
                          .measured =
                              "For each USB session and preset, the devices at all its ends and the hubs between them, "
                              "against the least that the types of the ends state. A type that states none is not "
                              "judged.",
                          .remedy = "Take a device or a hub away, or endpoints that carry more.",
                          .patterns = patterns,
                          .sources = sources};

struct Least {
    int devices = 0, end = -1;
};

/// The end that carries fewest.
Least least_of(const graph::Wiring& wiring, const UsbSession& session) {
    Least least;
    for (const int end : session.ends) {
        const auto& codec = wiring.devices[at(end)].type->codec;
        if (!codec || !codec->usb || !codec->usb->devices) continue;
        if (least.end < 0 || *codec->usb->devices < least.devices) least = {*codec->usb->devices, end};
    }
    return least;
}

/// Everything plugged in, hubs too: each is a device on the bus. The computer's own side bears none.
std::int64_t plugged_in(const graph::Wiring& wiring, const graph::Runs& runs, const UsbSession& session) {
    std::int64_t devices = 0;
    for (const int end : session.ends) devices += std::ssize(graph::plugged_into(wiring, runs, end));
    return devices;
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, Findings& out) {
    std::map<model::StreamId, Finding> most;  // of each session the preset that has most
    for (const auto& session : usb_sessions(wiring)) {
        if (!session.known) continue;
        const auto least = least_of(wiring, session);
        const auto devices = least.end < 0 ? 0 : plugged_in(wiring, runs, session);
        if (devices <= least.devices) continue;
        const auto id = device_id(wiring, least.end);
        auto finding =
            found(words.id, Severity::error, {id, session.stream},
                  {named(id), std::int64_t{least.devices}, named(session.preset), devices, named(session.stream)});
        finding.measured = devices;
        finding.limit = std::int64_t{least.devices};
        finding.terms.push_back(line(STREAMWRIGHT_TEXT("%1 - %2 = %3 too many"),
                                     {devices, std::int64_t{least.devices}, devices - least.devices}));
        const auto [held, fresh] = most.try_emplace(session.stream, finding);
        if (!fresh && std::get<std::int64_t>(*held->second.measured) < devices) held->second = std::move(finding);
    }
    for (auto& [stream, finding] : most) out.push_back(std::move(finding));
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::usb_too_many_devices
