// Two ports, their transceivers and the cable between them share no speed: the link never comes up.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>

namespace streamwright::analysis::rules::no_common_speed {

constexpr std::string_view patterns[] = {STREAMWRIGHT_TEXT(
    "%1 does not come up: %2 offers %3, %4 offers %5, and no speed is common to both and the cable.")};

constexpr standards::Citation sources[] = {
    {"IEEE", "802.3", "clause 28 (auto-negotiation)", standards::Standing::memory}};

constexpr RuleWords words{.id = "no-common-speed",
                          .theme = Theme::links,
                          .title = "Link without a common speed",
                          .meaning =
                              "The lamp stays dark. One end offers only speeds that the other end, a "
                              "transceiver or the cable does not know.",
                          .measured =
                              "The speeds of both ports, of the transceivers in them and of the cable between them "
                              "are compared.",
                          .remedy = "Take a port, transceiver or cable that shares a speed with the other end.",
                          .patterns = patterns,
                          .sources = sources};

std::string offered(const graph::Wiring& wiring, graph::PortAt port) {
    std::string text;
    const auto add = [&](base::BitRate rate) { text += (text.empty() ? "" : ", ") + base::print(rate); };
    const auto* module = wiring.module_at(port);
    if (module && module->module)
        add(module->module->rate);
    else
        for (const auto rate : wiring.port_type(port).rates) add(rate);
    return text.empty() ? std::string("?") : text;
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const LinkCapacity& capacity, Findings& out) {
    for (std::size_t i = 0; i < runs.list.size() && i < capacity.runs.size(); ++i) {
        const auto& run = runs.list[i];
        if (!run.a || !run.b || capacity.runs[i].rate || capacity.runs[i].reason != NoLink::no_common_rate) continue;
        if (!wiring.is_network_port(*run.a) || !wiring.is_network_port(*run.b)) continue;
        const auto first = cable_id(wiring, run.cables.front());
        out.push_back(found(words.id, Severity::error, {first},
                            {named(first), port_ref(wiring, *run.a), offered(wiring, *run.a), port_ref(wiring, *run.b),
                             offered(wiring, *run.b)}));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::no_common_speed
