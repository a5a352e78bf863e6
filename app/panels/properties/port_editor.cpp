// Properties of one port: what it is, what is plugged in, and what is set on it beyond its type.
#include "app/canvas/subject_words.h"
#include "app/panels/properties/editors.h"
#include "app/words/words.h"
#include "core/model/mating.h"

#include <QCoreApplication>

#include <algorithm>

namespace streamwright::app {

namespace port_editor_detail {

QString tr(const char* words) { return QCoreApplication::translate("properties", words); }

model::PortOverride row(PropertyForm& form, const model::PortRef& ref) {
    const auto* held = form.design().port_overrides.find(ref);
    return held ? *held : model::PortOverride::blank(ref);
}

std::optional<QString> set(PropertyForm& form, const model::PortRef& ref, const QString& words,
                           const std::function<void(model::PortOverride&)>& change,
                           std::shared_ptr<const catalogue::DeviceType> module = nullptr) {
    model::ConfigurePort edit{row(form, ref), std::move(module)};
    change(edit.row);
    return form.change(edit, words);
}

void show_facts(Figures& figures, PropertyForm& form, const model::PortRef& ref) {
    const auto facts = model::port_facts(form.design(), ref);
    if (!facts.port) return;
    figures.figure(tr("Carries"), signal_words(facts.port->signal));
    figures.figure(tr("Connector"), shown(catalogue::connector_name(facts.port->connector)));
    QStringList rates;
    for (const auto rate : facts.port->rates) rates << shown(print(rate));
    if (!rates.isEmpty()) figures.figure(tr("Rates"), rates.join(QStringLiteral(", ")));
    for (const auto& cable : form.design().cables)
        if ((cable.a && cable.a->port == ref) || (cable.b && cable.b->port == ref))
            figures.figure(tr("Cable"), shown(cable.tag));
}

void add_network(PropertyForm& form, const model::PortRef& ref) {
    form.section(tr("Settings"));
    form.choice(
        tr("VLAN, untagged"),
        [&form] {
            std::vector<PropertyForm::Option> options{{tr("usual"), {}}};
            for (const auto* vlan : vlans_by_number(form.design()))
                options.push_back({vlan_name(*vlan), shown(vlan->id.text())});
            return options;
        },
        [&form, ref] {
            const auto vlan = row(form, ref).untagged;
            return vlan ? shown(vlan->text()) : QString();
        },
        [&form, ref](const QString& vlan) {
            set(form, ref, tr("Set VLAN"),
                [&](auto& port) { port.untagged = model::VlanId::parse(vlan.toStdString()); });
        });
    for (const auto* vlan : vlans_by_number(form.design()))
        form.check(
            tr("Tagged in VLAN %1").arg(vlan_name(*vlan)),
            [&form, ref, id = vlan->id] {
                const auto tagged = row(form, ref).tagged;
                return std::ranges::find(tagged, id) != tagged.end();
            },
            [&form, ref, id = vlan->id](bool on) {
                set(form, ref, tr("Set VLAN"), [&](auto& port) {
                    std::erase(port.tagged, id);
                    if (on) port.tagged.push_back(id);
                    std::ranges::sort(port.tagged);
                });
            });
    const std::pair<QString, bool model::PortOverride::*> marks[] = {
        {tr("Multicast router port"), &model::PortOverride::router_port},
        {tr("May leave fast"), &model::PortOverride::fast_leave},
        {tr("Edge port"), &model::PortOverride::edge},
        {tr("BPDU guard"), &model::PortOverride::bpdu_guard},
        {tr("Loop guard"), &model::PortOverride::loop_guard},
        {tr("Disabled"), &model::PortOverride::disabled}};
    for (const auto& [label, member] : marks)
        form.check(
            label, [&form, ref, member = member] { return row(form, ref).*member; },
            [&form, ref, label = label, member = member](bool on) {
                set(form, ref, label, [&](auto& port) { port.*member = on; });
            });
}

QString module_name(const model::Design& design, const model::TypeKey& key) {
    const auto* row = design.device_types.find(key);
    return shown(row ? row->type->name : key.text);
}

/// The transceivers that work in the cage, of the medium where one is given; those of the library, and of the design
/// alone.
std::vector<PropertyForm::Option> transceivers(const model::Design& design, const Library& library,
                                               const catalogue::PortType& cage,
                                               std::optional<catalogue::Medium> medium) {
    std::vector<PropertyForm::Option> options{{tr("none"), {}}};
    const auto add = [&](const catalogue::DeviceType& type) {
        if (type.module && catalogue::module_works(*type.module, cage) &&
            (!medium || *medium == catalogue::Medium::other || type.module->medium == *medium))
            options.push_back({shown(type.name), shown(type.key.text)});
    };
    for (const auto& type : library.devices) add(*type);
    for (const auto& held : design.device_types)
        if (!library.device(held.type->key)) add(*held.type);
    return options;
}

}  // namespace port_editor_detail

void add_transceiver(PropertyForm& form, const EditorContext& context, const model::PortRef& ref, const QString& label,
                     std::function<std::optional<catalogue::Medium>()> medium) {
    using namespace port_editor_detail;
    const auto facts = model::port_facts(form.design(), ref);
    if (!facts.port || !catalogue::is_cage(facts.port->connector)) return;
    form.choice(
        label,
        [&form, library = context.library, cage = *facts.port, ref, medium] {
            auto options = transceivers(form.design(), *library, cage, medium ? medium() : std::nullopt);
            const auto held = row(form, ref).module;  // also what does not fit is shown for what it is
            const auto is_held = [&](const auto& option) { return held && option.value == shown(held->text); };
            if (held && std::ranges::none_of(options, is_held))
                options.push_back({module_name(form.design(), *held), shown(held->text)});
            return options;
        },
        [&form, ref] {
            const auto module = row(form, ref).module;
            return module ? shown(module->text) : QString();
        },
        [&form, ref, library = context.library](const QString& key) {
            const model::TypeKey type{key.toStdString()};
            set(
                form, ref, tr("Set transceiver"),
                [&](auto& port) { port.module = key.isEmpty() ? std::nullopt : std::optional(type); },
                key.isEmpty() || form.design().device_types.contains(type) ? nullptr : library->device(type));
        });
}

PropertyForm* port_editor(const EditorContext& context, const model::PortRef& ref, QWidget* parent) {
    using namespace port_editor_detail;
    auto* form = new PropertyForm(context.document, context.theme, parent);
    const auto facts = model::port_facts(form->design(), ref);
    if (!facts.device || !facts.port) return form;
    form->head({}, shown(facts.port->label.empty() ? ref.port.text : facts.port->label),
               tr("port of %1").arg(shown(facts.device->tag)));
    form->findings([ref](const analysis::Subject& subject) { return subject == analysis::Subject(ref); });
    form->section(tr("Port"));
    form->live([form, ref](Figures& figures) { show_facts(figures, *form, ref); });
    form->field(
        tr("Label on site"), [form, ref] { return shown(row(*form, ref).label); },
        [form, ref](const QString& text) {
            return set(*form, ref, tr("Label port"), [&](auto& port) { port.label = text.toStdString(); });
        });
    add_transceiver(*form, context, ref, tr("Transceiver"), {});
    add_picture(*form, context, ref);
    const auto* type = form->design().type_of(*facts.device);
    if (catalogue::is_network(facts.port->signal) && type && type->bridging) add_network(*form, ref);
    add_poe_port(*form, ref, *facts.port);
    form->finish();
    return form;
}

}  // namespace streamwright::app
