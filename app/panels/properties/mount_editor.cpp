// Where a device is mounted: its rack, unit and face, or the chassis and slot of a card.
#include "app/panels/properties/editors.h"
#include "app/words/words.h"
#include "core/model/mounting.h"

#include <QCoreApplication>

#include <algorithm>

namespace streamwright::app {

namespace mount_editor_detail {

constexpr char new_rack[] = "new";

QString tr(const char* words) { return QCoreApplication::translate("properties", words); }

const model::Device* row(PropertyForm& form, model::DeviceId id) { return form.design().devices.find(id); }

model::StandInRoom standing_of(const model::Device& device) {
    return {{device.id}, device.room, device.standing, device.rack, device.chassis};
}

std::shared_ptr<const catalogue::DeviceType> usual_rack(const EditorContext& context) {
    std::shared_ptr<const catalogue::DeviceType> highest;
    for (const auto& type : context.library->devices)
        if (type->kind == catalogue::DeviceKind::rack && (!highest || type->size.rack_units > highest->size.rack_units))
            highest = type;
    return highest;
}

std::vector<PropertyForm::Option> rack_options(const model::Design& design) {
    std::vector<PropertyForm::Option> options{{tr("none"), {}}};
    for (const auto& rack : design.racks)
        options.push_back({tr("%1, %2 RU").arg(shown(rack.name)).arg(rack.units), shown(rack.id.text())});
    std::sort(options.begin() + 1, options.end(), [](const auto& a, const auto& b) { return a.label < b.label; });
    options.push_back({tr("a new rack"), QString::fromLatin1(new_rack)});
    return options;
}

void choose_rack(PropertyForm& form, const EditorContext& context, model::DeviceId id, const QString& value) {
    const auto* device = row(form, id);
    if (!device) return;
    if (value == QLatin1String(new_rack)) {
        if (const auto type = usual_rack(context))
            form.document().commit(model::mount_in_new_rack(form.design(), form.document().ids(), id, type),
                                   tr("Mount in a new rack"));
        return;
    }
    auto edit = standing_of(*device);
    edit.rack.reset();
    if (const auto rack = model::RackId::parse(value.toStdString())) {
        const auto unit = model::lowest_free_unit(form.design(), *rack, id, model::RackFace::front);
        edit.rack = model::RackPlace{*rack, unit.value_or(1), model::RackFace::front};
        edit.chassis.reset();
        if (const auto* held = form.design().racks.find(*rack); held && held->room) edit.room = held->room;
    }
    form.change(edit, tr("Mount in a rack"));
}

std::optional<QString> set_unit(PropertyForm& form, model::DeviceId id, const QString& text) {
    const auto* device = row(form, id);
    if (!device || !device->rack) return tr("Choose a rack first.");
    bool number = false;
    const int unit = text.trimmed().remove(QLatin1Char('U'), Qt::CaseInsensitive).toInt(&number);
    if (!number) return tr("'%1' is no rack unit; write the lowest one it takes, such as 12.").arg(text);
    auto edit = standing_of(*device);
    edit.rack->unit = unit;
    return form.change(edit, tr("Move in the rack"));
}

std::optional<QString> rename_rack(PropertyForm& form, model::DeviceId id, const QString& text) {
    const auto* device = row(form, id);
    const auto* rack = device && device->rack ? form.design().racks.find(device->rack->rack) : nullptr;
    if (!rack) return tr("Choose a rack first.");
    auto named = *rack;
    named.name = text.trimmed().toStdString();
    return form.change(model::AddRows{{named}}, tr("Rename the rack"));
}

void add_rack(PropertyForm& form, const EditorContext& context, model::DeviceId id) {
    form.section(tr("Rack"));
    form.choice(
        tr("Rack"), [&form] { return rack_options(form.design()); },
        [&form, id] {
            const auto* device = row(form, id);
            return device && device->rack ? shown(device->rack->rack.text()) : QString();
        },
        [&form, context, id](const QString& value) { choose_rack(form, context, id, value); });
    form.field(
        tr("Rack name"),
        [&form, id] {
            const auto* device = row(form, id);
            const auto* rack = device && device->rack ? form.design().racks.find(device->rack->rack) : nullptr;
            return rack ? shown(rack->name) : QString();
        },
        [&form, id](const QString& text) { return rename_rack(form, id, text); });
    form.field(
        tr("Lowest unit"),
        [&form, id] {
            const auto* device = row(form, id);
            return device && device->rack ? QStringLiteral("U%1").arg(device->rack->unit) : QString();
        },
        [&form, id](const QString& text) { return set_unit(form, id, text); });
    form.choice(
        tr("Face"),
        [] {
            return std::vector<PropertyForm::Option>{{tr("front"), "front"}, {tr("rear"), "rear"}};
        },
        [&form, id] {
            const auto* device = row(form, id);
            const bool rear = device && device->rack && device->rack->face == model::RackFace::rear;
            return rear ? QStringLiteral("rear") : QStringLiteral("front");
        },
        [&form, id](const QString& face) {
            const auto* device = row(form, id);
            if (!device || !device->rack) return;
            auto edit = standing_of(*device);
            edit.rack->face = face == "rear" ? model::RackFace::rear : model::RackFace::front;
            form.change(edit, tr("Turn to the other face"));
        });
}

std::vector<PropertyForm::Option> chassis_options(const model::Design& design, const std::string& form_of_card) {
    std::vector<PropertyForm::Option> options{{tr("none"), {}}};
    for (const auto& device : design.devices) {
        const auto* type = design.type_of(device);
        if (type && type->chassis && type->chassis->takes == form_of_card)
            options.push_back({shown(device.tag), shown(device.id.text())});
    }
    std::sort(options.begin() + 1, options.end(), [](const auto& a, const auto& b) { return a.label < b.label; });
    return options;
}

void choose_chassis(PropertyForm& form, model::DeviceId id, const QString& value) {
    const auto* device = row(form, id);
    if (!device) return;
    auto edit = standing_of(*device);
    edit.chassis.reset();
    if (const auto chassis = model::DeviceId::parse(value.toStdString())) {
        edit.chassis = model::ChassisPlace{*chassis, model::lowest_free_slot(form.design(), *chassis, id).value_or(1)};
        edit.rack.reset();
        if (const auto* held = form.design().devices.find(*chassis); held && held->room) edit.room = held->room;
    }
    form.change(edit, tr("Set into a chassis"));
}

std::optional<QString> set_slot(PropertyForm& form, model::DeviceId id, const QString& text) {
    const auto* device = row(form, id);
    if (!device || !device->chassis) return tr("Choose a chassis first.");
    bool number = false;
    const int slot = text.trimmed().toInt(&number);
    if (!number) return tr("'%1' is no slot; write its number, counted from 1.").arg(text);
    auto edit = standing_of(*device);
    edit.chassis->slot = slot;
    return form.change(edit, tr("Move in the chassis"));
}

void add_slot(PropertyForm& form, model::DeviceId id, const std::string& form_of_card) {
    form.section(tr("Chassis"));
    form.choice(
        tr("Chassis"), [&form, form_of_card] { return chassis_options(form.design(), form_of_card); },
        [&form, id] {
            const auto* device = row(form, id);
            return device && device->chassis ? shown(device->chassis->chassis.text()) : QString();
        },
        [&form, id](const QString& value) { choose_chassis(form, id, value); });
    form.field(
        tr("Slot"),
        [&form, id] {
            const auto* device = row(form, id);
            return device && device->chassis ? QString::number(device->chassis->slot) : QString();
        },
        [&form, id](const QString& text) { return set_slot(form, id, text); });
}

}  // namespace mount_editor_detail

void add_mounting(PropertyForm& form, const EditorContext& context, model::DeviceId device,
                  const catalogue::DeviceType& type) {
    if (type.card_form)
        mount_editor_detail::add_slot(form, device, *type.card_form);
    else if (type.size.rack_units > 0 && type.kind != catalogue::DeviceKind::rack)
        mount_editor_detail::add_rack(form, context, device);
}

}  // namespace streamwright::app
