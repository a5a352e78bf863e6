// A slot of a chassis holds one card, of the form the chassis takes.
#include "core/analysis/rule.h"
#include "core/analysis/rule_help.h"

#include <map>
#include <utility>

namespace streamwright::analysis::rules::chassis_slot_clash {

constexpr std::string_view patterns[] = {
    STREAMWRIGHT_TEXT("%1 and %2 both stand in slot %3 of %4."),
    STREAMWRIGHT_TEXT("%1 stands in slot %3 of %4, which has %5 slots."),
    STREAMWRIGHT_TEXT("%1 does not fit %4: the chassis takes cards of another form."),
    STREAMWRIGHT_TEXT("%1 is set into %4, which is no chassis.")};

constexpr RuleWords words{.id = "chassis-slot-clash",
                          .theme = Theme::drawing,
                          .title = "Chassis slot taken twice",
                          .meaning = "A card is left over at the bench and one more chassis must be ordered.",
                          .measured =
                              "The slot and chassis of every card against the other cards there, and against the "
                              "slots and the card form that the type of the chassis states.",
                          .remedy = "Move the card to a free slot, or to another chassis that takes its form.",
                          .patterns = patterns,
                          .no_source = "Follows from the slots and the form that the types state."};

using Slots = std::map<std::pair<model::DeviceId, int>, model::DeviceId>;

void judge(const graph::Wiring& wiring, const graph::WiredDevice& card, Slots& taken, Findings& out) {
    const auto& place = *card.row->chassis;
    const auto* chassis = wiring.design.devices.find(place.chassis);
    const auto* row = chassis ? wiring.design.device_types.find(chassis->type) : nullptr;
    if (!row || !card.type) return;  // an unknown type says nothing of slots
    const auto& facts = row->type->chassis;
    const auto add = [&](model::DeviceId other, int variant) {
        std::vector<Subject> subjects{card.row->id};
        if (other != card.row->id) subjects.push_back(other);
        out.push_back(found(words.id, Severity::error, std::move(subjects),
                            {named(card.row->id), named(other), std::int64_t{place.slot}, named(place.chassis),
                             std::int64_t{facts ? facts->slots : 0}},
                            variant));
    };
    if (!facts) return add(place.chassis, 3);
    if (card.type->card_form != facts->takes) return add(place.chassis, 2);
    if (place.slot > facts->slots) return add(place.chassis, 1);
    const auto [at, fresh] = taken.try_emplace({place.chassis, place.slot}, card.row->id);
    if (!fresh) add(at->second, 0);
}

void check(const graph::Wiring& wiring, Findings& out) {
    Slots taken;
    for (const auto& device : wiring.devices)
        if (device.row->chassis) judge(wiring, device, taken, out);
}

extern const Rule rule;
constinit const Rule rule = make_rule<&check>(words);

}  // namespace streamwright::analysis::rules::chassis_slot_clash
