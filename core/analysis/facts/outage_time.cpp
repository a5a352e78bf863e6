#include "core/analysis/facts/outage_time.h"

#include "core/standards/igmp.h"
#include "core/standards/spanning_tree_costs.h"

#include <algorithm>

namespace streamwright::analysis {

namespace outage_detail {

using base::Duration;

std::size_t at(int index) { return static_cast<std::size_t>(index); }
Duration seconds(int count) { return Duration::from_count(std::int64_t{count} * 1'000'000'000); }

/// What failures are judged against: the tree before and after.
struct Change {
    const WholeNetwork& whole;
    const LostState& state;
    const Tree& before;
    const Tree& after;

    const catalogue::SwitchFacts& facts(int bridge) const {
        const auto& row = whole.network.bridges[at(bridge)];
        return *whole.wiring.devices[at(row.devices.front())].type->bridging;
    }
    TreeRole role(const Tree& tree, int link, int bridge) const {
        return (whole.network.links[at(link)].a == bridge ? tree.a_role : tree.b_role)[at(link)];
    }
};

/// The root gives its timers to all.
standards::TreeTimers timers_of(const Change& c, int root) {
    standards::TreeTimers timers;
    if (root < 0) return timers;
    const auto& row = c.whole.network.bridges[at(root)];
    const auto& set = c.whole.wiring.devices[at(row.devices.front())].row->bridging;
    return {set.hello_s.value_or(timers.hello_s), set.max_age_s.value_or(timers.max_age_s),
            set.forward_delay_s.value_or(timers.forward_delay_s)};
}

/// The bridge that held the link blocked.
int blocking_bridge(const Change& c, int link) {
    const auto& row = c.whole.network.links[at(link)];
    return c.before.a_role[at(link)] == TreeRole::alternate ? row.a : row.b;
}

/// A bridge whose own way to the same root broke at its port takes the next one at once. Any other one first lets what
/// it has heard on the blocked port grow old: its neighbour's worse messages count for nothing until then.
bool notices_at_once(const Change& c, int link) {
    const int bridge = blocking_bridge(c, link);
    if (c.before.root_of[at(bridge)] != c.after.root_of[at(bridge)]) return false;
    if (c.role(c.after, link, bridge) != TreeRole::root) return false;
    for (std::size_t i = 0; i < c.whole.network.links.size(); ++i) {
        const auto& row = c.whole.network.links[i];
        const int index = static_cast<int>(i);
        if (row.a != bridge && row.b != bridge) continue;
        if (c.role(c.before, index, bridge) == TreeRole::root) return c.role(c.after, index, bridge) == TreeRole::down;
    }
    return false;
}

/// Bridges from the neighbour on the link to below the root: each may add a second to the age of what it hands on
/// (IEEE 802.1D-1998 8.6.1, from memory).
int bridges_to_root(const Change& c, int link) {
    const auto& row = c.whole.network.links[at(link)];
    int bridge = blocking_bridge(c, link) == row.a ? row.b : row.a, count = 0;
    const auto up = [&](int from) {
        for (std::size_t i = 0; i < c.whole.network.links.size(); ++i) {
            const auto& each = c.whole.network.links[i];
            if (each.a == from && c.before.a_role[i] == TreeRole::root) return each.b;
            if (each.b == from && c.before.b_role[i] == TreeRole::root) return each.a;
        }
        return -1;
    };
    const int most = static_cast<int>(c.whole.network.bridges.size());
    for (bridge = up(bridge); bridge >= 0 && count < most; bridge = up(bridge)) ++count;
    return count;
}

/// Whether all bridges of that part run a rapid tree; none: one of them does not say.
std::optional<bool> rapid(const Change& c, int root) {
    std::optional<bool> all = true;
    for (int b = 0; b < static_cast<int>(c.after.root_of.size()); ++b) {
        const auto& bridge = c.whole.network.bridges[at(b)];
        if (c.after.root_of[at(b)] != root || bpdus_of(c.whole.wiring, bridge) != catalogue::Bpdus::run) continue;
        const auto stated = c.facts(b).rapid_tree;
        if (stated == false) return false;
        if (!stated) all.reset();
    }
    return all;
}

/// Classic: listening and learning take the forward delay each, after what was heard there has grown old where a bridge
/// does not notice at once; a message more may pass before the next bridge hears of it. Rapid: at once, or when three
/// messages have failed to come.
std::optional<TimeRange> takes(const Change& c, int link) {
    const int root = c.after.root_of[at(blocking_bridge(c, link))];
    const auto all_rapid = rapid(c, root);
    if (!all_rapid) return std::nullopt;
    const auto timers = timers_of(c, c.before.root_of[at(blocking_bridge(c, link))]);
    if (*all_rapid) return TimeRange{Duration{}, seconds(3 * timers.hello_s)};
    const int delay = 2 * timers.forward_delay_s;
    if (notices_at_once(c, link)) return TimeRange{seconds(delay), seconds(delay + timers.hello_s)};
    const int aged = std::max(0, timers.max_age_s - timers.hello_s - bridges_to_root(c, link));
    return TimeRange{seconds(delay + aged), seconds(delay + timers.max_age_s + timers.hello_s)};
}

/// Until the bridges of a new way have heard the report. A querier that is lost is first missed by another.
Duration report_wait(const WholeNetwork& whole, const LostState& state, const MovedPicture& picture) {
    const auto& settings = whole.wiring.design.settings();
    standards::IgmpTimers timers;
    timers.robustness = settings.robustness;
    timers.query_interval = seconds(settings.query_interval_s);
    timers.query_response = seconds(settings.query_response_s);
    const int before = whole.forwarding.vlans[at(picture.vlan)].querier_of[at(picture.bridge)];
    const int after = state.forwarding().vlans[at(picture.vlan)].querier_of[at(picture.bridge)];
    if (after < 0 || before != after) return standards::other_querier_time(timers) + timers.query_response;
    const auto vlan = whole.paths.vlans[at(picture.vlan)];
    for (const int device : whole.network.bridges[at(after)].devices) {
        const auto& wired = whole.wiring.devices[at(device)];
        const auto& queriers = wired.row->bridging.queriers;
        const bool asks = std::any_of(queriers.begin(), queriers.end(), [&](const auto& q) { return q.vlan == vlan; });
        if (asks && wired.type->bridging->query_on_topology_change == true) return timers.query_response;
    }
    return timers.query_interval + timers.query_response;
}

}  // namespace outage_detail

TreeChange tree_change(const WholeNetwork& whole, const LostState& state, VlanIndex vlan) {
    using outage_detail::at;
    const outage_detail::Change c{whole, state, whole.trees.trees[at(vlan)], state.trees().trees[at(vlan)]};
    TreeChange change{{}, TimeRange{}};
    if (state.edge_only()) return change;
    for (int link = 0; link < static_cast<int>(whole.network.links.size()); ++link) {
        if (c.before.forwards(link) || !c.after.forwards(link)) continue;
        change.opened.push_back(link);
        const auto time = outage_detail::takes(c, link);
        if (change.takes && !time) change.takes.reset();
        if (!change.takes) continue;
        const bool first = change.opened.size() == 1;
        change.takes->from = first ? time->from : std::min(change.takes->from, time->from);
        change.takes->to = std::max(change.takes->to, time->to);
    }
    return change;
}

std::optional<TimeRange> time_until_back(const WholeNetwork& whole, const LostState& state,
                                         const std::vector<MovedPicture>& moved) {
    std::vector<std::optional<TreeChange>> trees(whole.paths.vlans.size());
    std::optional<TimeRange> all;
    for (const auto& picture : moved) {
        auto& tree = trees[outage_detail::at(picture.vlan)];
        if (!tree) tree = tree_change(whole, state, picture.vlan);
        if (!tree->takes) return std::nullopt;
        auto time = *tree->takes;
        if (picture.waits_for_report) time.to += outage_detail::report_wait(whole, state, picture);
        if (!all) all = time;
        all->from = std::min(all->from, time.from);
        all->to = std::max(all->to, time.to);
    }
    return all;
}

}  // namespace streamwright::analysis
