// VLANs: the list of them at the design's properties, and one VLAN's number, subnet, leases and who asks in it.
#include "app/panels/properties/editors.h"
#include "app/words/words.h"
#include "core/base/net_address.h"
#include "core/model/new_vlan.h"

#include <QCoreApplication>

#include <algorithm>

namespace streamwright::app {

namespace vlan_editor_detail {

QString tr(const char* words) { return QCoreApplication::translate("properties", words); }

const model::Vlan* row(PropertyForm& form, model::VlanId id) { return form.design().vlans.find(id); }

std::optional<QString> set(PropertyForm& form, model::VlanId id, const QString& words,
                           const std::function<void(model::SetUpVlan&)>& change) {
    const auto* held = row(form, id);
    if (!held) return std::nullopt;
    model::SetUpVlan edit{*held, form.design().settings().usual_vlan == id, {}, {}};
    change(edit);
    return form.change(edit, words);
}

std::optional<QString> set_number(PropertyForm& form, model::VlanId id, const QString& text) {
    bool number = false;
    const int vid = text.trimmed().toInt(&number);
    if (!number) return tr("'%1' is no VLAN number; write a whole number from 1 to 4094.").arg(text);
    return set(form, id, tr("Change VLAN number"), [&](auto& edit) { edit.row.vid = vid; });
}

std::optional<QString> set_subnet(PropertyForm& form, model::VlanId id, const QString& text) {
    const auto subnet = base::parse_ipv4_prefix(text.trimmed().toStdString());
    if (!subnet && !text.trimmed().isEmpty())
        return tr("'%1' is not a subnet; write its first address and its length, such as 10.20.0.0/22.").arg(text);
    return set(form, id, tr("Change subnet"), [&](auto& edit) { edit.row.subnet = subnet; });
}

std::optional<QString> set_gateway(PropertyForm& form, model::VlanId id, const QString& text) {
    const auto gateway = base::parse_ipv4(text.trimmed().toStdString());
    if (!gateway && !text.trimmed().isEmpty())
        return tr("'%1' is not an IPv4 address; write four numbers, such as 10.20.0.1, or leave it empty.").arg(text);
    return set(form, id, tr("Change gateway"), [&](auto& edit) { edit.row.gateway = gateway; });
}

QString leases(const model::Vlan* vlan) {
    if (!vlan || !vlan->lease_first || !vlan->lease_last) return {};
    return shown(base::print(*vlan->lease_first)) + QStringLiteral(" - ") + shown(base::print(*vlan->lease_last));
}

std::optional<QString> set_leases(PropertyForm& form, model::VlanId id, const QString& text) {
    auto ends = QString(text).replace(QChar(0x2013), QLatin1Char('-')).split(QLatin1Char('-'));
    std::optional<base::Ipv4> first, last;
    if (ends.size() == 2) {
        first = base::parse_ipv4(ends[0].trimmed().toStdString());
        last = base::parse_ipv4(ends[1].trimmed().toStdString());
    }
    if ((!first || !last) && !text.trimmed().isEmpty())
        return tr("'%1' is not a range of addresses; write the first and the last, such as 10.20.0.100 - 10.20.0.199.")
            .arg(text);
    return set(form, id, tr("Change leases"),
               [&](auto& edit) { edit.row.lease_first = first, edit.row.lease_last = last; });
}

void add_purpose(PropertyForm& form, model::VlanId id) {
    form.choice(
        tr("Purpose"),
        [] {
            return std::vector<PropertyForm::Option>{{tr("AV streams"), "av"},
                                                     {tr("control"), "control"},
                                                     {tr("corporate"), "corporate"},
                                                     {tr("wireless"), "wireless"}};
        },
        [&form, id] {
            const auto* held = row(form, id);
            return held ? shown(std::string(base::enum_text(held->purpose))) : QString();
        },
        [&form, id](const QString& purpose) {
            if (const auto parsed = base::parse_enum<model::VlanPurpose>(purpose.toStdString()))
                set(form, id, tr("Change purpose"), [&](auto& edit) { edit.row.purpose = *parsed; });
        });
}

void show_use(Figures& figures, const model::Design& design, model::VlanId id) {
    figures.section(tr("In use"));
    const auto named_on_ports = std::ranges::count_if(design.port_overrides, [&](const model::PortOverride& port) {
        return port.untagged == id || std::ranges::find(port.tagged, id) != port.tagged.end();
    });
    figures.figure(tr("Ports set to it"), QString::number(named_on_ports));
    figures.figure(tr("Streams in it"),
                   QString::number(std::ranges::count_if(design.streams, [&](const model::Stream& stream) {
                       return stream.vlan == id || (!stream.vlan && design.settings().usual_vlan == id);
                   })));
    QStringList asking;
    for (const auto& device : design.devices)
        for (const auto& querier : device.bridging.queriers)
            if (querier.vlan == id)
                asking << shown(device.tag) + (querier.address
                                                   ? QStringLiteral(", ") + shown(base::print(*querier.address))
                                                   : QString());
    if (asking.isEmpty()) asking << tr("none; set one at a switch");
    for (const auto& each : asking) figures.figure(tr("Querier"), each);
}

/// The button sits in a form that its own click replaces.
void later(QObject& receiver, std::function<void()> act) {
    QMetaObject::invokeMethod(&receiver, std::move(act), Qt::QueuedConnection);
}

void add_one(Document& document, Selection& selection) {
    const auto& design = document.design();
    const auto row = model::new_vlan(design, document.ids().next<model::VlanId>());
    const bool first = design.vlans.empty();
    if (document.edit(model::SetUpVlan{row, first, {}, {}}, tr("Add VLAN %1").arg(row.vid)))
        selection.set(Chosen(row.id));
}

}  // namespace vlan_editor_detail

QString vlan_name(const model::Vlan& vlan) {
    return QStringLiteral("%1 %2").arg(vlan.vid).arg(shown(vlan.name)).trimmed();
}

std::vector<const model::Vlan*> vlans_by_number(const model::Design& design) {
    std::vector<const model::Vlan*> rows;
    for (const auto& each : design.vlans) rows.push_back(&each);
    std::ranges::stable_sort(rows, {}, &model::Vlan::vid);
    return rows;
}

void add_vlans(PropertyForm& form, Selection& selection) {
    using namespace vlan_editor_detail;
    form.live([&form, &selection](Figures& figures) {
        figures.section(tr("VLANs"));
        const auto rows = vlans_by_number(form.design());
        if (rows.empty()) figures.words(tr("None yet: every port is in one network without a number."));
        for (const auto* vlan : rows) {
            QString words = vlan_name(*vlan);
            if (vlan->subnet) words += QStringLiteral(" · ") + shown(base::print(*vlan->subnet));
            figures.button(words, [&selection, id = vlan->id] {
                later(selection, [&selection, id] { selection.set(Chosen(id)); });
            });
        }
        figures.button(tr("Add a VLAN"), [&form, &selection] {
            later(selection, [&document = form.document(), &selection] { add_one(document, selection); });
        });
    });
}

PropertyForm* vlan_editor(const EditorContext& context, model::VlanId id, QWidget* parent) {
    using namespace vlan_editor_detail;
    auto* form = new PropertyForm(context.document, context.theme, parent);
    const auto* vlan = row(*form, id);
    if (!vlan) return form;
    form->head({}, tr("VLAN %1").arg(vlan->vid), shown(vlan->name));
    form->findings([id](const analysis::Subject& subject) { return subject == analysis::Subject(id); });
    form->section(tr("VLAN"));
    const auto text_of = [form, id](auto read) {
        return [form, id, read] { return row(*form, id) ? QString(read(*row(*form, id))) : QString(); };
    };
    form->field(tr("Number"), text_of([](const model::Vlan& each) { return QString::number(each.vid); }),
                [form, id](const QString& text) { return set_number(*form, id, text); });
    form->field(
        tr("Name"), text_of([](const model::Vlan& each) { return shown(each.name); }), [form, id](const QString& text) {
            return set(*form, id, tr("Rename VLAN"), [&](auto& edit) { edit.row.name = text.trimmed().toStdString(); });
        });
    add_purpose(*form, id);
    form->field(tr("Subnet"), text_of([](const model::Vlan& each) {
                    return each.subnet ? shown(base::print(*each.subnet)) : QString();
                }),
                [form, id](const QString& text) { return set_subnet(*form, id, text); });
    form->field(tr("Gateway"), text_of([](const model::Vlan& each) {
                    return each.gateway ? shown(base::print(*each.gateway)) : QString();
                }),
                [form, id](const QString& text) { return set_gateway(*form, id, text); });
    form->field(
        tr("Leased"), [form, id] { return leases(row(*form, id)); },
        [form, id](const QString& text) { return set_leases(*form, id, text); });
    form->check(
        tr("Untagged on ports that say nothing"), [form, id] { return form->design().settings().usual_vlan == id; },
        [form, id](bool on) { set(*form, id, tr("Change the usual VLAN"), [&](auto& edit) { edit.usual = on; }); });
    form->live([form, id, &selection = context.selection](Figures& figures) {
        show_use(figures, form->design(), id);
        figures.button(tr("Remove this VLAN"), [form, id, &selection] {
            later(selection,
                  [&document = form->document(), id] { document.edit(model::Remove{{id}}, tr("Remove VLAN")); });
        });
        figures.button(tr("Back to the design"),
                       [&selection] { later(selection, [&selection] { selection.clear(); }); });
    });
    form->finish();
    return form;
}

}  // namespace streamwright::app
