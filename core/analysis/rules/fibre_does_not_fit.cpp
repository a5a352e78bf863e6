// Transceiver, cage, fibre and the transceiver at the far end must be of one kind.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>

namespace streamwright::analysis::rules::fibre_does_not_fit {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1: the cage %2 has no transceiver."),
    STREAMWRIGHT_TEXT("%1: %3 does not work in the cage %2."),
    STREAMWRIGHT_TEXT("%1: the cable is %4, but the transceiver at %2 lights %5."),
    STREAMWRIGHT_TEXT("%1: the transceivers at %2 (%3, %4 nm) and %5 (%6, %7 nm) do not understand each other."),
    STREAMWRIGHT_TEXT("%1: the cages and the cable between %2 and %3 do not fit."),
    STREAMWRIGHT_TEXT("%1 is a direct-attach cable and takes the place of %3, which is set in %2.")};

constexpr standards::Citation sources[] = {{"IEEE", "802.3", "clauses 38, 52, 86, 112 (media of each physical layer)"}};

constexpr RuleWords words{.id = "fibre-does-not-fit",
                          .theme = Theme::cabling,
                          .title = "Fibre or transceiver that does not fit both ends",
                          .meaning =
                              "The lamp stays dark, and a spare of the right kind is seldom on site. Both ends need "
                              "the same physical layer, and the fibre it is made for.",
                          .measured =
                              "At each end the cage, the transceiver in it and the fibre on it, then the two "
                              "transceivers with each other: same physical layer, same kind of fibre, wavelengths "
                              "that answer each other.",
                          .remedy =
                              "Set transceivers of one physical layer into both cages, over the fibre it is made "
                              "for; a direct-attach cable needs none.",
                          .offers = "Put the transceiver of the far end into the empty cage, where it fits.",
                          .patterns = patterns,
                          .sources = sources};

std::string medium_name(catalogue::Medium medium) {
    using enum catalogue::Medium;
    if (medium == balanced_copper) return STREAMWRIGHT_TEXT("balanced copper");
    if (medium == singlemode) return STREAMWRIGHT_TEXT("single-mode fibre");
    if (medium == multimode) return STREAMWRIGHT_TEXT("multimode fibre");
    return std::string(base::enum_text(medium));
}

bool empty_cage(const graph::Wiring& wiring, graph::PortAt port) {
    return catalogue::is_cage(wiring.port_type(port).connector) && !wiring.module_at(port);
}

/// A transceiver for the empty cage: the far end's, if it goes into this cage.
std::optional<Remedy> same_as_far(const graph::Wiring& wiring, graph::PortAt port, graph::PortAt far) {
    const auto* module = wiring.module_at(far);
    const auto& cage = wiring.port_type(port);
    if (!module || !module->module || module->module->form != cage.connector) return std::nullopt;
    if (std::find(cage.rates.begin(), cage.rates.end(), module->module->rate) == cage.rates.end()) return std::nullopt;
    auto row = port_settings(wiring, port);
    row.module = module->key;
    return Remedy{line(STREAMWRIGHT_TEXT("Put %1 into %2"), {module->name, port_ref(wiring, port)}),
                  model::ConfigurePort{std::move(row), nullptr}};
}

struct Ends {
    model::CableId cable;
    graph::PortAt a, b;
    const catalogue::CableType* type;
};

Finding about(const Ends& ends, std::vector<base::Value> values, int variant) {
    values.insert(values.begin(), named(ends.cable));
    return found(words.id, Severity::error, {ends.cable}, std::move(values), variant);
}

Finding missing(const graph::Wiring& wiring, const Ends& ends) {
    const bool at_a = empty_cage(wiring, ends.a), at_b = empty_cage(wiring, ends.b);
    const auto port = at_a ? ends.a : ends.b;
    auto finding = about(ends, {port_ref(wiring, port)}, 0);
    if (at_a != at_b)
        if (auto remedy = same_as_far(wiring, port, at_a ? ends.b : ends.a))
            finding.remedies.push_back(std::move(*remedy));
    return finding;
}

/// The end whose transceiver the judge objects to; nothing if none can be named.
template <class Objects>
const catalogue::DeviceType* objected(const graph::Wiring& wiring, const Ends& ends, graph::PortAt& port,
                                      Objects&& objects) {
    for (const auto end : {ends.a, ends.b})
        if (const auto* module = wiring.module_at(end); module && module->module && objects(end, *module->module)) {
            port = end;
            return module;
        }
    return nullptr;
}

Finding explain(const graph::Wiring& wiring, const Ends& ends, NoLink reason) {
    auto port = ends.a;
    if (reason == NoLink::module_missing) return missing(wiring, ends);
    const bool direct = ends.type && !ends.type->rates.empty();
    if (reason == NoLink::module_misfit && direct) {
        const auto any = [](graph::PortAt, const catalogue::ModuleFacts&) { return true; };
        if (const auto* module = objected(wiring, ends, port, any))
            return about(ends, {port_ref(wiring, port), module->name}, 5);
    }
    if (reason == NoLink::module_misfit) {
        const auto* module = objected(wiring, ends, port, [&](graph::PortAt end, const catalogue::ModuleFacts& facts) {
            const auto& cage = wiring.port_type(end);
            const auto& rates = cage.rates;
            return facts.form != cage.connector || std::find(rates.begin(), rates.end(), facts.rate) == rates.end();
        });
        if (module) return about(ends, {port_ref(wiring, port), module->name}, 1);
    }
    if (reason == NoLink::medium_misfit && ends.type) {
        const auto* module = objected(wiring, ends, port, [&](graph::PortAt, const catalogue::ModuleFacts& facts) {
            return facts.medium != ends.type->medium;
        });
        if (module)
            return about(ends,
                         {port_ref(wiring, port), module->name, medium_name(ends.type->medium),
                          medium_name(module->module->medium)},
                         2);
    }
    const auto *a = wiring.module_at(ends.a), *b = wiring.module_at(ends.b);
    if (a && b && a->module && b->module)
        return about(ends,
                     {port_ref(wiring, ends.a), a->name, std::int64_t{a->module->wavelength_nm},
                      port_ref(wiring, ends.b), b->name, std::int64_t{b->module->wavelength_nm}},
                     3);
    return about(ends, {port_ref(wiring, ends.a), port_ref(wiring, ends.b)}, 4);
}

void check(const graph::Wiring& wiring, const graph::Runs& runs, const LinkCapacity& capacity, Findings& out) {
    for (std::size_t i = 0; i < runs.list.size() && i < capacity.runs.size(); ++i) {
        const auto& run = runs.list[i];
        const auto reason = capacity.runs[i].reason;
        const bool misfit = reason == NoLink::module_missing || reason == NoLink::module_misfit ||
                            reason == NoLink::medium_misfit || reason == NoLink::wavelength_misfit;
        if (!misfit || !run.a || !run.b) continue;
        const bool cages = catalogue::is_cage(wiring.port_type(*run.a).connector) ||
                           catalogue::is_cage(wiring.port_type(*run.b).connector);
        if (!cages) continue;  // plugs and sockets have a rule of their own
        const auto& cable = wiring.cables[at(run.cables.front())];
        out.push_back(explain(wiring, {cable.row->id, *run.a, *run.b, cable.type}, reason));
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::fibre_does_not_fit
