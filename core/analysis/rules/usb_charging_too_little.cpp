// A computer on a USB-C lead that charges it more slowly than it draws.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"
#include "core/graph/usb_tree.h"

namespace streamwright::analysis::rules::usb_charging_too_little {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 asks for %3 over USB-C; %2 gives %4: its battery runs down during long meetings."),
    STREAMWRIGHT_TEXT("%1 asks for %3 over USB-C; %2 gives none: it needs a charger of its own.")};

constexpr standards::Citation sources[] = {
    {"USB", "Power Delivery", "the supply offers, the computer takes what it gets", standards::Standing::memory}};

constexpr RuleWords words{.id = "usb-charging-too-little",
                          .theme = Theme::power,
                          .title = "USB-C charges too little",
                          .meaning =
                              "The one lead that was promised is not enough: the computer runs down although it is "
                              "plugged in, and guests look for their chargers.",
                          .measured =
                              "What the type of the computer asks for against what the port at the other end of its "
                              "USB-C lead gives. Leads above 60 W must be marked for 5 A (common practice).",
                          .remedy = "Take a device that gives more, or plan a charger at the place.",
                          .patterns = patterns,
                          .sources = sources};

void judge(const graph::Wiring& wiring, const graph::Runs& runs, graph::PortAt port, base::Power asked, Findings& out) {
    const auto far = graph::usb_partner(wiring, runs, port);
    if (!far || wiring.port_type(*far).connector != catalogue::Connector::usb_c) return;
    const auto& gives = wiring.port_type(*far).usb;
    if (!gives) return;  // not known
    const auto given = gives->charges.value_or(base::Power{});
    if (given >= asked) return;
    const auto id = device_id(wiring, port.device), other = device_id(wiring, far->device);
    auto finding = found(words.id, Severity::warning, {id, other}, {named(id), named(other), asked, given},
                         given.count() > 0 ? 0 : 1);
    finding.measured = given;
    finding.limit = asked;
    finding.terms.push_back(line(STREAMWRIGHT_TEXT("given %1, asked %2"), {given, asked}));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, Findings& out) {
    for (int i = 0; i < static_cast<int>(wiring.devices.size()); ++i) {
        const auto* type = wiring.devices[at(i)].type;
        for (int p = 0; type && p < static_cast<int>(type->ports.size()); ++p)
            if (const auto& usb = type->ports[at(p)].usb; usb && usb->charging)
                judge(wiring, runs, {i, p}, *usb->charging, out);
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::usb_charging_too_little
