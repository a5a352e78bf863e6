// How long every single failure of a campus takes: as it is generated, a tree, and with a second uplink for every
// access switch, so that each cut moves streams.
#include "core/analysis/analyser.h"
#include "tests/bench/benches.h"
#include "tests/support/campus.h"

#include <algorithm>
#include <iomanip>

namespace streamwright::bench {

namespace failures_bench {

using analysis::FailingKind;

constexpr std::uint64_t second_cables = std::uint64_t{1} << 59U;  // ids that the campus does not use

/// The second cage of each access switch to the aggregation switch after its own.
model::Design with_second_uplinks(model::Design design) {
    std::vector<model::DeviceId> aggregations, accesses;
    std::vector<model::Cable> uplinks;
    for (const auto& row : design.devices) {
        if (row.tag.starts_with("SW-G")) aggregations.push_back(row.id);
        if (row.tag.starts_with("SW-A")) accesses.push_back(row.id);
    }
    const auto is = [](const std::vector<model::DeviceId>& all, const std::optional<model::CableEnd>& end) {
        return end ? std::find(all.begin(), all.end(), end->port.device) : all.end();
    };
    for (const auto& cable : design.cables)
        if (is(aggregations, cable.a) != aggregations.end() && is(accesses, cable.b) != accesses.end())
            uplinks.push_back(cable);
    std::uint64_t next = second_cables;
    for (const auto& first : uplinks) {
        auto cable = first;
        const auto own = is(aggregations, first.a) - aggregations.begin();
        const auto count = static_cast<std::ptrdiff_t>(aggregations.size());
        cable.id = model::CableId(next++);
        cable.a->port.device = aggregations[static_cast<std::size_t>((own + 1) % count)];
        cable.a->port.port.text = std::to_string(std::stoi(first.a->port.port.text) + 10);
        cable.b->port.port.text = "50";
        for (const auto& [from, to] : {std::pair(first.a, cable.a), std::pair(first.b, cable.b)}) {
            auto set = *design.port_overrides.find(from->port);
            set.port = to->port;
            design.port_overrides.put(set);
        }
        design.cables.put(cable);
    }
    return design;
}

struct Figures {
    std::size_t links = 0, devices = 0, accesses = 0, moved = 0;
    Milliseconds trunk{}, access{};  // links and devices; cables of single devices
};

Figures measure(const model::Design& design) {
    const auto facts = analysis::Analyser(design).frozen();
    const auto& f = *facts;
    const analysis::WholeNetwork whole{f.get<graph::Wiring>(),       f.get<graph::Runs>(),
                                       f.get<graph::NetworkGraph>(), f.get<analysis::LinkCapacity>(),
                                       f.get<analysis::VlanPaths>(), f.get<analysis::SpanningTrees>(),
                                       f.get<analysis::Forwarding>()};
    const auto all = analysis::list_failing(whole.wiring, whole.runs, whole.network, f.get<analysis::PowerBudget>());
    auto trunks = all, accesses = all;
    std::erase_if(trunks, [](const auto& each) { return each.kind == FailingKind::access; });
    std::erase_if(accesses, [](const auto& each) { return each.kind != FailingKind::access; });
    Figures figures;
    figures.accesses = accesses.size();
    for (const auto& each : trunks) ++(each.kind == FailingKind::link ? figures.links : figures.devices);
    figures.trunk = timed([&] {
        const auto outcomes = analysis::find_outcomes(whole, f.get<analysis::LinkLoads>(), trunks, {});
        for (const auto& each : outcomes->outcomes) figures.moved += each.moved.size();
    });
    figures.access =
        timed([&] { static_cast<void>(analysis::find_outcomes(whole, f.get<analysis::LinkLoads>(), accesses, {})); });
    return figures;
}

void print_row(std::ostream& out, const char* name, int endpoints, const Figures& f) {
    out << "  " << std::left << std::setw(18) << name << std::right << std::setw(10) << endpoints << std::setw(8)
        << f.links << std::setw(9) << f.devices << std::setw(10) << f.moved << std::fixed << std::setprecision(1)
        << std::setw(12) << f.trunk.count() << std::setw(10) << f.accesses << std::setw(12) << f.access.count() << '\n';
}

}  // namespace failures_bench

void bench_failures(std::ostream& out, const std::vector<int>& sizes) {
    using namespace failures_bench;
    out << "Every single failure, milliseconds\n  " << std::left << std::setw(18) << "network" << std::right
        << std::setw(10) << "endpoints" << std::setw(8) << "links" << std::setw(9) << "devices" << std::setw(10)
        << "moved" << std::setw(12) << "all" << std::setw(10) << "cables" << std::setw(12) << "all" << '\n';
    for (const int size : sizes) {
        const auto design = test::campus(size, 1);
        print_row(out, "tree", size, measure(design));
        print_row(out, "second uplinks", size, measure(with_second_uplinks(design)));
    }
    out << "  goal: at most 300 for the links and switches of 1,000 endpoints\n\n";
}

}  // namespace streamwright::bench
