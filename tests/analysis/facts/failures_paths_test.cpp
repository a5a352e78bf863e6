// Every failure of 200 random networks without snooping, where a picture arrives exactly when there is a way: cut
// edges, cut vertices and lost connections as python3-networkx finds them.
#include "core/analysis/facts/failures.h"
#include "tests/support/network_facts.h"
#include "tests/support/random_network.h"
#include "tests/support/temp_folder.h"

#include <gtest/gtest.h>

#include <cstdlib>
#include <fstream>

namespace streamwright::test::failures_paths_test {

// Nodes are devices by tag; edges carry their cable. Prints what differs; its exit code says whether anything does.
const std::string checker = R"(
import json, sys
import networkx as nx
wrong = cuts = vertices = lost = 0
for net in json.load(open(sys.argv[1])):
    whole = nx.MultiGraph()
    whole.add_nodes_from(net['switches'])
    whole.add_edges_from((a, b, cable) for a, b, cable in net['links'])
    assert nx.is_connected(whole)
    cut_edges = {frozenset(edge) for edge in nx.bridges(whole)}
    cut_vertices = set(nx.articulation_points(nx.Graph(whole)))
    every = whole.copy()
    every.add_edges_from((a, b, cable) for a, b, cable in net['cables'])
    for said in net['outcomes']:
        rest = every.copy()
        if said['kind'] == 'link':
            edge = next((a, b) for a, b, cable in net['links'] if cable == said['name'])
            alone = frozenset(edge) in cut_edges
            cuts += alone
            rest.remove_edge(*edge, key=said['name'])
            good = (said['parts'] > 1) == alone
        elif said['kind'] == 'device':
            alone = said['name'] in cut_vertices
            vertices += alone
            rest.remove_node(said['name'])
            good = (said['parts'] > 1) == alone
        else:
            a, b = next((a, b) for a, b, cable in net['cables'] if cable == said['name'])
            rest.remove_edge(a, b, key=said['name'])
            good = said['parts'] == 1
        expected = sorted(i for i, (a, b) in enumerate(net['pictures'])
                          if not (rest.has_node(a) and rest.has_node(b) and nx.has_path(rest, a, b)))
        lost += len(expected)
        if not good or expected != said['lost']:
            wrong += 1
            print(net['seed'], said, expected)
assert cuts > 100 and vertices > 100 and lost > 1000, (cuts, vertices, lost)
sys.exit(1 if wrong else 0)
)";

std::string quoted(const std::string& text) { return '"' + text + '"'; }

/// Items of a JSON list, with commas in between.
class List {
public:
    explicit List(std::ostream& out) : out_(out) { out_ << '['; }
    std::ostream& next() { return out_ << (std::exchange(first_, false) ? "" : ", "); }
    void close() { out_ << ']'; }

private:
    std::ostream& out_;
    bool first_ = true;
};

void write_network(std::ostream& out, unsigned seed, const NetworkFacts& f) {
    const auto at = [](int index) { return static_cast<std::size_t>(index); };
    const auto device = [&](int index) { return quoted(f.wiring.devices[at(index)].row->tag); };
    const auto cable = [&](int run) {
        return quoted(f.wiring.cables[at(f.runs.list[at(run)].cables.front())].row->tag);
    };
    out << "{\"seed\": " << seed << ", \"switches\": ";
    List switches(out);
    for (const auto& bridge : f.network.bridges) switches.next() << device(bridge.devices.front());
    switches.close();
    out << ", \"links\": ";
    List links(out);
    for (const auto& link : f.network.links)
        links.next() << '[' << device(link.a_ports.front().device) << ", " << device(link.b_ports.front().device)
                     << ", " << cable(link.runs.front()) << ']';
    links.close();
    out << ", \"cables\": ";
    List cables(out);
    for (const auto& leaf : f.network.leaves)
        cables.next() << '[' << device(leaf.device_port.device) << ", " << device(leaf.bridge_port.device) << ", "
                      << cable(leaf.run) << ']';
    cables.close();
    out << ", \"pictures\": ";
    List pictures(out);
    for (const auto& row : f.wiring.design.subscriptions)
        pictures.next() << '[' << quoted(f.tag(f.wiring.design.streams.find(row.stream)->encoder)) << ", "
                        << quoted(f.tag(row.decoder)) << ']';
    pictures.close();
    out << ", \"outcomes\": ";
    List outcomes(out);
    const auto power = analysis::find_power_budget(f.wiring, f.runs);
    const auto failures =
        analysis::find_outcomes({f.wiring, f.runs, f.network, f.capacity, f.paths, f.trees, f.forwarding}, f.loads,
                                analysis::list_failing(f.wiring, f.runs, f.network, power), {});
    for (const auto& each : failures->outcomes) {
        const auto kind = each.failing.kind == analysis::FailingKind::link     ? "link"
                          : each.failing.kind == analysis::FailingKind::device ? "device"
                                                                               : "access";
        const auto name = each.failing.device >= 0 ? device(each.failing.device)
                                                   : quoted(f.wiring.cables[at(each.failing.cable)].row->tag);
        outcomes.next() << "{\"kind\": \"" << kind << "\", \"name\": " << name << ", \"parts\": " << each.parts
                        << ", \"lost\": ";
        List lost(out);
        for (const auto& picture : each.lost) lost.next() << picture.subscription;
        lost.close();
        out << '}';
    }
    outcomes.close();
    out << '}';
}

TEST(FailuresPaths, LostConnectionsAreThoseOfTheGraph) {
    TempFolder folder;
    std::ofstream(folder / "check.py") << checker;
    {
        std::ofstream out(folder / "nets.json");
        List nets(out);
        for (unsigned seed = 1; seed <= 200; ++seed) {
            nets.next();
            write_network(out, seed, NetworkFacts(random_plain_network(seed)));
        }
        nets.close();
    }
    const auto command = "python3 '" + (folder / "check.py").string() + "' '" + (folder / "nets.json").string() + '\'';
    EXPECT_EQ(std::system(command.c_str()), 0);
}

}  // namespace streamwright::test::failures_paths_test
