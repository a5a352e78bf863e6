#include "tests/lab/lab_predict.h"

#include "core/analysis/analyser.h"
#include "core/analysis/worst_case_under.h"

#include <algorithm>

namespace streamwright::lab {
static json phase_of(const model::Design& design) {
    const auto facts = analysis::analyse(design).facts;
    const auto& wiring = facts.get<graph::Wiring>();
    const auto& network = facts.get<graph::NetworkGraph>();
    const auto& tree = facts.get<analysis::SpanningTrees>().trees.at(0);
    const auto ends_of = [&](int arc) { return graph::arc_ends(wiring, facts.get<graph::Runs>(), network, arc); };
    const auto tag = [&](model::DeviceId id) { return design.devices.find(id)->tag; };
    const auto bridge_tag = [&](int b) { return wiring.devices[network.bridges[b].devices[0]].row->tag; };
    json phase{{"root", json::object()}, {"blocked", json::array()}, {"loads", json::array()}};
    for (int b = 0; b < static_cast<int>(tree.root_of.size()); ++b)
        phase["root"][bridge_tag(b)] = bridge_tag(tree.root_of[b] < 0 ? b : tree.root_of[b]);
    for (const auto& end : tree.blocked()) {
        const auto ends = ends_of(network.link_arc(end.link, end.at_a));
        phase["blocked"].push_back(design.cables.find(ends.link)->tag + " at " + tag(ends.from));
    }
    std::sort(phase["blocked"].begin(), phase["blocked"].end());
    for (int arc = 0; arc < network.arc_count(); ++arc) {
        const auto ends = ends_of(arc);
        json load{{"kind", ends.is_link ? "link" : "access"}, {"link", design.cables.find(ends.link)->tag}};
        load.update({{"from", tag(ends.from)}, {"to", tag(ends.to)}, {"streams", json::object()}});
        for (const int stream : facts.get<analysis::LinkLoads>().presets.at(0).arcs[arc].streams)
            load["streams"][std::next(design.streams.begin(), stream)->tag] = json::object();
        phase["loads"].push_back(load);
    }
    return phase;
}

json predict(const json& input) {
    auto phases = json::array();
    for (std::size_t cuts = 0; cuts <= input.value("cut", json::array()).size(); ++cuts)
        phases.push_back(phase_of(lab_design(input, cuts)));
    return {{"phases", phases}};
}

json predict_worst(json input) {
    for (auto& each : input["streams"])  // 125 packets of 1,000 octets a second are 1 Mbit/s
        each.update({{"bytes", 1000}, {"pps", 125 * input.at("rates").at(each.at("id")).get<double>()}});
    std::vector<analysis::DecoderLimit> limits;
    for (const auto& [tag, inputs] : input.at("k").items()) limits.push_back({tag, inputs, {}});
    for (auto& limit : limits)
        if (input["allowed"].contains(limit.decoder)) input["allowed"][limit.decoder].get_to(limit.streams.emplace());
    auto answers = json::array();
    for (const auto& each : worst_case_under(analysis::analyse(lab_design(input)).facts, limits)) {
        json row{{"link", each.link}, {"from", each.from}, {"to", each.to}, {"witness", json::object()}};
        row.update({{"pull", each.forwarded.count() / 1e6}, {"ideal", each.paths_only.count() / 1e6}});
        for (const auto& [decoder, stream] : each.witness) row["witness"][decoder].push_back(stream);
        answers.push_back(row);
    }
    return {{"answers", answers}};
}

}  // namespace streamwright::lab
