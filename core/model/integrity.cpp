#include "core/model/integrity.h"

#include "core/model/row_checks.h"

#include <map>
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

/// A display is a tile of one wall; the later of two that share one is named.
void find_shared_tiles(const Design& design, std::vector<BrokenBond>& out) {
    std::map<DeviceId, const Wall*> taken;
    for (const auto& row : design.walls)
        for (const auto& tile : row.tiles) {
            if (!tile) continue;
            const auto [at, fresh] = taken.emplace(*tile, &row);
            if (fresh || at->second == &row) continue;
            if (auto trouble = shared_tile(design, row)) out.push_back({"walls", row.id.text(), std::move(*trouble)});
            break;
        }
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
        if (name == "walls") find_shared_tiles(design, found);
    });
    return found;
}

std::vector<base::Error> broken_bonds(const Design& design) {
    std::vector<base::Error> errors;
    for (auto& bond : broken_bonds_with_places(design)) errors.push_back(std::move(bond.error));
    return errors;
}

}  // namespace streamwright::model
