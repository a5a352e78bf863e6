#include "core/analysis/facts/failing.h"

#include <algorithm>
#include <map>
#include <tuple>

namespace streamwright::analysis {

namespace failing_detail {

using catalogue::Signal;
using catalogue::Way;

std::size_t at(int index) { return static_cast<std::size_t>(index); }
bool among(const std::vector<int>& sorted, int index) {
    return std::binary_search(sorted.begin(), sorted.end(), index);
}

bool insert(std::vector<int>& sorted, int index) {
    const auto place = std::lower_bound(sorted.begin(), sorted.end(), index);
    if (place != sorted.end() && *place == index) return false;
    sorted.insert(place, index);
    return true;
}

bool lives_by_poe_alone(const graph::WiredDevice& device) {
    if (!device.type || (device.type->power && device.type->power->external_supply)) return false;
    return std::none_of(device.type->ports.begin(), device.type->ports.end(),
                        [](const auto& port) { return port.signal == Signal::power && port.way == Way::in; });
}

Failing of_run(FailingKind kind, const graph::Runs& runs, int run) {
    const int cable = runs.list[at(run)].cables.front();
    return {kind, cable, -1, {}, {{}, {cable}}};
}

void list_runs(const graph::Runs& runs, const graph::NetworkGraph& network, std::vector<Failing>& all) {
    for (const auto& link : network.links)
        for (const int run : link.runs) all.push_back(of_run(FailingKind::link, runs, run));
    for (const auto& leaf : network.leaves) all.push_back(of_run(FailingKind::access, runs, leaf.run));
    for (const auto& direct : network.directs) all.push_back(of_run(FailingKind::access, runs, direct.run));
}

void list_devices(const graph::NetworkGraph& network, const Feeds& feeds, std::vector<Failing>& all) {
    for (int i = 0; i < static_cast<int>(network.bridge_of_device.size()); ++i) {
        const bool carries = network.bridge_of_device[at(i)] >= 0 || feeds.holds_cards(i);
        if (carries || feeds.feeds_by_mains(i))
            all.push_back({carries ? FailingKind::device : FailingKind::power, -1, i, {}, {{i}, {}}});
    }
}

void list_ducts(const graph::Wiring& wiring, std::vector<Failing>& all) {
    std::map<std::string, std::vector<int>> ducts;
    for (int i = 0; i < static_cast<int>(wiring.cables.size()); ++i)
        if (const auto& duct = wiring.cables[at(i)].row->duct; !duct.empty()) ducts[duct].push_back(i);
    for (auto& [name, cables] : ducts) all.push_back({FailingKind::duct, -1, -1, name, {{}, std::move(cables)}});
}

}  // namespace failing_detail

Feeds::Feeds(const graph::Wiring& wiring, const graph::Runs& runs, const PowerBudget& power)
    : feeds_(wiring.devices.size()),
      fed_by_mains_(wiring.devices.size()),
      fed_(wiring.devices.size()),
      fed_over_(wiring.cables.size()),
      cards_(wiring.devices.size()) {
    using namespace failing_detail;
    const auto mains = [&](graph::PortAt port, Way way) {
        const auto& type = wiring.port_type(port);
        return type.signal == Signal::power && type.way == way;
    };
    for (int i = 0; i < static_cast<int>(wiring.cables.size()); ++i) {
        const auto& cable = wiring.cables[at(i)];
        if (!cable.a || !cable.b) continue;
        for (const auto& [from, to] : {std::pair(*cable.a, *cable.b), std::pair(*cable.b, *cable.a)}) {
            if (!mains(from, Way::out) || !mains(to, Way::in)) continue;
            feeds_[at(to.device)].push_back({from.device, {i}});
            fed_by_mains_[at(from.device)].push_back(to.device);
            fed_[at(from.device)].push_back(to.device);
            fed_over_[at(i)].push_back(to.device);
        }
    }
    for (const auto& feed : power.feeds) {
        if (!lives_by_poe_alone(wiring.devices[at(feed.device.device)])) continue;
        feeds_[at(feed.device.device)].push_back({feed.supply.device, runs.list[at(feed.run)].cables});
        fed_[at(feed.supply.device)].push_back(feed.device.device);
        for (const int cable : runs.list[at(feed.run)].cables) fed_over_[at(cable)].push_back(feed.device.device);
    }
    for (int i = 0; i < static_cast<int>(wiring.devices.size()); ++i)
        if (const auto& place = wiring.devices[at(i)].row->chassis)
            if (const auto chassis = wiring.device_index(place->chassis)) cards_[at(*chassis)].push_back(i);
}

bool Feeds::starved(int device, const graph::Lost& lost) const {
    using failing_detail::among;
    const auto& feeds = feeds_[at(device)];
    return !feeds.empty() && std::all_of(feeds.begin(), feeds.end(), [&](const Feed& feed) {
        return among(lost.devices, feed.feeder) ||
               std::any_of(feed.cables.begin(), feed.cables.end(), [&](int c) { return among(lost.cables, c); });
    });
}

graph::Lost Feeds::with_all_it_feeds(graph::Lost lost) const {
    std::vector<int> open = lost.devices;
    const auto lose = [&](int device) {
        if (failing_detail::insert(lost.devices, device)) open.push_back(device);
    };
    for (const int cable : lost.cables)
        for (const int fed : fed_over_[at(cable)])
            if (starved(fed, lost)) lose(fed);
    while (!open.empty()) {
        const int device = open.back();
        open.pop_back();
        for (const int card : cards_[at(device)]) lose(card);
        for (const int fed : fed_[at(device)])
            if (starved(fed, lost)) lose(fed);
    }
    return lost;
}

std::vector<Failing> list_failing(const graph::Wiring& wiring, const graph::Runs& runs,
                                  const graph::NetworkGraph& network, const PowerBudget& power) {
    const Feeds feeds(wiring, runs, power);
    std::vector<Failing> all;
    failing_detail::list_runs(runs, network, all);
    failing_detail::list_devices(network, feeds, all);
    failing_detail::list_ducts(wiring, all);
    std::stable_sort(all.begin(), all.end(), [](const Failing& a, const Failing& b) {
        return std::tie(a.kind, a.cable, a.device, a.duct) < std::tie(b.kind, b.cable, b.device, b.duct);
    });
    for (auto& each : all) each.lost = feeds.with_all_it_feeds(std::move(each.lost));
    return all;
}

}  // namespace streamwright::analysis
