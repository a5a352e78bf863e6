// Some endpoints turn their USB ports toward a computer or toward its peripherals, never both: cables on both sides of
// one group leave one of them dead.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <map>

namespace streamwright::analysis::rules::usb_both_roles_cabled {

constexpr std::string_view patterns[] = {STREAMWRIGHT_TEXT(
    "%1 has USB cables toward a computer (%2) and toward peripherals (%3), but its type does one at a time.")};

constexpr standards::Citation sources[] = {{"USB-IF", "USB 2.0", "one host a bus, 4.1.1", standards::Standing::memory}};

constexpr RuleWords words{
    .id = "usb-both-roles-cabled",
    .theme = Theme::signals,
    .title = "USB ports of both roles cabled",
    .meaning =
        "Either the computer sees nothing or the keyboard stays dead, whichever role the "
        "endpoint takes.",
    .measured = "The cables on USB ports of one group, of which the type serves one role at a time.",
    .remedy = "Take the cables of one role off, or use one endpoint more.",
    .patterns = patterns,
    .sources = sources};

struct Sides {
    std::optional<int> device_side, host_side;  // the first cabled port of each way
};

void judge(const graph::Wiring& wiring, int device, Findings& out) {
    const auto& type = *wiring.devices[at(device)].type;
    std::map<int, Sides> groups;
    for (int p = 0; p < static_cast<int>(type.ports.size()); ++p) {
        const auto& port = type.ports[at(p)];
        if (!port.usb_group || wiring.cables_at({device, p}).empty()) continue;
        auto& side = port.way == catalogue::Way::usb_device ? groups[*port.usb_group].device_side
                                                            : groups[*port.usb_group].host_side;
        if (!side) side = p;
    }
    for (const auto& [group, sides] : groups) {
        if (!sides.device_side || !sides.host_side) continue;
        const auto to_computer = port_subject(wiring, {device, *sides.device_side});
        const auto to_peripheral = port_subject(wiring, {device, *sides.host_side});
        const auto id = device_id(wiring, device);
        out.push_back(found(words.id, Severity::error, {id, to_computer, to_peripheral},
                            {named(id), named(to_computer), named(to_peripheral)}));
    }
}

void check(const graph::Wiring& wiring, Findings& out) {
    for (int i = 0; i < static_cast<int>(wiring.devices.size()); ++i)
        if (wiring.devices[at(i)].type) judge(wiring, i, out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::usb_both_roles_cabled
