#include "tests/lab/lab_predict.h"

#include "core/model/delta.h"
#include "tests/lab/lab_design.h"
#include "tests/support/network_facts.h"

#include <algorithm>
#include <set>
#include <string>

namespace streamwright::lab {

namespace {

using nlohmann::json;
namespace mod = streamwright::model;

json phase_of(const mod::Design& design) {
    const test::NetworkFacts facts(design);
    const auto& network = facts.network;
    const auto bridge_tag = [&](int b) { return facts.wiring.devices[network.bridges[b].devices[0]].row->tag; };
    json phase{{"root", json::object()}, {"blocked", json::array()}, {"loads", json::array()}};
    for (std::size_t b = 0; b < network.bridges.size(); ++b)
        phase["root"][bridge_tag(static_cast<int>(b))] = bridge_tag(std::max(0, facts.trees.trees[0].root_of[b]));
    std::set<std::string> blocked;
    for (const auto& end : facts.trees.trees[0].blocked()) {
        const auto ends = graph::arc_ends(facts.wiring, facts.runs, network, network.link_arc(end.link, end.at_a));
        blocked.insert(design.cables.find(ends.link)->tag + " at " + facts.tag(ends.from));
    }
    phase["blocked"] = blocked;
    for (int arc = 0; arc < network.arc_count(); ++arc) {
        const auto ends = graph::arc_ends(facts.wiring, facts.runs, network, arc);
        auto streams = json::object();
        for (const auto& name : facts.tags(facts.loads.presets[0].arcs[arc].streams)) streams[name] = json::object();
        phase["loads"].push_back({{"kind", ends.is_link ? "link" : "access"},
                                  {"link", design.cables.find(ends.link)->tag},
                                  {"from", facts.tag(ends.from)},
                                  {"to", facts.tag(ends.to)},
                                  {"streams", streams}});
    }
    return phase;
}

}  // namespace

json predict(const json& input) {
    auto made = lab_design(input);
    auto phases = json::array({phase_of(made.design)});
    for (const auto& link : input.value("cut", json::array())) {
        mod::Editing edit(made.design);
        auto row = *made.design.port_overrides.find(made.link_port.at(link));
        row.disabled = true;
        edit.put(row);
        made.design = edit.now;
        phases.push_back(phase_of(made.design));
    }
    return {{"phases", phases}};
}

}  // namespace streamwright::lab
