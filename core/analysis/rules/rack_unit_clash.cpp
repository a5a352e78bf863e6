// Two units cannot stand in one place: rack units taken twice, on one face or through the whole depth.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <algorithm>
#include <map>

namespace streamwright::analysis::rules::rack_unit_clash {

constexpr std::string_view patterns[] = {STREAMWRIGHT_TEXT("%1 and %2 both take U%3 of their rack."),
                                         STREAMWRIGHT_TEXT("%1 and %2 both take U%3 to U%4 of their rack."),
                                         STREAMWRIGHT_TEXT("%1 reaches up to U%3, but its rack has %4 units.")};

constexpr standards::Citation sources[] = {{"IEC", "60297-3-100", "unit of 44.45 mm", standards::Standing::memory}};

constexpr RuleWords words{.id = "rack-unit-clash",
                          .theme = Theme::drawing,
                          .title = "Rack units taken twice",
                          .meaning =
                              "Found at the bench, when the second unit does not go in. Units take their height on "
                              "their face; a unit of full depth blocks the other face too.",
                          .measured =
                              "The units that each device takes on its face of the rack, and on both faces where its"
                              " type is of full depth, against the others in the rack and against the rack's height.",
                          .remedy = "Move one device to free units, or take a higher rack.",
                          .patterns = patterns,
                          .sources = sources};

struct Mounted {
    model::DeviceId device;
    int lowest = 1, highest = 1;
    model::RackFace face = model::RackFace::front;
    bool full_depth = false;
};

std::map<model::RackId, std::vector<Mounted>> mounted_in(const graph::Wiring& wiring) {
    std::map<model::RackId, std::vector<Mounted>> racks;
    for (const auto& device : wiring.devices) {
        if (!device.type || !device.row->rack || device.type->size.rack_units < 1) continue;
        const auto& place = *device.row->rack;
        racks[place.rack].push_back({device.row->id, place.unit, place.unit + device.type->size.rack_units - 1,
                                     place.face, device.type->size.full_depth.value_or(false)});
    }
    return racks;
}

void judge_pair(const Mounted& a, const Mounted& b, Findings& out) {
    const int lowest = std::max(a.lowest, b.lowest), highest = std::min(a.highest, b.highest);
    if (lowest > highest || (a.face != b.face && !a.full_depth && !b.full_depth)) return;
    // By id, so that the finding and its waiver stay the same when one of the two is moved.
    const auto first = std::min(a.device, b.device), second = std::max(a.device, b.device);
    out.push_back(found(words.id, Severity::error, {first, second},
                        {named(first), named(second), std::int64_t{lowest}, std::int64_t{highest}},
                        lowest == highest ? 0 : 1));
}

void check(const graph::Wiring& wiring, Findings& out) {
    for (auto& [id, units] : mounted_in(wiring)) {
        std::sort(units.begin(), units.end(), [](const Mounted& a, const Mounted& b) { return a.lowest < b.lowest; });
        const auto* rack = wiring.design.racks.find(id);
        for (std::size_t i = 0; i < units.size(); ++i) {
            if (rack && units[i].highest > rack->units) {
                auto finding = found(words.id, Severity::error, {units[i].device},
                                     {named(units[i].device), named(units[i].device), std::int64_t{units[i].highest},
                                      std::int64_t{rack->units}},
                                     2);
                finding.measured = std::int64_t{units[i].highest};
                finding.limit = std::int64_t{rack->units};
                finding.terms.push_back(
                    line(STREAMWRIGHT_TEXT("lowest unit %1 + height %2 - 1 = %3"),
                         {std::int64_t{units[i].lowest}, std::int64_t{units[i].highest} - units[i].lowest + 1,
                          std::int64_t{units[i].highest}}));
                out.push_back(std::move(finding));
            }
            for (std::size_t j = i + 1; j < units.size() && units[j].lowest <= units[i].highest; ++j)
                judge_pair(units[i], units[j], out);
        }
    }
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::rack_unit_clash
