#include "app/tools/cable_choice.h"

#include "core/model/edits/connect.h"
#include "core/model/mating.h"

#include <algorithm>
#include <tuple>

namespace streamwright::app {

std::vector<CableChoice::Type> CableChoice::fitting(const Library& library, const model::Design& design,
                                                    const model::PortRef& a, const model::PortRef& b) const {
    const auto from = model::port_facts(design, a), to = model::port_facts(design, b);
    if (!from.port || !to.port) return {};
    std::vector<Type> fits;
    const auto add = [&](const Type& type) {
        const bool known = std::ranges::any_of(fits, [&](const Type& each) { return each->key == type->key; });
        if (!known && model::cable_joins(*type, from, to)) fits.push_back(type);
    };
    for (const auto& row : design.cable_types) add(row.type);
    for (const auto& type : library.cables) add(type);
    const auto ends = {from, to};
    const bool network =
        std::ranges::any_of(ends, [](const auto& end) { return catalogue::is_network(end.port->signal); });
    // Between two cages without transceivers fibre is meant, until a direct-attach cable has been chosen.
    const bool cages = std::ranges::all_of(
        ends, [](const auto& end) { return catalogue::is_cage(end.port->connector) && !end.module; });
    const auto rank = [&](const Type& type) {
        const auto lately = std::ranges::find(recent_, type->key) - recent_.begin();
        const bool installed = type->use == catalogue::CableUse::installed;
        const bool copper = cages && type->medium == catalogue::Medium::balanced_copper &&
                            std::ranges::none_of(type->plugs, catalogue::is_cage);
        return std::tuple(copper, lately, !design.cable_types.contains(type->key), network != installed, type->key);
    };
    std::ranges::sort(fits, [&](const Type& x, const Type& y) { return rank(x) < rank(y); });
    return fits;
}

void CableChoice::used(const Type& type) {
    std::erase(recent_, type->key);
    recent_.insert(recent_.begin(), type->key);
}

}  // namespace streamwright::app
