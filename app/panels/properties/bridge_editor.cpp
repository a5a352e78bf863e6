// How a switch is set up: its place in the spanning tree, snooping, and in which VLANs it asks for members.
#include "app/panels/properties/editors.h"
#include "app/words/words.h"
#include "core/analysis/rule_help.h"
#include "core/base/net_address.h"

#include <QCoreApplication>

#include <algorithm>

namespace streamwright::app {

namespace bridge_editor_detail {

QString tr(const char* words) { return QCoreApplication::translate("properties", words); }

const model::Device* row(PropertyForm& form, model::DeviceId id) { return form.design().devices.find(id); }

std::optional<QString> configure(PropertyForm& form, model::DeviceId id, const QString& words,
                                 const std::function<void(model::BridgeSettings&)>& change) {
    const auto* device = row(form, id);
    if (!device) return std::nullopt;
    model::ConfigureDevice edit{*device};
    change(edit.row.bridging);
    return form.change(edit, words);
}

std::optional<QString> set_priority(PropertyForm& form, model::DeviceId id, const QString& text) {
    bool number = false;
    const int priority = text.toInt(&number);
    if (!text.isEmpty() && (!number || priority < 0 || priority > 61440 || priority % 4096 != 0))
        return tr("A bridge priority is a multiple of 4096 from 0 to 61440; empty takes the usual 32768.");
    return configure(form, id, tr("Change bridge priority"), [&](model::BridgeSettings& bridging) {
        bridging.priority = text.isEmpty() ? std::nullopt : std::optional(priority);
    });
}

/// A timer of the tree in seconds; empty: the standard's.
void add_timer(PropertyForm& form, model::DeviceId id, const QString& label,
               std::optional<int> model::BridgeSettings::*member) {
    form.field(
        label,
        [&form, id, member] {
            const auto* device = row(form, id);
            return device && device->bridging.*member ? QString::number(*(device->bridging.*member)) : QString();
        },
        [&form, id, label, member](const QString& text) -> std::optional<QString> {
            bool number = false;
            const int seconds = text.toInt(&number);
            if (!text.isEmpty() && !number)
                return tr("'%1' is not a time in seconds; empty takes the standard's.").arg(text);
            return configure(form, id, tr("Change %1").arg(label.toLower()), [&](model::BridgeSettings& bridging) {
                bridging.*member = text.isEmpty() ? std::nullopt : std::optional(seconds);
            });
        });
}

const model::Querier* querier(PropertyForm& form, model::DeviceId id, model::VlanId vlan) {
    const auto* device = row(form, id);
    if (!device) return nullptr;
    const auto& all = device->bridging.queriers;
    const auto found = std::ranges::find(all, vlan, &model::Querier::vlan);
    return found == all.end() ? nullptr : &*found;
}

std::optional<base::Ipv4> address_to_ask_from(PropertyForm& form, model::DeviceId id, model::VlanId vlan) {
    const auto* held = form.design().vlans.find(vlan);
    const auto* device = row(form, id);
    if (!held || !device) return std::nullopt;
    return analysis::querier_address(form.document().analyser().facts().get<analysis::AddressPlan>(), *device, *held);
}

void ask(PropertyForm& form, model::DeviceId id, model::VlanId vlan, bool on) {
    const auto from = on ? address_to_ask_from(form, id, vlan) : std::nullopt;
    configure(form, id, on ? tr("Make it the querier") : tr("No longer the querier"), [&](model::BridgeSettings& b) {
        std::erase_if(b.queriers, [&](const model::Querier& each) { return each.vlan == vlan; });
        if (on) b.queriers.push_back({vlan, from});
    });
}

std::optional<QString> ask_from(PropertyForm& form, model::DeviceId id, model::VlanId vlan, const QString& text) {
    const auto address = base::parse_ipv4(text.trimmed().toStdString());
    if (!address && !text.trimmed().isEmpty())
        return tr("'%1' is not an IPv4 address; write four numbers, such as 10.20.0.2, or leave it empty to ask from "
                  "0.0.0.0.")
            .arg(text);
    return configure(form, id, tr("Change the querier's address"), [&](model::BridgeSettings& b) {
        for (auto& each : b.queriers)
            if (each.vlan == vlan) each.address = address;
    });
}

void add_queriers(PropertyForm& form, const EditorContext& context, model::DeviceId id) {
    const auto vlans = vlans_by_number(form.design());
    if (vlans.empty())
        form.live([&form, &selection = context.selection](Figures& figures) {
            if (!form.design().vlans.empty()) return;
            figures.words(tr("A querier asks within a VLAN; the design has none yet."));
            figures.button(tr("To the design's VLANs"), [&selection] {
                QMetaObject::invokeMethod(
                    &selection, [&selection] { selection.clear(); }, Qt::QueuedConnection);
            });
        });
    for (const auto* vlan : vlans) {
        form.check(
            tr("Querier in VLAN %1").arg(vlan_name(*vlan)),
            [&form, id, vlan = vlan->id] { return querier(form, id, vlan) != nullptr; },
            [&form, id, vlan = vlan->id](bool on) { ask(form, id, vlan, on); });
        if (querier(form, id, vlan->id))
            form.field(
                tr("asks from"),
                [&form, id, vlan = vlan->id] {
                    const auto* held = querier(form, id, vlan);
                    return held && held->address ? shown(base::print(*held->address)) : QString();
                },
                [&form, id, vlan = vlan->id](const QString& text) { return ask_from(form, id, vlan, text); });
    }
}

}  // namespace bridge_editor_detail

void add_bridging(PropertyForm& form, const EditorContext& context, model::DeviceId id,
                  const catalogue::DeviceType& type) {
    using namespace bridge_editor_detail;
    if (!type.bridging || type.kind != catalogue::DeviceKind::network_switch) return;
    form.field(
        tr("Priority"),
        [&form, id] {
            const auto* device = row(form, id);
            return device && device->bridging.priority ? QString::number(*device->bridging.priority) : QString();
        },
        [&form, id](const QString& text) { return set_priority(form, id, text); });
    form.check(
        tr("IGMP snooping"), [&form, id] { return row(form, id) && !row(form, id)->bridging.snooping_off; },
        [&form, id](bool on) {
            configure(form, id, tr("Change snooping"), [&](model::BridgeSettings& b) { b.snooping_off = !on; });
        });
    form.check(
        tr("Leave fast with one receiver"), [&form, id] { return row(form, id) && row(form, id)->bridging.fast_leave; },
        [&form, id](bool on) {
            configure(form, id, tr("Change fast leave"), [&](model::BridgeSettings& b) { b.fast_leave = on; });
        });
    form.check(
        tr("Spanning tree"), [&form, id] { return row(form, id) && !row(form, id)->bridging.tree_off; },
        [&form, id](bool on) {
            configure(form, id, tr("Change spanning tree"), [&](model::BridgeSettings& b) { b.tree_off = !on; });
        });
    add_timer(form, id, tr("Hello time, s"), &model::BridgeSettings::hello_s);
    add_timer(form, id, tr("Message age, s"), &model::BridgeSettings::max_age_s);
    add_timer(form, id, tr("Forward delay, s"), &model::BridgeSettings::forward_delay_s);
    add_queriers(form, context, id);
}

}  // namespace streamwright::app
