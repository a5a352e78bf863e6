#include "core/analysis/facts/link_capacity.h"

#include <algorithm>
#include <iterator>

namespace streamwright::analysis {

namespace capacity_detail {

using base::BitRate;
using catalogue::CableGrade;
using catalogue::Connector;
using catalogue::Medium;
using catalogue::ModuleFacts;
using Rates = std::vector<BitRate>;
using namespace base::literals;

/// The highest rate that IEEE 802.3 puts on balanced cabling of the grade at any length; reach is judged elsewhere.
BitRate copper_ceiling(CableGrade grade) {
    switch (grade) {
        case CableGrade::cat5e:
            return 5_Gbps;  // 802.3bz
        case CableGrade::cat6:
        case CableGrade::cat6a:
            return 10_Gbps;  // 802.3an
        case CableGrade::cat8:
            return 40_Gbps;  // 802.3bq
        default:
            return 400_Gbps;
    }
}

std::string copper_phy(BitRate rate) {
    if (rate == 10_Mbps) return "10BASE-T";
    if (rate == 100_Mbps) return "100BASE-TX";
    if (rate == 2500_Mbps) return "2.5GBASE-T";
    if (rate < 1_Gbps || rate.count() % 1000000000 != 0) return {};
    const auto gigabits = rate.count() / 1000000000;
    return gigabits == 1 ? "1000BASE-T" : std::to_string(gigabits) + "GBASE-T";
}

bool direct_attach(const graph::WiredCable& cable) {
    return cable.type && !cable.type->rates.empty() &&
           std::any_of(cable.type->plugs.begin(), cable.type->plugs.end(), catalogue::is_cage);
}

/// One end of a run as the line sees it.
struct End {
    Rates rates;
    std::optional<Medium> medium;         // none: not known (a fixed fibre port)
    const ModuleFacts* module = nullptr;  // in a cage
    bool copper = false;                  // RJ45, of the port or its module
    int pairs = 4;
    NoLink reason = NoLink::none;
};

Rates common(const Rates& a, const Rates& b) {
    Rates both;
    for (const auto rate : a)
        if (std::find(b.begin(), b.end(), rate) != b.end()) both.push_back(rate);
    return both;
}

void read_cage(const graph::Wiring& wiring, graph::PortAt at, bool direct, End& end) {
    const auto* type = wiring.module_at(at);
    end.module = type && type->module ? &*type->module : nullptr;
    const auto* set = wiring.port_override(at);
    if (direct) {
        if (set && set->module) end.reason = NoLink::module_misfit;
        return;
    }
    if (!end.module) {
        end.reason = NoLink::module_missing;
        return;
    }
    end.medium = end.module->medium;
    end.copper = end.module->medium == Medium::balanced_copper;
    end.rates = common(end.rates, {end.module->rate});
    if (!catalogue::module_fits(end.module->form, wiring.port_type(at).connector) || end.rates.empty())
        end.reason = NoLink::module_misfit;
}

End read_end(const graph::Wiring& wiring, graph::PortAt at, bool direct) {
    const auto& port = wiring.port_type(at);
    const auto* set = wiring.port_override(at);
    End end;
    end.rates = port.rates;
    end.pairs = port.pairs.value_or(4);
    if (set && set->disabled) {
        end.reason = NoLink::disabled;
    } else if (catalogue::is_cage(port.connector)) {
        read_cage(wiring, at, direct, end);
    } else {
        end.copper = port.signal == catalogue::Signal::copper;
        if (end.copper) end.medium = Medium::balanced_copper;
        if (direct) end.reason = NoLink::medium_misfit;
    }
    if (set && set->rate_limit) std::erase_if(end.rates, [&](BitRate rate) { return rate > *set->rate_limit; });
    return end;
}

bool wavelengths_agree(const ModuleFacts& a, const ModuleFacts& b) {
    if (a.wavelength_nm == 0 || b.wavelength_nm == 0) return true;
    const auto hears = [](const ModuleFacts& one, const ModuleFacts& other) {
        return one.receive_nm == 0 || one.receive_nm == other.wavelength_nm;
    };
    if (!hears(a, b) || !hears(b, a)) return false;
    // Two strands: each lights one and hears the other at the same wavelength. One strand: the two must differ.
    return (a.strands == 1) == (b.strands == 1) && (a.wavelength_nm == b.wavelength_nm) == (a.strands != 1);
}

/// What the cables of the run leave of the rates, or why they carry nothing.
NoLink pass_cables(const graph::Wiring& wiring, const graph::Run& run, const End& a, const End& b, Rates& rates) {
    for (const int index : run.cables) {
        const auto* type = wiring.cables[static_cast<std::size_t>(index)].type;
        if (!type) continue;
        for (const auto* end : {&a, &b})
            if (end->medium && type->medium != Medium::other && type->medium != *end->medium)
                return NoLink::medium_misfit;
        if (!type->rates.empty()) rates = common(rates, type->rates);
        if (type->medium != Medium::balanced_copper) continue;
        const auto ceiling = type->pairs < 4 ? 100_Mbps : copper_ceiling(type->grade);
        std::erase_if(rates, [&](BitRate rate) { return rate > ceiling; });
    }
    return NoLink::none;
}

RunSpeed speed_of(const graph::Wiring& wiring, const graph::Run& run) {
    if (!run.a || !run.b || !wiring.is_network_port(*run.a) || !wiring.is_network_port(*run.b)) return {};
    const bool direct = run.cables.size() == 1 && direct_attach(wiring.cables[static_cast<std::size_t>(run.cables[0])]);
    const auto a = read_end(wiring, *run.a, direct);
    const auto b = read_end(wiring, *run.b, direct);
    for (const auto* end : {&a, &b})
        if (end->reason != NoLink::none) return {{}, end->reason, {}};
    if (a.medium && b.medium && a.medium != b.medium) return {{}, NoLink::medium_misfit, {}};
    if (a.module && b.module && !direct && !wavelengths_agree(*a.module, *b.module))
        return {{}, NoLink::wavelength_misfit, {}};
    auto rates = common(a.rates, b.rates);
    if (const auto reason = pass_cables(wiring, run, a, b, rates); reason != NoLink::none) return {{}, reason, {}};
    if (std::min(a.pairs, b.pairs) < 4) std::erase_if(rates, [](BitRate rate) { return rate > 100_Mbps; });
    if (rates.empty()) return {{}, NoLink::no_common_rate, {}};
    RunSpeed speed{*std::max_element(rates.begin(), rates.end()), NoLink::none, {}};
    if (a.copper && b.copper)
        speed.phy = copper_phy(*speed.rate);
    else if (a.module && !direct)
        speed.phy = a.module->phy;
    else if (b.module && !direct)
        speed.phy = b.module->phy;
    return speed;
}

}  // namespace capacity_detail

LinkCapacity find_link_capacity(const graph::Wiring& wiring, const graph::Runs& runs,
                                const graph::NetworkGraph& network) {
    LinkCapacity capacity;
    capacity.runs.reserve(runs.list.size());
    for (const auto& run : runs.list) capacity.runs.push_back(capacity_detail::speed_of(wiring, run));
    capacity.arcs.reserve(static_cast<std::size_t>(network.arc_count()));
    const auto add_both_ways = [&](std::optional<base::BitRate> rate) {
        capacity.arcs.insert(capacity.arcs.end(), 2, rate);
    };
    for (const auto& link : network.links) {
        std::optional<base::BitRate> sum;
        for (const int run : link.runs)
            if (const auto rate = capacity.runs[static_cast<std::size_t>(run)].rate)
                sum = sum.value_or(base::BitRate{}) + *rate;
        add_both_ways(sum);
    }
    for (const auto& leaf : network.leaves) add_both_ways(capacity.runs[static_cast<std::size_t>(leaf.run)].rate);
    return capacity;
}

}  // namespace streamwright::analysis
