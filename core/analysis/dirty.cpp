// One overload per row type and none for "any other": a row type that is missing here does not compile.
#include "core/analysis/dirty.h"

namespace streamwright::analysis {

namespace dirty_detail {

constexpr FactSet wiring = fact_bit<graph::Wiring>();
/// The wiring is made again, but nothing in it changed that a rule reads there.
constexpr FactSet unseen_wiring{1U << fact_count};
constexpr FactSet tags = fact_bit<TagUse>();
constexpr FactSet pictures = fact_bit<VideoChains>();
constexpr FactSet load_facts = fact_bit<Forwarding>() | fact_bit<LinkLoads>() | deferred_facts;
/// Another place of the querier may part what is alike now.
constexpr FactSet of_presets =
    fact_bit<LinkLoads>() | fact_bit<QuerierPlaces>() | fact_bit<Failures>() | fact_bit<AggregationRisk>();
constexpr FactSet network_facts = fact_bit<graph::NetworkGraph>() | fact_bit<LinkCapacity>() | fact_bit<VlanPaths>() |
                                  fact_bit<SpanningTrees>() | load_facts;
constexpr FactSet length_facts = fact_bit<CableLengths>() | fact_bit<FibreChannels>() | fact_bit<PowerBudget>();
constexpr FactSet structure = wiring | fact_bit<graph::Runs>() | fact_bit<graph::SignalGraph>() | network_facts |
                              length_facts | fact_bit<AddressPlan>() | pictures;

template <class Row>
bool stays(const model::Change<Row>& change) {
    return change.before && change.after;
}

/// Whether two rows are alike once `forget` has blanked some of their fields.
template <class Row, class Forget>
bool alike(const model::Change<Row>& change, Forget forget) {
    Row before = *change.before, after = *change.after;
    forget(before);
    forget(after);
    return before == after;
}

template <class Row>
FactSet tags_if_changed(const model::Change<Row>& change) {
    return change.before->tag != change.after->tag ? tags : FactSet{};
}

FactSet spoils(const model::Change<model::Settings>& change) {
    const auto words = [](model::Settings& row) {
        row = {.usual_vlan = row.usual_vlan,
               .cable_temperature = row.cable_temperature,
               .headroom_percent = row.headroom_percent,
               .igmp = row.igmp,
               .query_interval_s = row.query_interval_s,
               .query_response_s = row.query_response_s,
               .robustness = row.robustness,
               .cabling = row.cabling};
    };
    if (!stays(change) || !alike(change, words)) return structure;
    if (change.before->survive != change.after->survive) return wiring | fact_bit<Failures>();
    return wiring;  // remedies that answer the plan carry the whole row, its titles too
}

FactSet spoils(const model::Change<model::Room>& change) {
    const auto before = change.before.value_or(model::Room::blank(change.key()));
    const auto after = change.after.value_or(model::Room::blank(change.key()));
    if (before.temperature != after.temperature) return wiring | fact_bit<PowerBudget>();
    const bool seen_alike = before.farthest_viewer == after.farthest_viewer && before.viewing == after.viewing &&
                            before.element_height == after.element_height;
    return seen_alike ? FactSet{} : wiring;
}

FactSet spoils(const model::Change<model::Rack>& change) {
    const bool alone = stays(change) && change.before->type == change.after->type;
    return alone && change.before->units == change.after->units ? FactSet{} : wiring;
}

FactSet spoils(const model::Change<model::Vlan>& change) {
    const auto words = [](model::Vlan& row) { row.name.clear(); };
    if (stays(change) && alike(change, words)) return {};
    return wiring | network_facts | fact_bit<AddressPlan>();
}

// Rules never read a device's tag, and an offered remedy never carries it; the other words of devices, ports and
// streams travel in remedies, so a change of them runs the rules again though no fact is spoilt.
FactSet spoils(const model::Change<model::Device>& change) {
    if (!stays(change)) return structure | tags;
    const auto renamed = tags_if_changed(change);
    const auto tag = [](model::Device& row) { row.tag.clear(); };
    if (alike(change, tag)) return renamed;
    const auto words = [](model::Device& row) {
        row.tag.clear();
        row.note.clear();
        row.host_name.clear();
        row.serial.clear();
        row.standing.reset();
    };
    if (alike(change, words)) return renamed | wiring;
    const auto mounted = [&](model::Device& row) {
        words(row);
        row.rack.reset();
    };
    if (alike(change, mounted)) return renamed | wiring;
    const auto belonging = [&](model::Device& row) {
        mounted(row);
        row.room.reset();
    };
    if (alike(change, belonging)) return renamed | wiring | fact_bit<PowerBudget>();  // a room may be warm
    const auto chassis = [&](model::Device& row) {
        belonging(row);
        row.chassis.reset();
    };
    if (alike(change, chassis)) return renamed | wiring | fact_bit<PowerBudget>() | fact_bit<Failures>();
    const auto addresses = [&](model::Device& row) {
        chassis(row);
        row.addresses.clear();
    };
    if (alike(change, addresses))
        return renamed | wiring | fact_bit<PowerBudget>() | fact_bit<AddressPlan>() | fact_bit<AggregationRisk>();
    return renamed | structure;
}

FactSet spoils(const model::Change<model::PortOverride>& change) {
    const auto blank = model::PortOverride::blank(change.key());
    model::Change<model::PortOverride> whole{change.before.value_or(blank), change.after.value_or(blank)};
    const auto words = [](model::PortOverride& row) {
        row.label.clear();
        row.edge = row.bpdu_guard = row.loop_guard = false;
        row.protection.reset();
    };
    if (alike(whole, words)) return wiring;
    const auto picture = [&](model::PortOverride& row) {
        words(row);
        row.picture.reset();
        row.edid.reset();
    };
    if (alike(whole, picture)) return wiring | pictures;
    return wiring | network_facts | length_facts | fact_bit<AddressPlan>() | pictures;
}

FactSet spoils(const model::Change<model::Cable>& change) {
    if (!stays(change)) return structure | tags;
    const auto renamed = tags_if_changed(change);
    const auto words = [](model::Cable& row) {
        row.tag.clear();
        row.note.clear();
        row.progress = {};
    };
    if (alike(change, words)) return renamed;
    const auto duct = [&](model::Cable& row) {
        words(row);
        row.duct.clear();
    };
    if (alike(change, duct)) return renamed | unseen_wiring | fact_bit<Failures>();
    const auto length = [&](model::Cable& row) {
        duct(row);
        row.length.reset();
        row.fibre = {};
    };
    if (alike(change, length)) return renamed | unseen_wiring | length_facts;
    const auto agreed = [&](model::Cable& row) {
        length(row);
        row.agreed.reset();
    };
    if (alike(change, agreed)) return renamed | wiring | length_facts | fact_bit<WorstCase>();  // within it, too
    return renamed | structure;
}

FactSet spoils(const model::Change<model::Stream>& change) {
    constexpr auto of_streams = wiring | load_facts | fact_bit<AddressPlan>() | pictures;
    if (!stays(change)) return of_streams | tags;
    const auto renamed = tags_if_changed(change);
    const auto words = [](model::Stream& row) {
        row.tag.clear();
        row.note.clear();
    };
    if (alike(change, words)) return renamed | wiring;
    const auto payload = [&](model::Stream& row) {
        words(row);
        row.payload_rate = {};
        row.payload_octets = row.udp_port = 0;
        row.rtp = row.encrypted = false;
    };
    return alike(change, payload) ? renamed | wiring | load_facts : renamed | of_streams;
}

FactSet spoils(const model::Change<model::Preset>& change) {
    const auto words = [](model::Preset& row) {
        row.name.clear();
        row.note.clear();
    };
    if (stays(change) && alike(change, words)) return {};
    return wiring | of_presets;
}

FactSet spoils(const model::Change<model::Subscription>& change) {
    if (stays(change) && alike(change, [](model::Subscription&) {})) return {};
    return wiring | of_presets | pictures;
}

FactSet spoils(const model::Change<model::Wall>& change) {
    const auto words = [](model::Wall& row) {
        row.name.clear();
        row.note.clear();
    };
    return stays(change) && alike(change, words) ? FactSet{} : wiring;
}

FactSet spoils(const model::Change<model::DeviceTypeRow>&) { return structure; }
FactSet spoils(const model::Change<model::CableTypeRow>&) { return structure; }

// Drawing, titles and acceptances: never a fact.
FactSet spoils(const model::Change<model::Sheet>&) { return {}; }
FactSet spoils(const model::Change<model::Place>&) { return {}; }
FactSet spoils(const model::Change<model::CableLine>&) { return {}; }
FactSet spoils(const model::Change<model::RoomFrame>&) { return {}; }
FactSet spoils(const model::Change<model::Note>&) { return {}; }
FactSet spoils(const model::Change<model::Waiver>&) { return {}; }
FactSet spoils(const model::Change<model::Revision>&) { return {}; }

template <class Row>
FactSet spoils_all(const std::vector<model::Change<Row>>& changes) {
    FactSet all;
    for (const auto& change : changes) all = all | spoils(change);
    return all;
}

}  // namespace dirty_detail

Spoilt spoilt_by(const model::Delta& delta) {
    const auto facts = std::apply(
        [](const auto&... changes) { return (dirty_detail::spoils_all(changes) | ... | FactSet{}); }, delta.lists);
    if (!facts.has(dirty_detail::unseen_wiring)) return {facts, facts.has(dirty_detail::wiring), facts.any()};
    const FactSet known{facts.bits & ((1U << fact_count) - 1)};
    return {known | dirty_detail::wiring, facts.has(dirty_detail::wiring), true};
}

FactSet derived_from(FactSet changed) {
    FactSet more;
    const auto spread = [&](FactSet from, FactSet to) {
        if (changed.has(from)) more = more | to;
    };
    spread(fact_bit<graph::SignalGraph>(), fact_bit<VideoChains>());
    spread(fact_bit<graph::Runs>(), fact_bit<graph::SignalGraph>() | fact_bit<VideoChains>() |
                                        fact_bit<graph::NetworkGraph>() | fact_bit<LinkCapacity>() |
                                        fact_bit<VlanPaths>() | fact_bit<SpanningTrees>() | fact_bit<CableLengths>() |
                                        fact_bit<FibreChannels>() | fact_bit<PowerBudget>() | fact_bit<AddressPlan>());
    spread(fact_bit<graph::NetworkGraph>(), dirty_detail::network_facts);
    // Which port feeds which follows the types and runs, never the watts: PowerBudget spreads nothing.
    spread(fact_bit<LinkCapacity>(), fact_bit<VlanPaths>() | fact_bit<SpanningTrees>() | fact_bit<Failures>());
    spread(fact_bit<VlanPaths>(), fact_bit<SpanningTrees>() | dirty_detail::load_facts);
    spread(fact_bit<SpanningTrees>(), dirty_detail::load_facts);
    spread(fact_bit<Forwarding>(), fact_bit<LinkLoads>() | deferred_facts);
    spread(fact_bit<LinkLoads>(), deferred_facts);
    return more;
}

}  // namespace streamwright::analysis
