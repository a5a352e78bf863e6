#include "core/model/integrity.h"

#include "core/model/row_checks.h"

#include <set>
#include <tuple>

namespace streamwright::model {

namespace {

/// An input shows one stream in a preset.
void find_doubled_inputs(const Design& design, std::vector<BrokenBond>& out) {
    std::set<std::tuple<PresetId, DeviceId, InputKey>> filled;
    for (const auto& row : design.subscriptions)
        if (!filled.emplace(row.preset, row.decoder, row.input).second)
            out.push_back({"subscriptions",
                           row.id.text(),
                           {"Input %1 is filled twice in one preset by subscription %2; an input shows one stream.",
                            {row.input.text, row.id.text()}}});
}

}  // namespace

std::vector<BrokenBond> broken_bonds_with_places(const Design& design) {
    std::vector<BrokenBond> found;
    for_each_table([&](std::string_view name, auto member) {
        for (const auto& row : design.*member) {
            if (auto trouble = wrong_value(row)) found.push_back({name, key_text(row.key()), std::move(*trouble)});
            if (auto trouble = broken_bond(design, row))
                found.push_back({name, key_text(row.key()), std::move(*trouble)});
        }
        if (name == "subscriptions") find_doubled_inputs(design, found);
    });
    return found;
}

std::vector<base::Error> broken_bonds(const Design& design) {
    std::vector<base::Error> errors;
    for (auto& bond : broken_bonds_with_places(design)) errors.push_back(std::move(bond.error));
    return errors;
}

}  // namespace streamwright::model
