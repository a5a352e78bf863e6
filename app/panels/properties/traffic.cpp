#include "app/panels/properties/traffic.h"

#include "app/words/words.h"
#include "core/analysis/facts_set.h"
#include "core/analysis/latency.h"
#include "core/graph/run_arcs.h"
#include "core/model/mating.h"

#include <QCoreApplication>

#include <algorithm>

namespace streamwright::app {

namespace traffic_detail {

using analysis::Facts;

const char* nothing() { return QT_TRANSLATE_NOOP("properties", "nothing subscribed"); }

QString tr(const char* words) { return QCoreApplication::translate("properties", words); }

void show_arc(Figures& figures, const Document& document, const analysis::PresetLoad& load, int arc) {
    const auto& facts = document.analyser().facts();
    const auto& wiring = facts.get<graph::Wiring>();
    const auto ends = graph::arc_ends(wiring, facts.get<graph::Runs>(), facts.get<graph::NetworkGraph>(), arc);
    const auto index = static_cast<std::size_t>(arc);
    const auto& capacities = facts.get<analysis::LinkCapacity>().arcs;
    const auto capacity = index < capacities.size() ? capacities[index] : std::nullopt;
    const auto rate = index < load.arcs.size() ? load.arcs[index].wire : base::Rate();
    const auto streams = index < load.arcs.size() ? load.arcs[index].streams.size() : 0;
    const auto* to = document.design().devices.find(ends.to);
    const auto name = tr("to %1").arg(to ? shown(to->tag) : QString());
    const auto numbers = phrasebook(document.design()).numbers;
    if (!capacity) return figures.figure(name, tr("no link"));
    const auto value = tr("%1 of %2").arg(shown(print(rate.ceil(), numbers)), shown(print(*capacity, numbers)));
    figures.gauge(name, value, static_cast<double>(base::percent_tenths(rate, *capacity)) / 1000.0);
    if (streams > 1) figures.words(tr("%1 streams").arg(streams), "faint");
    const auto& worst = facts.get<analysis::WorstCase>().arcs;
    if (facts.deferred_known && index < worst.size() && rate < worst[index].wire) {
        const auto share = base::percent_tenths(worst[index].wire, *capacity);
        figures.figure(
            worst[index].at_most ? tr("at most") : tr("at worst"),
            tr("%1, %2 %").arg(shown(print(worst[index].wire.ceil(), numbers)), shown(base::print_decimal(share, 1))));
    }
}

std::optional<int> run_of(const Facts& facts, model::CableId cable) {
    const auto index = facts.get<graph::Wiring>().cable_index(cable);
    const auto& runs = facts.get<graph::Runs>().run_of_cable;
    if (!index || static_cast<std::size_t>(*index) >= runs.size()) return std::nullopt;
    return runs[static_cast<std::size_t>(*index)];
}

void show_feed(Figures& figures, const Document& document, const analysis::PoeFeed& feed) {
    const auto& wiring = document.analyser().facts().get<graph::Wiring>();
    const auto numbers = phrasebook(document.design()).numbers;
    const auto supply = shown(model::port_name(document.design(), wiring.ref(feed.supply)));
    figures.figure(tr("From"), supply);
    figures.figure(tr("Class %1, reserved").arg(feed.wanted_class), shown(print(feed.reserved, numbers)));
    figures.figure(tr("Drawn by the device"), shown(print(feed.drawn, numbers)));
    figures.figure(tr("Cable's loop, ohm"), shown(base::print_decimal((feed.cable.microohm + 5'000) / 10'000, 2)));
    figures.figure(tr("Arriving at most"), shown(print(feed.arriving, numbers)));
    if (!feed.starts) figures.sum(tr("Starts"), tr("no: budget used up"), true);
}

}  // namespace traffic_detail

const analysis::PresetLoad& preset_load(const analysis::Facts& facts, std::optional<model::PresetId> preset) {
    const auto& loads = facts.get<analysis::LinkLoads>();
    for (const auto& each : loads.presets)
        if (preset == each.preset) return each;
    return loads.idle;
}

QString preset_words(const model::Design& design, std::optional<model::PresetId> preset) {
    const auto* row = preset ? design.presets.find(*preset) : nullptr;
    return row ? traffic_detail::tr("preset %1").arg(shown(row->name)) : traffic_detail::tr(traffic_detail::nothing());
}

bool is_trunk(const analysis::Facts& facts, model::CableId cable) {
    const auto run = traffic_detail::run_of(facts, cable);
    const auto& network = facts.get<graph::NetworkGraph>();
    const auto is_switch = [&](int bridge) { return !network.bridges[static_cast<std::size_t>(bridge)].endpoint; };
    return run && std::ranges::any_of(network.links, [&](const graph::Link& link) {
               return is_switch(link.a) && is_switch(link.b) && std::ranges::find(link.runs, *run) != link.runs.end();
           });
}

void show_cable_loads(Figures& figures, const Document& document, model::CableId cable,
                      std::optional<model::PresetId> preset) {
    using namespace traffic_detail;
    const auto& facts = document.analyser().facts();
    const auto run = run_of(facts, cable);
    const auto arcs = run ? graph::arcs_of_run(facts.get<graph::NetworkGraph>(), *run) : std::vector<int>{};
    if (arcs.empty()) return;
    figures.section(tr("Load"), preset_words(document.design(), preset));
    for (const int arc : arcs) show_arc(figures, document, preset_load(facts, preset), arc);
}

void show_device_loads(Figures& figures, const Document& document, model::DeviceId device,
                       std::optional<model::PresetId> preset) {
    using namespace traffic_detail;
    const auto& facts = document.analyser().facts();
    const auto& network = facts.get<graph::NetworkGraph>();
    const auto index = facts.get<graph::Wiring>().device_index(device);
    if (!index || static_cast<std::size_t>(*index) >= network.bridge_of_device.size()) return;
    std::vector<int> arcs;
    for (const int leaf : network.leaves_of_device[static_cast<std::size_t>(*index)])
        arcs.insert(arcs.end(), {network.leaf_arc(leaf, true), network.leaf_arc(leaf, false)});
    const int bridge = network.bridge_of_device[static_cast<std::size_t>(*index)];
    for (std::size_t i = 0; bridge >= 0 && i < network.links.size(); ++i)
        if (network.links[i].a == bridge || network.links[i].b == bridge)
            arcs.insert(arcs.end(), {network.link_arc(int(i), true), network.link_arc(int(i), false)});
    if (arcs.empty()) return;
    figures.section(bridge >= 0 ? tr("Load of its links") : tr("Load"), preset_words(document.design(), preset));
    for (const int arc : arcs) show_arc(figures, document, preset_load(facts, preset), arc);
}

void show_latency(Figures& figures, const Document& document, model::DeviceId decoder,
                  std::optional<model::PresetId> preset) {
    using namespace traffic_detail;
    if (!preset) return;
    const auto numbers = phrasebook(document.design()).numbers;
    const auto words = [&](const std::optional<base::Duration>& time) {
        return time ? shown(print(*time, numbers)) : tr("not known");
    };
    for (const auto& each : analysis::find_latencies(document.analyser().facts(), decoder)) {
        if (each.preset != *preset) continue;
        const auto* stream = document.design().streams.find(each.stream);
        figures.section(tr("Latency of %1").arg(stream ? shown(stream->tag) : QString()),
                        preset_words(document.design(), preset));
        figures.figure(tr("Encoding"), words(each.parts.encoding));
        figures.figure(tr("Put on the lines"), words(each.parts.serialising));
        figures.figure(tr("Switches"), words(each.parts.switching));
        figures.figure(tr("Waiting, at most"), words(each.parts.queueing));
        figures.figure(tr("Cables"), words(each.parts.propagation));
        figures.figure(tr("Decoding"), words(each.parts.decoding));
        figures.sum(tr("At most"), words(each.most), false);
    }
}

void show_cable_poe(Figures& figures, const Document& document, model::CableId cable) {
    using namespace traffic_detail;
    const auto& facts = document.analyser().facts();
    const auto run = run_of(facts, cable);
    for (const auto& feed : facts.get<analysis::PowerBudget>().feeds) {
        if (!run || feed.run != *run) continue;
        figures.section(tr("Power over the cable"));
        show_feed(figures, document, feed);
    }
}

void show_device_poe(Figures& figures, const Document& document, model::DeviceId device) {
    using namespace traffic_detail;
    const auto& facts = document.analyser().facts();
    const auto index = facts.get<graph::Wiring>().device_index(device);
    const auto& power = facts.get<analysis::PowerBudget>();
    const auto numbers = phrasebook(document.design()).numbers;
    for (const auto& feed : power.feeds) {
        if (!index || feed.device.device != *index) continue;
        figures.section(tr("Power over the cable"));
        show_feed(figures, document, feed);
    }
    for (const auto& each : power.switches) {
        if (!index || each.device != *index) continue;
        figures.section(tr("PoE"), tr("%1 ports fed").arg(each.feeds.size()));
        if (each.budget && each.budget->count() > 0)
            figures.gauge(tr("Reserved"),
                          tr("%1 of %2").arg(shown(print(each.reserved, numbers)), shown(print(*each.budget, numbers))),
                          static_cast<double>(each.reserved.count()) / static_cast<double>(each.budget->count()));
        else
            figures.figure(tr("Reserved"), tr("%1; budget not stated").arg(shown(print(each.reserved, numbers))));
        figures.figure(tr("Drawn"), shown(print(each.drawn, numbers)));
    }
}

}  // namespace streamwright::app
