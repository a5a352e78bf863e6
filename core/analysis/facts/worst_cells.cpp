#include "core/analysis/facts/worst_cells.h"

#include <algorithm>

namespace streamwright::analysis {

namespace {
std::size_t cell_at(int index) { return static_cast<std::size_t>(index); }
}  // namespace

ArcCells::ArcCells(std::vector<WorstCell> cells, const std::vector<CrossingReader>& readers)
    : cells_(std::move(cells)), at_site_(readers.size()) {
    for (std::size_t v = 0; v < readers.size(); ++v) {
        at_site_[v].resize(cell_at(readers[v].site_count()));
        for (std::size_t c = 0; c < cells_.size(); ++c)
            if (const int site = cells_[c].sites[v]; site >= 0)
                at_site_[v][cell_at(site)].push_back(static_cast<int>(c));
    }
}

SiteSet ArcCells::occupied(const Askable& streams) const {
    const auto& sites = at_site_[cell_at(streams.vlan)];
    SiteSet result(static_cast<int>(sites.size()) * streams.groups());
    for (int site = 0; site < static_cast<int>(sites.size()); ++site)
        for (const int cell : sites[cell_at(site)])
            for (int g = 0; g < streams.groups(); ++g)
                if (streams.kinds[cell_at(g)][cell_at(cells_[cell_at(cell)].kind)])
                    result.add(site * streams.groups() + g);
    return result;
}

std::vector<int> ArcCells::meeting(const Askable& streams, const SiteSet& need) const {
    std::vector<int> result;
    need.each([&](int element) {
        const auto& can = streams.kinds[cell_at(element % streams.groups())];
        for (const int cell : at_site_[cell_at(streams.vlan)][cell_at(element / streams.groups())])
            if (can[cell_at(cells_[cell_at(cell)].kind)]) result.push_back(cell);
    });
    std::sort(result.begin(), result.end());
    result.erase(std::unique(result.begin(), result.end()), result.end());
    return result;
}

int ArcCells::group_asked(const Askable& streams, const SiteSet& need, int cell) const {
    const auto& each = cells_[cell_at(cell)];
    const int site = each.sites[cell_at(streams.vlan)];
    for (int g = 0; g < streams.groups(); ++g)
        if (need.has(site * streams.groups() + g) && streams.kinds[cell_at(g)][cell_at(each.kind)]) return g;
    return 0;
}

WorstCells::WorstCells(const WorstInput& input) : input_(input) {
    const auto vlans = input.streams.size();
    has_inputs_.assign(vlans, std::vector<bool>(input.network.bridges.size(), false));
    std::map<std::pair<int, std::vector<int>>, std::size_t> seen;
    for (std::size_t s = 0; s < input.compatibility.slots.size(); ++s) {
        const auto& slot = input.compatibility.slots[s];
        std::vector<int> bridges(vlans, -1);
        for (std::size_t v = 0; v < vlans; ++v)
            if (const auto place = input.place_of(slot.device, static_cast<VlanIndex>(v))) {
                bridges[v] = place->bridge;
                has_inputs_[v][cell_at(place->bridge)] = true;
            }
        const auto [found, fresh] = seen.try_emplace({slot.kind, bridges}, cells_.size());
        if (fresh) cells_.push_back({slot.kind, std::move(bridges), {}});
        cells_[found->second].slots.push_back(static_cast<int>(s));
    }
}

ArcCells WorstCells::of_arc(int arc, const std::vector<CrossingReader>& readers) const {
    const bool link = input_.network.is_link_arc(arc);
    const int leaf = arc / 2 - static_cast<int>(input_.network.links.size());
    const int device = link ? -1 : input_.network.leaves[cell_at(leaf)].device_port.device;
    const int to_device = arc | 1;
    std::vector<WorstCell> cells;
    for (const auto& base : cells_) {
        WorstCell others{base.kind, base.bridges, {}}, own{base.kind, base.bridges, {}};
        for (const int slot : base.slots)
            (input_.compatibility.slots[cell_at(slot)].device == device ? own : others).slots.push_back(slot);
        for (std::size_t v = 0; v < readers.size(); ++v)
            if (base.bridges[v] >= 0) others.sites[v] = own.sites[v] = readers[v].site_of(base.bridges[v]);
        for (std::size_t v = 0; v < readers.size() && !own.slots.empty(); ++v)
            if (const auto place = input_.place_of(device, static_cast<VlanIndex>(v));
                place && place->leaf_arc == to_device)
                own.sites[v] = readers[v].here();
        if (!others.slots.empty()) cells.push_back(std::move(others));
        if (!own.slots.empty()) cells.push_back(std::move(own));
    }
    return {std::move(cells), readers};
}

}  // namespace streamwright::analysis
