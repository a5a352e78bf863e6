// Power over Ethernet as a switch deals with it: its supplies, what it sets aside, and the priority and limit of a
// port.
#include "app/panels/properties/editors.h"
#include "app/words/words.h"

#include <QCoreApplication>

#include <algorithm>

namespace streamwright::app {

namespace poe_editor_detail {

using catalogue::PoeAllocation;
using catalogue::SupplySet;
using Option = PropertyForm::Option;

QString tr(const char* words) { return QCoreApplication::translate("properties", words); }

bool supplies(const catalogue::PortType& port) { return port.poe && port.poe->side == catalogue::PoeSide::supplies; }

const model::BridgeSettings& bridging(PropertyForm& form, model::DeviceId id) {
    static const model::BridgeSettings plain;
    const auto* device = form.design().devices.find(id);
    return device ? device->bridging : plain;
}

void configure(PropertyForm& form, model::DeviceId id, const QString& words,
               const std::function<void(model::BridgeSettings&)>& change) {
    const auto* device = form.design().devices.find(id);
    if (!device) return;
    model::ConfigureDevice edit{*device};
    change(edit.row.bridging);
    form.change(edit, words);
}

model::PoeSettings settings(PropertyForm& form, const model::PortRef& ref) {
    const auto* held = form.design().port_overrides.find(ref);
    return held ? held->poe : model::PoeSettings{};
}

std::optional<QString> set(PropertyForm& form, const model::PortRef& ref, const QString& words,
                           const std::function<void(model::PoeSettings&)>& change) {
    const auto* held = form.design().port_overrides.find(ref);
    model::ConfigurePort edit{held ? *held : model::PortOverride::blank(ref), nullptr};
    change(edit.row.poe);
    return form.change(edit, words);
}

std::optional<QString> set_limit(PropertyForm& form, const model::PortRef& ref, const QString& text) {
    std::optional<base::Power> limit;
    if (!text.isEmpty()) {
        const auto typed = base::parse_power(text.toStdString());
        if (!typed) return sentence(typed.error());
        limit = *typed;
    }
    return set(form, ref, tr("Limit PoE"), [&](auto& poe) { poe.limit = limit; });
}

}  // namespace poe_editor_detail

void add_poe_supply(PropertyForm& form, model::DeviceId id, const catalogue::DeviceType& type) {
    using namespace poe_editor_detail;
    if (!type.bridging || std::ranges::none_of(type.ports, supplies)) return;
    form.section(tr("PoE supply"));
    form.choice(
        tr("Supplies"),
        [] {
            return std::vector<Option>{
                {tr("one"), "one"}, {tr("two, added"), "two_added"}, {tr("two, one stands by"), "two_redundant"}};
        },
        [&form, id] { return shown(std::string(base::enum_text(bridging(form, id).supplies))); },
        [&form, id](const QString& set) {
            configure(form, id, tr("Change supplies"), [&](auto& b) {
                b.supplies = base::parse_enum<SupplySet>(set.toStdString()).value_or(SupplySet::one);
            });
        });
    form.choice(
        tr("Reserves"),
        [] {
            return std::vector<Option>{{tr("as its type states"), {}},
                                       {tr("by class"), "by_class"},
                                       {tr("by measured draw"), "by_draw"},
                                       {tr("as asked by LLDP"), "by_lldp"}};
        },
        [&form, id] {
            const auto by = bridging(form, id).poe_allocation;
            return by ? shown(std::string(base::enum_text(*by))) : QString();
        },
        [&form, id](const QString& by) {
            configure(form, id, tr("Change PoE reserve"),
                      [&](auto& b) { b.poe_allocation = base::parse_enum<PoeAllocation>(by.toStdString()); });
        });
}

void add_poe_port(PropertyForm& form, const model::PortRef& ref, const catalogue::PortType& port) {
    using namespace poe_editor_detail;
    if (!supplies(port)) return;
    form.section(tr("PoE"));
    form.check(
        tr("Gives power"), [&form, ref] { return !settings(form, ref).off; },
        [&form, ref](bool on) { set(form, ref, tr("Switch PoE"), [&](auto& poe) { poe.off = !on; }); });
    form.choice(
        tr("Priority"),
        [] {
            return std::vector<Option>{{tr("low"), "low"}, {tr("high"), "high"}, {tr("critical"), "critical"}};
        },
        [&form, ref] { return shown(std::string(base::enum_text(settings(form, ref).priority))); },
        [&form, ref](const QString& text) {
            set(form, ref, tr("Change PoE priority"), [&](auto& poe) {
                poe.priority =
                    base::parse_enum<model::PoePriority>(text.toStdString()).value_or(model::PoePriority::low);
            });
        });
    form.field(
        tr("Gives at most"),
        [&form, ref] {
            const auto limit = settings(form, ref).limit;
            return limit ? shown(base::print(*limit)) : QString();
        },
        [&form, ref](const QString& text) { return set_limit(form, ref, text); });
}

}  // namespace streamwright::app
