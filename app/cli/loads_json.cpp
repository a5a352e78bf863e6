#include "app/cli/loads_json.h"

#include "app/cli/terminal_safe.h"
#include "core/analysis/report.h"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <set>
#include <span>

namespace streamwright::app {

namespace loads_json_detail {

using Json = nlohmann::ordered_json;
using analysis::LinkLoads;
using analysis::SpanningTrees;
using graph::NetworkGraph;
using graph::Wiring;

/// The facts that a table of loads reads, by name.
struct Read {
    explicit Read(const LoadsView& view)
        : wiring(view.analysis.facts.get<Wiring>()),
          runs(view.analysis.facts.get<graph::Runs>()),
          network(view.analysis.facts.get<NetworkGraph>()),
          capacity(view.analysis.facts.get<analysis::LinkCapacity>()),
          vlans(view.analysis.facts.get<analysis::VlanPaths>()),
          trees(view.analysis.facts.get<SpanningTrees>()),
          forwarding(view.analysis.facts.get<analysis::Forwarding>()),
          loads(view.analysis.facts.get<LinkLoads>()),
          worst(view.analysis.facts.get<analysis::WorstCase>()) {
        for (const auto& stream : view.design.streams) stream_ids.push_back(stream.id);
    }
    const analysis::PresetLoad& load(std::size_t preset) const {
        return preset < loads.presets.size() ? loads.presets[preset] : loads.idle;
    }
    std::string bridge(int index) const {
        const auto& devices = network.bridges[static_cast<std::size_t>(index)].devices;
        return wiring.devices[static_cast<std::size_t>(devices.front())].row->id.text();
    }
    std::string stream(int index) const { return stream_ids[static_cast<std::size_t>(index)].text(); }

    const Wiring& wiring;
    const graph::Runs& runs;
    const NetworkGraph& network;
    const analysis::LinkCapacity& capacity;
    const analysis::VlanPaths& vlans;
    const SpanningTrees& trees;
    const analysis::Forwarding& forwarding;
    const LinkLoads& loads;
    const analysis::WorstCase& worst;
    std::vector<model::StreamId> stream_ids;
};

std::vector<std::string> blocked_ends(const Read& read, const analysis::Tree& tree) {
    std::vector<std::string> names;
    for (const auto& end : tree.blocked()) {
        const auto ends =
            graph::arc_ends(read.wiring, read.runs, read.network, read.network.link_arc(end.link, end.at_a));
        names.push_back(ends.link.text() + " at " + ends.from.text());
    }
    std::sort(names.begin(), names.end());
    return names;
}

Json vlan_rows(const Read& read, std::set<std::string>& all_blocked) {
    Json rows = Json::array();
    for (std::size_t i = 0; i < read.vlans.vlans.size(); ++i) {
        const auto& tree = read.trees.trees[i];
        const auto blocked = blocked_ends(read, tree);
        all_blocked.insert(blocked.begin(), blocked.end());
        std::set<std::string> roots;
        for (const int root : tree.root_of)
            if (root >= 0) roots.insert(read.bridge(root));
        Json queriers = Json::array();
        for (const int bridge : read.forwarding.vlans[i].queriers) queriers.push_back(read.bridge(bridge));
        Json row;
        row["id"] = read.vlans.vlans[i] ? Json(read.vlans.vlans[i]->text()) : Json(nullptr);
        row["root"] = roots.size() == 1 ? Json(*roots.begin()) : roots.empty() ? Json(nullptr) : Json(roots);
        row["queriers"] = std::move(queriers);
        row["blocked"] = blocked;
        rows.push_back(std::move(row));
    }
    return rows;
}

Json stream_list(const Read& read, std::span<const int> streams) {
    Json list = Json::array();
    for (const int stream : streams) list.push_back(read.stream(stream));
    return list;
}

void add_worst(Json& row, const Read& read, const analysis::ArcWorst& worst) {
    row["terms"] = {{"unasked", stream_list(read, worst.unasked)},
                    {"routed", stream_list(read, worst.routed)},
                    {"inputs_beyond", worst.inputs_beyond}};
    row["at_most"] = worst.at_most;  // the worst case is a bound; the witness reaches its terms
    row["witness"] = Json::array();
    for (const auto& routed : worst.witness) {
        const auto& device = read.wiring.devices[static_cast<std::size_t>(routed.decoder)];
        row["witness"].push_back(
            {{"stream", read.stream(routed.stream)},
             {"decoder", device.row->id.text()},
             {"input", device.type->codec->inputs[static_cast<std::size_t>(routed.input)].key.text}});
    }
}

Json arc_row(const Read& read, const LoadsView& view, int arc) {
    const auto ends = graph::arc_ends(read.wiring, read.runs, read.network, arc);
    const auto at = static_cast<std::size_t>(arc);
    const auto& load = read.load(view.preset).arcs[at];
    const auto& worst = read.worst.arcs[at];
    Json row{{"link", ends.link.text()}, {"from", ends.from.text()}, {"to", ends.to.text()}};
    row["capacity_bps"] = read.capacity.arcs[at] ? Json(read.capacity.arcs[at]->count()) : Json(nullptr);
    row["load_bps"] = load.wire.ceil().count();
    row["worst_bps"] = worst.wire.ceil().count();
    row["streams"] = stream_list(read, load.streams);
    if (view.worst) add_worst(row, read, worst);
    return row;
}

std::string cell(std::string text, std::size_t width, bool right) {
    // Widths count code points, so that names with accents line up.
    const auto shown = static_cast<std::size_t>(std::count_if(
        text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0U) != 0x80U; }));
    const std::string pad(shown < width ? width - shown : 0, ' ');
    return right ? pad + text : text + pad;
}

}  // namespace loads_json_detail

std::string loads_json(const LoadsView& view) {
    using namespace loads_json_detail;
    const Read read(view);
    std::set<std::string> blocked;
    Json top;
    top["vlans"] = vlan_rows(read, blocked);
    top["blocked"] = blocked;
    top["arcs"] = Json::array();
    for (int arc = 0; arc < read.network.arc_count(); ++arc) top["arcs"].push_back(arc_row(read, view, arc));
    return terminal_safe(top.dump(1, ' ', false, Json::error_handler_t::replace));
}

std::string loads_text(const LoadsView& view) {
    using namespace loads_json_detail;
    const Read read(view);
    const auto book = analysis::english(view.design);
    const auto name = [&](const auto& id) { return base::printable(book.name(analysis::ref(id))); };
    std::string text = cell("link", 10, false) + cell("from", 16, false) + cell("to", 16, false) +
                       cell("capacity", 12, true) + cell("load", 14, true) + cell("worst", 14, true) + "  streams\n";
    for (int arc = 0; arc < read.network.arc_count(); ++arc) {
        const auto ends = graph::arc_ends(read.wiring, read.runs, read.network, arc);
        const auto at = static_cast<std::size_t>(arc);
        const auto& load = read.load(view.preset).arcs[at];
        text +=
            cell(name(ends.link), 10, false) + cell(name(ends.from), 16, false) + cell(name(ends.to), 16, false) +
            cell(read.capacity.arcs[at] ? base::print(*read.capacity.arcs[at]) : "no link", 12, true) +
            cell(base::print(load.wire.ceil()), 14, true) +
            cell((read.worst.arcs[at].at_most ? "<= " : "") + base::print(read.worst.arcs[at].wire.ceil()), 14, true) +
            "  ";
        for (std::size_t i = 0; i < load.streams.size(); ++i)
            text += (i ? " " : "") + name(read.stream_ids[static_cast<std::size_t>(load.streams[i])]);
        text += '\n';
    }
    if (!text.empty()) text.pop_back();
    return text;
}

}  // namespace streamwright::app
