// An endpoint whose link comes up slower than its type may need, found before any stream is drawn. Once streams stand
// in the design, their own rates are judged instead.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>
#include <set>

namespace streamwright::analysis::rules::link_slower_than_endpoint {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 comes up at %2, the most that %3 offers; %4 may need %5 on the wire."),
    STREAMWRIGHT_TEXT("%1 comes up at %2, because %3 has %4 pairs only; %5 may need %6 on the wire."),
    STREAMWRIGHT_TEXT("%1 comes up at %2; %3 may need %4 on the wire.")};

constexpr standards::Citation sources[] = {
    {"IEEE", "802.3", "clause 28 (auto-negotiation: the highest speed common to both)", standards::Standing::memory},
    {"IEEE", "802.3", "clause 40 (1000BASE-T needs four pairs)", standards::Standing::memory},
    {"IEEE", "802.3", "clause 4.4 (preamble, gap)"}};

constexpr RuleWords words{.id = "link-slower-than-endpoint",
                          .severity = Severity::warning,
                          .theme = Theme::links,
                          .title = "Link slower than the endpoint may need",
                          .meaning =
                              "The lamp is lit and the picture breaks up. Take a port and a lead of the endpoint's "
                              "speed: two pairs or an old port give 100 Mb/s at most.",
                          .measured =
                              "For endpoints that neither send a stream nor show one yet, the speed at which the link "
                              "comes up is held against the greatest rate that the type states, with headers, preamble "
                              "and gap. Where the type states none, nothing is said.",
                          .remedy =
                              "Use a lead with four pairs and a port of the endpoint's speed, or lift the limit set on "
                              "the port. Where a low rate is meant, draw the stream: then its own rate is judged.",
                          .patterns = patterns,
                          .sources = sources};

/// What the fastest stream of the type weighs on the wire, untagged; none where the type does not say.
std::optional<base::Rate> wire_need(const catalogue::DeviceType& type) {
    if (!type.codec || !type.codec->most_rate) return std::nullopt;
    auto stream = model::Stream::blank(model::StreamId(0));
    stream.payload_rate = *type.codec->most_rate;
    stream.rtp = type.codec->rtp;
    if (type.codec->payload_octets) stream.payload_octets = *type.codec->payload_octets;
    return wire_rate(stream, false);
}

/// Endpoints of which a stream or a subscription tells what they need.
std::set<model::DeviceId> decided(const model::Design& design) {
    std::set<model::DeviceId> devices;
    for (const auto& stream : design.streams) devices.insert(stream.encoder);
    for (const auto& subscription : design.subscriptions) devices.insert(subscription.decoder);
    return devices;
}

/// The cable that holds the run at this speed: balanced copper with fewer than four pairs.
std::optional<int> thin_cable(const graph::Wiring& wiring, const graph::Run& run) {
    for (const int cable : run.cables) {
        const auto* type = wiring.cables[at(cable)].type;
        if (type && type->medium == catalogue::Medium::balanced_copper && type->pairs < 4) return cable;
    }
    return std::nullopt;
}

bool offers_more(const graph::Wiring& wiring, graph::PortAt port, base::BitRate rate) {
    const auto* set = wiring.port_override(port);
    const auto& type = wiring.port_type(port);
    if (type.pairs.value_or(4) < 4) return false;
    return std::any_of(type.rates.begin(), type.rates.end(), [&](base::BitRate each) {
        return each > rate && !(set && set->rate_limit && each > *set->rate_limit);
    });
}

void judge(const graph::Wiring& wiring, const graph::Run& run, base::BitRate rate, graph::PortAt near,
           graph::PortAt far, Findings& out) {
    const auto& device = wiring.devices[at(near.device)];
    const auto need = wire_need(*device.type);
    if (!need || *need <= base::Rate(rate) || wiring.port_type(near).auxiliary) return;
    const auto link = cable_id(wiring, run.cables.front());
    std::vector<Subject> subjects{link, device.row->id};
    std::vector<base::Value> values{named(link), rate};
    int variant = 2;
    if (const auto thin = thin_cable(wiring, run)) {
        variant = 1;
        values.emplace_back(named(cable_id(wiring, *thin)));
        values.emplace_back(std::int64_t{wiring.cables[at(*thin)].type->pairs});
    } else if (!offers_more(wiring, far, rate)) {
        variant = 0;
        values.emplace_back(port_ref(wiring, far));
    }
    values.emplace_back(named(device.row->id));
    values.emplace_back(need->ceil());
    auto finding = found(words.id, Severity::warning, std::move(subjects), std::move(values), variant);
    finding.measured = rate;
    finding.limit = need->ceil();
    finding.terms.push_back(line(STREAMWRIGHT_TEXT("%1 at most by its type, with headers, preamble and gap: %2"),
                                 {*device.type->codec->most_rate, need->ceil()}));
    out.push_back(std::move(finding));
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const LinkCapacity& capacity, Findings& out) {
    std::optional<std::set<model::DeviceId>> known;  // gathered once an endpoint comes up too slow: few do
    std::map<const catalogue::DeviceType*, std::optional<base::Rate>> needs;
    const auto open = [&](graph::PortAt port, base::BitRate rate) {
        const auto& device = wiring.devices[at(port.device)];
        if (!device.type || !device.type->codec) return false;
        const auto [need, fresh] = needs.try_emplace(device.type);
        if (fresh) need->second = wire_need(*device.type);
        if (!need->second || *need->second <= base::Rate(rate)) return false;
        if (!known) known = decided(wiring.design);
        return !known->contains(device.row->id);
    };
    for (std::size_t i = 0; i < runs.list.size() && i < capacity.runs.size(); ++i) {
        const auto& run = runs.list[i];
        const auto& rate = capacity.runs[i].rate;
        if (!rate || !run.a || !run.b) continue;
        if (open(*run.a, *rate)) judge(wiring, run, *rate, *run.a, *run.b, out);
        if (open(*run.b, *rate)) judge(wiring, run, *rate, *run.b, *run.a, out);
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::link_slower_than_endpoint
