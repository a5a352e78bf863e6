#include "core/analysis/every_failure.h"

#include <algorithm>

namespace streamwright::analysis {

namespace every_failure_detail {

using graph::Lost;
using graph::Wiring;

void add_once(std::vector<int>& sorted, int index) {
    const auto place = std::lower_bound(sorted.begin(), sorted.end(), index);
    if (place == sorted.end() || *place != index) sorted.insert(place, index);
}

template <class Rows>
std::vector<int> called(const Rows& rows, const std::string& name) {
    std::vector<int> found;
    for (std::size_t i = 0; i < rows.size(); ++i)
        if (rows[i].row->tag == name || rows[i].row->id.text() == name) found.push_back(static_cast<int>(i));
    return found;
}

std::vector<int> in_duct(const Wiring& wiring, const std::string& name) {
    std::vector<int> found;
    for (std::size_t i = 0; i < wiring.cables.size(); ++i)
        if (!name.empty() && wiring.cables[i].row->duct == name) found.push_back(static_cast<int>(i));
    return found;
}

base::Result<void> add(const Wiring& wiring, const std::string& name, Lost& lost) {
    const auto devices = called(wiring.devices, name), cables = called(wiring.cables, name);
    const auto duct = in_duct(wiring, name);
    const auto meanings = devices.size() + cables.size() + (duct.empty() ? 0 : 1);
    if (name.empty() || meanings == 0)
        return base::Error{
            "Nothing here is called '%1': name a cable or a device by its tag or id, or a duct by its name.", {name}};
    if (meanings > 1) return base::Error{"'%1' means more than one thing here; give the id of one of them.", {name}};
    for (const int device : devices) add_once(lost.devices, device);
    for (const int cable : cables) add_once(lost.cables, cable);
    for (const int cable : duct) add_once(lost.cables, cable);
    return {};
}

}  // namespace every_failure_detail

std::optional<Failures> find_every_failure(const Facts& facts, const std::stop_token& stop, const Progress& progress) {
    const WholeNetwork whole{facts.get<graph::Wiring>(), facts.get<graph::Runs>(), facts.get<graph::NetworkGraph>(),
                             facts.get<LinkCapacity>(),  facts.get<VlanPaths>(),   facts.get<SpanningTrees>(),
                             facts.get<Forwarding>()};
    return find_outcomes(whole, facts.get<LinkLoads>(),
                         list_failing(whole.wiring, whole.runs, whole.network, facts.get<PowerBudget>()), stop,
                         progress);
}

base::Result<graph::Lost> named_failures(const Facts& facts, std::span<const std::string> names) {
    const auto& wiring = facts.get<graph::Wiring>();
    graph::Lost lost;
    for (const auto& name : names)
        if (auto added = every_failure_detail::add(wiring, name, lost); !added) return added.error();
    return Feeds(wiring, facts.get<graph::Runs>(), facts.get<PowerBudget>()).with_all_it_feeds(std::move(lost));
}

model::Design design_after(const Facts& facts, const graph::Lost& lost) {
    const auto& wiring = facts.get<graph::Wiring>();
    auto design = wiring.design;
    for (const int device : lost.devices) {
        const auto id = wiring.devices[static_cast<std::size_t>(device)].row->id;
        design.devices.erase(id);
        for (const auto& cable : wiring.design.cables)
            if ((cable.a && cable.a->port.device == id) || (cable.b && cable.b->port.device == id))
                design.cables.erase(cable.id);
    }
    for (const int cable : lost.cables) design.cables.erase(wiring.cables[static_cast<std::size_t>(cable)].row->id);
    return design;
}

}  // namespace streamwright::analysis
