#include "core/analysis/facts/crossing.h"

#include <algorithm>
#include <utility>

namespace streamwright::analysis {

namespace crossing_detail {

std::size_t at(int index) { return static_cast<std::size_t>(index); }

constexpr std::size_t most_ways = 64;  // floods branch twofold; real networks need one or two

/// A way in the making: the needs met so far, and those who must not ask.
struct Draft {
    Crossing crossing;
    SiteSet silent;
};

/// Silence of `sites`; false where a need is then left with nobody.
bool silence(Draft& draft, const SiteSet& sites) {
    draft.silent.join(sites);
    std::vector<SiteSet> needs;
    needs.swap(draft.crossing.needs);
    for (auto& need : needs) draft.crossing.need(need.drop(sites));
    return std::ranges::none_of(draft.crossing.needs, [](const SiteSet& need) { return need.empty(); });
}

bool require(Draft& draft, SiteSet one_of) {
    one_of.drop(draft.silent);
    if (one_of.empty()) return false;
    draft.crossing.need(one_of);
    return true;
}

/// Takes away floods that are met whatever else holds, and asks beyond where silence is out of the question.
bool settle(Draft& draft) {
    auto& [needs, floods] = draft.crossing;
    for (bool changed = true; changed;) {
        changed = false;
        for (std::size_t i = 0; i < floods.size(); ++i) {
            const auto in = [&](const SiteSet& of) {
                return std::ranges::any_of(needs, [&](const SiteSet& need) { return need.within(of); });
            };
            const bool met = in(floods[i].beyond) || floods[i].heard.within(draft.silent);
            if (!met && !in(floods[i].heard)) continue;
            if (!met && !require(draft, floods[i].beyond)) return false;
            floods.erase(floods.begin() + static_cast<std::ptrdiff_t>(i));
            changed = true;
            break;
        }
    }
    return true;
}

/// The flood that somebody who is needed may quieten; none: silence costs nothing.
std::size_t open_flood(const Draft& draft) {
    const auto& [needs, floods] = draft.crossing;
    for (std::size_t i = 0; i < floods.size(); ++i)
        if (std::ranges::any_of(needs, [&](const SiteSet& need) { return need.meets(floods[i].heard); })) return i;
    return floods.size();
}

}  // namespace crossing_detail

void Crossing::need(const SiteSet& one_of) {
    if (std::ranges::any_of(needs, [&](const SiteSet& each) { return each.within(one_of); })) return;
    std::erase_if(needs, [&](const SiteSet& each) { return one_of.within(each); });
    needs.push_back(one_of);
}

void Crossing::flood(SiteSet heard, SiteSet beyond) {
    Flood row{std::move(heard), std::move(beyond)};
    if (row.heard.within(row.beyond) || std::ranges::find(floods, row) != floods.end()) return;
    floods.push_back(std::move(row));
}

void Crossing::join(const Crossing& other) {
    for (const auto& each : other.needs) need(each);
    for (const auto& each : other.floods) flood(each.heard, each.beyond);
}

void Crossing::keep(const SiteSet& sites) {
    Crossing kept;
    for (auto& each : needs) kept.need(each.keep(sites));
    for (auto& each : floods) kept.flood(each.heard.keep(sites), each.beyond.keep(sites));
    *this = std::move(kept);
}

CrossingWays ways_across(const Crossing& crossing) {
    using namespace crossing_detail;
    CrossingWays result;
    if (std::ranges::any_of(crossing.needs, [](const SiteSet& need) { return need.empty(); })) return result;
    auto nobody = crossing.needs.empty() ? SiteSet() : crossing.needs.front();
    nobody.drop(nobody);
    std::vector<Draft> open{{crossing, nobody}};
    if (crossing.needs.empty()) return {{{}}, true};  // silence meets every flood
    while (!open.empty()) {
        auto draft = std::move(open.back());
        open.pop_back();
        if (!settle(draft)) continue;
        const auto i = open_flood(draft);
        if (i == draft.crossing.floods.size()) {
            if (std::ranges::find(result.ways, draft.crossing.needs) == result.ways.end())
                result.ways.push_back(std::move(draft.crossing.needs));
            continue;
        }
        if (result.ways.size() + open.size() >= most_ways) {
            result.complete = false;
            continue;
        }
        const auto flood = draft.crossing.floods[i];
        draft.crossing.floods.erase(draft.crossing.floods.begin() + static_cast<std::ptrdiff_t>(i));
        auto quiet = draft;
        if (silence(quiet, flood.heard)) open.push_back(std::move(quiet));
        if (require(draft, flood.beyond)) open.push_back(std::move(draft));
    }
    return result;
}

CrossingReader::CrossingReader(const graph::NetworkGraph& network, const VlanPaths& paths, const Tree& tree,
                               const VlanSnooping& snooping, const TreeOrder& order, VlanIndex vlan,
                               const std::vector<bool>& bridge_has_inputs)
    : network_(network), paths_(paths), tree_(tree), snooping_(snooping), order_(order), vlan_(vlan) {
    using crossing_detail::at;
    site_of_.assign(network.bridges.size(), -1);
    for (std::size_t b = 0; b < network.bridges.size(); ++b)
        if (bridge_has_inputs[b]) {
            site_of_[b] = static_cast<int>(bridges_.size());
            bridges_.push_back(static_cast<int>(b));
        }
    looped_ = looped_parts(network, tree, order);
    heard_.assign(network.bridges.size(), SiteSet(site_count()));
    hear();
    look_beyond();
}

/// The way of each site's reports: toward router ports, and everywhere through bridges that do not snoop.
void CrossingReader::hear() {
    using crossing_detail::at;
    std::vector<std::pair<int, int>> open;  // bridge, the arc the report came by
    for (int site = 0; site < here(); ++site) {
        if (is_looped(bridges_[at(site)])) continue;
        open.assign(1, {bridges_[at(site)], -1});
        while (!open.empty()) {
            const auto [bridge, came_by] = open.back();
            open.pop_back();
            const auto& snooping = snooping_.bridges[at(bridge)];
            if (snooping.keeps_members) heard_[at(bridge)].add(site);
            const auto ways = snooping.snoops ? std::span<const int>(snooping.router_arcs) : snooping_.out(bridge);
            for (const int arc : ways)
                if (network_.is_link_arc(arc) && tree_.forwards(arc / 2) && (came_by < 0 || arc != (came_by ^ 1)))
                    open.emplace_back(network_.bridge_after(arc), arc);
        }
    }
}

void CrossingReader::look_beyond() {
    using crossing_detail::at;
    beyond_.assign(2 * network_.links.size(), SiteSet(site_count()));
    for (int arc = 0; arc < static_cast<int>(beyond_.size()); ++arc) {
        if (!tree_.forwards(arc / 2)) continue;
        const auto sides = sides_of(network_, paths_, order_, vlan_, arc);
        if (!sides) continue;
        for (int site = 0; site < here(); ++site) {
            const int position = order_.position[at(bridges_[at(site)])];
            if (sides->part(position) && !sides->behind(position)) beyond_[at(arc)].add(site);
        }
    }
}

int CrossingReader::here_site_of(int arc) const {
    return network_.is_link_arc(arc) || network_.bridge_after(arc) >= 0 ? -1 : site_of(network_.bridge_before(arc));
}

SiteSet CrossingReader::beyond(int arc) const {
    if (network_.is_link_arc(arc)) return beyond_[static_cast<std::size_t>(arc)];
    SiteSet sites(site_count());
    const int bridge = network_.bridge_after(arc);
    if (bridge < 0) {
        sites.add(here());
        return sites;
    }
    const auto order = [&](int b) { return order_.position[static_cast<std::size_t>(b)]; };
    for (int site = 0; site < here(); ++site)
        if (order_.part_low[static_cast<std::size_t>(order(bridges_[static_cast<std::size_t>(site)]))] ==
            order_.part_low[static_cast<std::size_t>(order(bridge))])
            sites.add(site);
    return sites;
}

/// The device at the end of the arc stands for itself, beside the others at its bridge; and each site in the groups
/// that the bridge takes for the stream's.
SiteSet CrossingReader::seen(const SiteSet& sites, const Look& look, bool by_mac) const {
    const auto& view = look.view;
    SiteSet result(site_count() * view.groups);
    const auto add = [&](int site) {
        for (int group = 0; group < view.groups; ++group)
            if (by_mac || group == view.group) result.add(site * view.groups + group);
    };
    sites.each(add);
    if (look.here_site >= 0 && sites.has(look.here_site)) add(here());
    return result;
}

/// Those of the sites heard at the bridge that it knows at the port of this arc.
SiteSet CrossingReader::members(int bridge, int arc, const Look& look) const {
    SiteSet sites(site_count());
    if (network_.is_link_arc(arc)) {
        sites = heard_[static_cast<std::size_t>(bridge)];
        sites.keep(beyond_[static_cast<std::size_t>(arc)]);
    } else if (look.device_asks && snooping_.bridges[static_cast<std::size_t>(bridge)].keeps_members) {
        sites.add(here());
    }
    return sites;
}

/// Whether the bridge hands the stream on over the arc at all, and what that takes (RFC 4541 2.1.2).
bool CrossingReader::add_hop(int bridge, int arc, const Look& look, Crossing& crossing) const {
    using catalogue::UnknownGroups;
    const auto& rule = snooping_.bridges[static_cast<std::size_t>(bridge)];
    const bool by_mac = rule.lookup == catalogue::GroupLookup::mac;
    if (rule.floods_all || (by_mac && look.view.local_mac)) return true;
    const bool to_router = std::ranges::binary_search(rule.router_arcs, arc);
    if (to_router && rule.unknown != UnknownGroups::drop) return true;
    auto heard = seen(heard_[static_cast<std::size_t>(bridge)], look, by_mac);
    auto of_arc = seen(members(bridge, arc, look), look, by_mac);
    if (rule.unknown == UnknownGroups::flood) {
        crossing.flood(std::move(heard), std::move(of_arc));
        return true;
    }
    const auto& asked = to_router ? heard : of_arc;
    if (asked.empty()) return false;
    crossing.need(asked);
    return true;
}

CrossingReader::Behind CrossingReader::behind(int arc, const GroupView& view, bool device_asks) const {
    Behind result;
    const int first = network_.bridge_before(arc);
    if (first < 0 || !std::ranges::binary_search(snooping_.out(first), arc)) return result;
    const Look look{view, here_site_of(arc), device_asks};
    Crossing start;
    if (!add_hop(first, arc, look, start)) return result;
    result.crossings.push_back(std::move(start));
    result.bridges.emplace_back(first, 0);
    std::vector<int> came{arc};  // per bridge listed: the arc that leads on from it
    for (std::size_t next = 0; next < result.bridges.size(); ++next) {
        const auto [bridge, crossing] = result.bridges[next];
        for (const int out : snooping_.out(bridge)) {
            if (!network_.is_link_arc(out) || !tree_.forwards(out / 2) || out / 2 == came[next] / 2) continue;
            auto grown = result.crossings[static_cast<std::size_t>(crossing)];
            if (!add_hop(network_.bridge_after(out), out ^ 1, look, grown)) continue;
            int index = crossing;
            if (grown != result.crossings[static_cast<std::size_t>(crossing)]) {
                index = static_cast<int>(result.crossings.size());
                result.crossings.push_back(std::move(grown));
            }
            result.bridges.emplace_back(network_.bridge_after(out), index);
            came.push_back(out ^ 1);
        }
    }
    return result;
}

}  // namespace streamwright::analysis
