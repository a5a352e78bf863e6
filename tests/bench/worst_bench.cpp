// The worst case of one arc against a mixed-integer solver: the direction of a campus that the most streams may be
// routed over, solved by both from prepared models, to the same value. Only this file knows the solver (Cbc, by its C
// interface); where it is not installed the row says so.
#include "core/analysis/analyser.h"
#include "core/analysis/facts/arc_sides.h"
#include "core/analysis/facts/stream_walk.h"
#include "tests/bench/benches.h"
#include "tests/support/campus.h"

#include <cstdio>
#include <iomanip>

#ifdef STREAMWRIGHT_CBC
#include <Cbc_C_Interface.h>
#include <fcntl.h>
#include <unistd.h>
#endif

namespace streamwright::bench {

namespace worst_bench {

using namespace analysis;

/// Everything that a worst case is made from.
struct Network {
    explicit Network(int endpoints) : facts(analyse(test::campus(endpoints, 1)).facts) {}
    Facts facts;
    const graph::Wiring& wiring = facts.get<graph::Wiring>();
    const graph::NetworkGraph& network = facts.get<graph::NetworkGraph>();
    const Forwarding& forwarding = facts.get<Forwarding>();
    const LinkLoads& loads = facts.get<LinkLoads>();
    Compatibility compatibility = usual_compatibility(wiring);

    /// The direction of a link that routing can add the most streams to.
    int busiest_arc() const {
        const auto& arcs = facts.get<WorstCase>().arcs;
        std::size_t best = 0;
        for (std::size_t i = 0; i < 2 * network.links.size(); ++i)
            if (arcs[i].routed.size() > arcs[best].routed.size()) best = i;
        return static_cast<int>(best);
    }
};

/// The kinds of inputs split in three each, of which two show two thirds of the streams of the kind: sets that overlap.
Compatibility overlapping(const Compatibility& usual) {
    Compatibility result = usual;
    for (std::size_t s = 0; s < usual.stream_kind.size(); ++s)
        result.stream_kind[s] = 3 * usual.stream_kind[s] + static_cast<int>(s % 3);
    for (std::size_t i = 0; i < usual.slots.size(); ++i)
        result.slots[i].kind = 3 * usual.slots[i].kind + static_cast<int>(i % 3);
    const auto kinds = usual.takes.size();
    result.takes.assign(3 * kinds, std::vector<bool>(3 * kinds, false));
    for (std::size_t a = 0; a < 3 * kinds; ++a)
        for (std::size_t b = 0; b < 3 * kinds; ++b)
            result.takes[a][b] = usual.takes[a / 3][b / 3] && (a % 3 == 0 || a % 3 != b % 3 + 1);
    return result;
}

/// Streams that may be routed over the arc and the inputs beyond that may show them.
struct Candidates {
    std::vector<double> megabits;            // per stream
    std::vector<std::vector<int>> shown_by;  // per stream: inputs
    int inputs = 0;

    Candidates(const Network& n, int arc) {
        const auto& paths = n.facts.get<VlanPaths>();
        for (VlanIndex vlan = 0; vlan < static_cast<VlanIndex>(paths.vlans.size()); ++vlan) {
            const auto v = static_cast<std::size_t>(vlan);
            const auto order = order_tree(n.network, n.facts.get<SpanningTrees>().trees[v], n.forwarding.vlans[v]);
            if (const auto sides = sides_of(n.network, paths, order, vlan, arc)) add(n, arc, vlan, order, *sides);
        }
    }
    void add(const Network& n, int arc, VlanIndex vlan, const TreeOrder& order, const ArcSides& sides) {
        const auto position = [&](int bridge) { return order.position[static_cast<std::size_t>(bridge)]; };
        std::vector<std::pair<int, int>> beyond;  // kind, input
        for (const auto& slot : n.compatibility.slots) {
            const auto place = receiver_of(n.network, n.facts.get<VlanPaths>(), slot.device, vlan);
            if (place && sides.part(position(place->bridge)) && !sides.behind(position(place->bridge)))
                beyond.emplace_back(slot.kind, inputs++);
        }
        const auto& idle = n.loads.idle.arcs[static_cast<std::size_t>(arc)].streams;
        int index = -1;
        for (const auto& row : n.wiring.design.streams) {
            const auto& way = n.forwarding.streams[static_cast<std::size_t>(++index)];
            if (!way.on_network() || way.vlan != vlan || std::ranges::find(idle, index) != idle.end()) continue;
            if (!sides.behind(position(way.first_bridge(n.network)))) continue;
            const auto& paths = n.facts.get<VlanPaths>().links[static_cast<std::size_t>(arc / 2)];
            megabits.push_back(static_cast<double>(wire_rate(row, paths.a.tags(vlan)).ceil().count()) / 1e6);
            auto& list = shown_by.emplace_back();
            for (const auto& [kind, input] : beyond)
                if (n.compatibility.shows(kind, index)) list.push_back(input);
        }
    }
};

/// Repeats until a second has been measured; the time of one.
template <class Work>
Milliseconds measured(Work&& work) {
    Milliseconds total{};
    int rounds = 0;
    for (; total.count() < 1000; ++rounds) total += work();
    return total / rounds;
}

#ifdef STREAMWRIGHT_CBC
/// The solver prints a few lines whatever its log level.
struct Quiet {
    int kept = dup(STDOUT_FILENO);
    Quiet() {
        std::fflush(stdout);
        const int nowhere = open("/dev/null", O_WRONLY);
        dup2(nowhere, STDOUT_FILENO);
        close(nowhere);
    }
    ~Quiet() {
        std::fflush(stdout);
        dup2(kept, STDOUT_FILENO);
        close(kept);
    }
};

/// One binary variable for each stream at each input that may show it; a stream counts once, an input shows one.
Milliseconds solved(const Candidates& candidates, double& value) {
    Cbc_Model* model = Cbc_newModel();
    for (const char* log : {"logLevel", "slogLevel"}) Cbc_setParameter(model, log, "0");
    Cbc_setObjSense(model, -1);
    const int streams = static_cast<int>(candidates.megabits.size());
    for (int row = 0; row < streams + candidates.inputs; ++row) Cbc_addRow(model, "", 0, nullptr, nullptr, 'L', 1);
    for (int s = 0; s < streams; ++s)
        for (const int input : candidates.shown_by[static_cast<std::size_t>(s)]) {
            int rows[] = {s, streams + input};
            double ones[] = {1, 1};
            Cbc_addCol(model, "", 0, 1, candidates.megabits[static_cast<std::size_t>(s)], 1, 2, rows, ones);
        }
    Milliseconds time{};
    {
        const Quiet quiet;
        time = timed([&] { Cbc_solve(model); });
    }
    value = Cbc_getObjValue(model);
    Cbc_deleteModel(model);
    return time;
}

void bench_arc(std::ostream& out, int size, const Network& n, int arc) {
    const Candidates candidates(n, arc);
    double value = 0;
    const auto solver = measured([&] { return solved(candidates, value); });
    WorstFinder finder(n.wiring, n.network, n.facts.get<VlanPaths>(), n.facts.get<SpanningTrees>(), n.forwarding,
                       n.loads, n.compatibility, WorstFlow::forwarded);
    ArcWorst worst;
    const auto ours = measured([&] {
                          return timed([&] {
                              for (int i = 0; i < 100; ++i) worst = finder.of(arc);
                          });
                      }) /
                      100;
    const auto added = worst.wire - n.loads.idle.arcs[static_cast<std::size_t>(arc)].wire;
    out << std::setw(11) << size << std::setw(10) << candidates.megabits.size() << std::setw(10) << candidates.inputs
        << std::setw(10) << n.compatibility.takes.size() << std::fixed << std::setprecision(4) << std::setw(10)
        << solver.count() << std::setw(10) << ours.count() << std::setprecision(0) << std::setw(10) << solver / ours
        << std::setprecision(3) << std::setw(14) << value << " and " << static_cast<double>(added.ceil().count()) / 1e6
        << '\n';
}
#endif

}  // namespace worst_bench

void bench_worst(std::ostream& out, const std::vector<int>& sizes) {
    using namespace worst_bench;
    out << "Worst case of one direction against a mixed-integer solver, milliseconds" << std::endl;
#ifdef STREAMWRIGHT_CBC
    out << "  endpoints   streams    inputs     kinds    solver      ours     ratio   megabits of both\n";
    for (const int size : sizes) {
        Network n(size);
        const int arc = n.busiest_arc();
        bench_arc(out, size, n, arc);
        n.compatibility = overlapping(n.compatibility);
        bench_arc(out, size, n, arc);
    }
    out << "  goals: at least 1,000 times less at 200, 100 times at 1,000\n\n";
#else
    out << "  not measured: Cbc's C interface was not found when this was built\n\n";
    static_cast<void>(sizes);
#endif
}

}  // namespace streamwright::bench
