// Reads capacity, load, worst case and blocked ends of each link; the figures are those that `loads` prints.
#include "core/deliver/documents/network_links.h"

#include "core/analysis/agreed_contention.h"
#include "core/analysis/facts_set.h"
#include "core/base/text.h"

#include <algorithm>
#include <map>

namespace streamwright::deliver {

namespace network_links_detail {

using analysis::LinkCapacity;
using analysis::VlanIndex;
using graph::NetworkGraph;
using graph::Wiring;

std::size_t at(int index) { return static_cast<std::size_t>(index); }

std::string percent_words(std::int64_t tenths, const base::NumberStyle& numbers) {
    base::Phrasebook book;
    book.numbers = numbers;
    return base::print(base::Value(base::Percent{tenths}), book);
}

struct Reader {
    const analysis::Facts& facts;
    const base::NumberStyle& numbers;
    std::map<int, model::AgreedContention> agreed;  // per link

    Reader(const analysis::Facts& of, const base::NumberStyle& style) : facts(of), numbers(style) {
        for (auto& each : analysis::find_agreements(of.get<Wiring>(), of.get<graph::Runs>(), of.get<NetworkGraph>()))
            agreed.emplace(each.link, std::move(each.agreed));
    }

    LoadFigure figure(int arc, const base::Rate* load, std::size_t streams) const {
        if (!load) return {"not known", {}, analysis::Fill::fits, 0};
        LoadFigure figure{print(load->ceil(), numbers), {}, analysis::Fill::fits, 0};
        const auto& capacity = facts.get<LinkCapacity>().arcs[at(arc)];
        if (!capacity || capacity->count() == 0) return figure;
        const auto& wiring = facts.get<Wiring>();
        const auto ends = graph::arc_ends(wiring, facts.get<graph::Runs>(), facts.get<NetworkGraph>(), arc);
        figure.tenths = base::percent_tenths(*load, *capacity);
        figure.percent = percent_words(figure.tenths, numbers);
        figure.fill = analysis::fill_of(*load, capacity, analysis::headroom_percent(wiring, ends, streams));
        return figure;
    }

    LoadFigure preset(int arc) const {
        const auto& loads = facts.get<analysis::LinkLoads>();
        const auto& arcs = loads.presets.empty() ? loads.idle.arcs : loads.presets.front().arcs;
        if (at(arc) >= arcs.size()) return figure(arc, nullptr, 0);
        return figure(arc, &arcs[at(arc)].wire, arcs[at(arc)].streams.size());
    }

    LoadFigure worst(int arc) const {
        const auto& [arcs, within] = facts.get<analysis::WorstCase>();
        if (!facts.deferred_known || at(arc) >= arcs.size()) return figure(arc, nullptr, 0);
        const auto agreement = within.find(arc);
        const auto& worst = agreement == within.end() ? arcs[at(arc)] : agreement->second;
        return figure(arc, &worst.wire, worst.unasked.size() + worst.routed.size());
    }

    std::string ports(const std::vector<graph::PortAt>& ports) const {
        const auto& wiring = facts.get<Wiring>();
        std::vector<std::string> names;
        for (const auto port : ports) {
            const auto& type = wiring.port_type(port);
            names.push_back(type.label.empty() ? type.key.text : type.label);
        }
        return (names.size() == 1 ? "port " : "ports ") + joined(names, ", ");
    }

    Direction direction(int link, bool to_b) const {
        const auto& network = facts.get<NetworkGraph>();
        const auto& row = network.links[at(link)];
        const int arc = network.link_arc(link, to_b);
        return {bridge_tag(facts.get<Wiring>(), network.bridges[at(to_b ? row.b : row.a)]),
                ports(to_b ? row.b_ports : row.a_ports), preset(arc), worst(arc), agreed.count(link) > 0};
    }
};

std::string tags_of(const analysis::Facts& facts, const graph::Link& link) {
    const auto& wiring = facts.get<Wiring>();
    std::vector<std::string> tags;
    for (const int run : link.runs)
        tags.push_back(wiring.cables[at(facts.get<graph::Runs>().list[at(run)].cables.front())].row->tag);
    return joined(tags, " + ");
}

/// "2 x 10 Gb/s, 10GBASE-LR"; members that differ are added up.
std::string capacity_words(const Reader& reader, const graph::Link& link, int arc) {
    const auto& capacity = reader.facts.get<LinkCapacity>();
    if (!capacity.arcs[at(arc)]) return "no link";
    const auto& first = capacity.runs[at(link.runs.front())];
    const bool alike = std::ranges::all_of(
        link.runs, [&](int run) { return capacity.runs[at(run)].rate == first.rate && first.rate.has_value(); });
    auto words = print(alike ? *first.rate : *capacity.arcs[at(arc)], reader.numbers);
    if (alike && link.runs.size() > 1) words = std::to_string(link.runs.size()) + " x " + words;
    return first.phy.empty() ? words : words + ", " + first.phy;
}

/// The VLANs of the link that one of its ends blocks.
std::vector<VlanIndex> blocked_vlans(const analysis::Facts& facts, int link, bool at_a) {
    std::vector<VlanIndex> vlans;
    for (const auto& tree : facts.get<analysis::SpanningTrees>().trees)
        if ((at_a ? tree.a_role : tree.b_role)[at(link)] == analysis::TreeRole::alternate) vlans.push_back(tree.vlan);
    return vlans;
}

void read_blocking(NetworkLink& words, const analysis::Facts& facts, int index) {
    const auto& network = facts.get<NetworkGraph>();
    const auto& link = network.links[at(index)];
    const auto& carried = facts.get<analysis::VlanPaths>().links[at(index)].carried;
    for (const bool at_a : {true, false}) {
        const auto vlans = blocked_vlans(facts, index, at_a);
        if (vlans.empty()) continue;
        (at_a ? words.a_blocks : words.b_blocks) = true;
        const auto where = bridge_tag(facts.get<Wiring>(), network.bridges[at(at_a ? link.a : link.b)]);
        const auto numbers = vlans.size() < carried.size() ? vlan_numbers(facts, vlans) : std::string();
        words.state += (words.state.empty() ? "" : "; ") +
                       (numbers.empty() ? "blocked" : "VLAN " + numbers + " blocked") + " at " + where;
    }
    words.carries = std::ranges::any_of(facts.get<analysis::SpanningTrees>().trees,
                                        [&](const analysis::Tree& tree) { return tree.forwards(index); });
    if (words.is_up && carried.empty()) words.state = "carries no VLAN";
}

NetworkLink link_words(const Reader& reader, int index) {
    const auto& network = reader.facts.get<NetworkGraph>();
    const auto& link = network.links[at(index)];
    const int arc = network.link_arc(index, true);
    const auto ends = graph::arc_ends(reader.facts.get<Wiring>(), reader.facts.get<graph::Runs>(), network, arc);
    NetworkLink words;
    words.subject = "cable:" + ends.link.text();
    words.tag = tags_of(reader.facts, link);
    words.is_up = reader.facts.get<LinkCapacity>().arcs[at(arc)].has_value();
    words.capacity = capacity_words(reader, link, arc);
    words.group = link.aggregated || link.runs.size() > 1;
    if (const auto agreed = reader.agreed.find(index); agreed != reader.agreed.end())
        words.agreement = "at most " + std::to_string(agreed->second.sources) +
                          (agreed->second.sources == 1 ? " source, " : " sources, ") +
                          analysis::by_whom(agreed->second);
    read_blocking(words, reader.facts, index);
    words.to_b = reader.direction(index, true);
    words.to_a = reader.direction(index, false);
    return words;
}

}  // namespace network_links_detail

std::vector<NetworkLink> network_links(const analysis::Facts& facts, const base::NumberStyle& numbers,
                                       const std::vector<int>& switch_of_bridge) {
    using namespace network_links_detail;
    const Reader reader{facts, numbers};
    const auto& links = facts.get<NetworkGraph>().links;
    std::vector<NetworkLink> all;
    for (std::size_t i = 0; i < links.size(); ++i) {
        const int a = switch_of_bridge[at(links[i].a)], b = switch_of_bridge[at(links[i].b)];
        if (a < 0 || b < 0) continue;
        auto words = link_words(reader, static_cast<int>(i));
        words.a = a;
        words.b = b;
        all.push_back(std::move(words));
    }
    return all;
}

FullestPort fullest_port(const analysis::Facts& facts, const base::NumberStyle& numbers, const std::vector<int>& arcs) {
    using namespace network_links_detail;
    const Reader reader{facts, numbers};
    const bool known = facts.deferred_known;
    std::int64_t most = -1;
    for (const int arc : arcs) {
        const auto figure = known ? reader.worst(arc) : reader.preset(arc);
        if (!figure.percent.empty()) most = std::max(most, figure.tenths);
    }
    if (most < 0) return {};
    return {"fullest port " + percent_words(most, numbers), most > 1000};
}

std::string bridge_tag(const graph::Wiring& wiring, const graph::Bridge& bridge) {
    std::vector<std::string> tags;
    for (const int device : bridge.devices) tags.push_back(wiring.devices[network_links_detail::at(device)].row->tag);
    return joined(tags, " + ");
}

std::string vlan_numbers(const analysis::Facts& facts, const std::vector<analysis::VlanIndex>& vlans) {
    std::vector<std::string> numbers;
    for (const int vlan : vlans) {
        const auto& id = facts.get<analysis::VlanPaths>().vlans[network_links_detail::at(vlan)];
        const auto* row = id ? facts.get<graph::Wiring>().design.vlans.find(*id) : nullptr;
        if (row) numbers.push_back(std::to_string(row->vid));
    }
    return joined(numbers, ", ");
}

std::string joined(const std::vector<std::string>& items, const std::string& between) {
    std::string text;
    for (const auto& item : items) text += (text.empty() ? "" : between) + item;
    return text;
}

}  // namespace streamwright::deliver
