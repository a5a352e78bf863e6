#include "core/graph/network_cut.h"

#include <algorithm>

namespace streamwright::graph {

namespace network_cut_detail {

void sort_once(std::vector<int>& list) {
    std::sort(list.begin(), list.end());
    list.erase(std::unique(list.begin(), list.end()), list.end());
}

}  // namespace network_cut_detail

NetworkCut::NetworkCut(const Wiring& wiring, const Runs& runs, const NetworkGraph& whole)
    : wiring_(wiring),
      runs_(runs),
      whole_(whole),
      network_(whole),
      place_of_run_(runs.list.size()),
      leaf_gone_(whole.leaves.size(), false) {
    for (std::size_t i = 0; i < whole.links.size(); ++i)
        for (const int run : whole.links[i].runs) place_of_run_[at(run)] = {Kind::link, static_cast<int>(i)};
    for (std::size_t i = 0; i < whole.leaves.size(); ++i)
        place_of_run_[at(whole.leaves[i].run)] = {Kind::leaf, static_cast<int>(i)};
    for (std::size_t i = 0; i < whole.directs.size(); ++i)
        place_of_run_[at(whole.directs[i].run)] = {Kind::direct, static_cast<int>(i)};
}

bool NetworkCut::arc_gone(int arc) const {
    if (network_.is_link_arc(arc)) return network_.links[at(arc / 2)].gone();
    return leaf_gone_[at(arc / 2) - network_.links.size()];
}

void NetworkCut::restore() {
    for (const int link : links_) network_.links[at(link)] = whole_.links[at(link)];
    for (const int leaf : leaves_) leaf_gone_[at(leaf)] = false;
    for (const int device : devices_) {
        network_.leaves_of_device[at(device)] = whole_.leaves_of_device[at(device)];
        network_.bridge_of_device[at(device)] = whole_.bridge_of_device[at(device)];
    }
    for (const int bridge : bridges_) network_.bridges[at(bridge)] = whole_.bridges[at(bridge)];
    if (lost_direct_) network_.directs = whole_.directs;
    links_.clear();
    leaves_.clear();
    devices_.clear();
    bridges_.clear();
    lost_direct_ = false;
}

void NetworkCut::take_run(int run) {
    const auto [kind, index] = place_of_run_[at(run)];
    if (kind == Kind::link) {
        auto& link = network_.links[at(index)];
        const auto member = std::find(link.runs.begin(), link.runs.end(), run) - link.runs.begin();
        if (member == static_cast<std::ptrdiff_t>(link.runs.size())) return;  // taken already
        link.runs.erase(link.runs.begin() + member);
        link.a_ports.erase(link.a_ports.begin() + member);
        link.b_ports.erase(link.b_ports.begin() + member);
        links_.push_back(index);
    } else if (kind == Kind::leaf) {
        const int device = network_.leaves[at(index)].device_port.device;
        leaf_gone_[at(index)] = true;
        std::erase(network_.leaves_of_device[at(device)], index);
        leaves_.push_back(index);
        devices_.push_back(device);
    } else if (kind == Kind::direct) {
        std::erase_if(network_.directs, [&](const Direct& each) { return each.run == run; });
        lost_direct_ = true;
        for (const auto& end : {whole_.directs[at(index)].a, whole_.directs[at(index)].b})
            devices_.push_back(end.device);
    }
}

void NetworkCut::take_device(int device) {
    const auto* type = wiring_.devices[at(device)].type;
    const int ports = type ? static_cast<int>(type->ports.size()) : 0;
    for (int port = 0; port < ports; ++port)  // passive ones too: the runs through it break
        for (const int cable : wiring_.cables_at({device, port})) take_run(runs_.run_of_cable[at(cable)]);
    devices_.push_back(device);
    auto& bridge = network_.bridge_of_device[at(device)];
    if (bridge < 0) return;
    bridges_.push_back(bridge);
    auto& row = network_.bridges[at(bridge)];
    // The last member stays in the list: facts ask the first device of a bridge what it is.
    if (row.devices.size() > 1)
        std::erase(row.devices, device);
    else
        row.gone = true;
    bridge = -1;
}

void NetworkCut::apply(const Lost& lost) {
    restore();
    for (const int cable : lost.cables) take_run(runs_.run_of_cable[at(cable)]);
    for (const int device : lost.devices) take_device(device);
    using network_cut_detail::sort_once;
    sort_once(links_);
    sort_once(leaves_);
    sort_once(devices_);
    sort_once(bridges_);
}

}  // namespace streamwright::graph
