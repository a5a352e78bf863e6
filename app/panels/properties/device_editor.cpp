// Properties of a device: identity, place, role, addresses, streams, and the numbers of its links and power.
#include "app/canvas/subject_words.h"
#include "app/panels/properties/editors.h"
#include "app/panels/properties/traffic.h"
#include "app/render/role_icon.h"
#include "app/words/words.h"
#include "core/base/net_address.h"
#include "core/model/mating.h"

#include <QCoreApplication>

#include <algorithm>
#include <map>

namespace streamwright::app {

namespace device_editor_detail {

QString tr(const char* words) { return QCoreApplication::translate("properties", words); }

std::optional<QString> configure(PropertyForm& form, model::DeviceId id, const QString& words,
                                 const std::function<void(model::Device&)>& change) {
    const auto* device = form.design().devices.find(id);
    if (!device) return std::nullopt;
    model::ConfigureDevice edit{*device};
    change(edit.row);
    return form.change(edit, words);
}

const model::Device* row(PropertyForm& form, model::DeviceId id) { return form.design().devices.find(id); }

void add_identity(PropertyForm& form, model::DeviceId id) {
    form.section(tr("Identity"));
    form.field(
        tr("Tag"), [&form, id] { return row(form, id) ? shown(row(form, id)->tag) : QString(); },
        [&form, id](const QString& text) {
            return form.change(model::Rename{id, text.toStdString(), {}}, tr("Rename to %1").arg(text));
        });
    form.field(
        tr("Note"), [&form, id] { return row(form, id) ? shown(row(form, id)->note) : QString(); },
        [&form, id](const QString& text) {
            return form.change(model::Rename{id, {}, text.toStdString()}, tr("Change note"));
        });
    form.choice(
        tr("Room"), [&form] { return room_options(form.design()); },
        [&form, id] {
            const auto* device = row(form, id);
            return device && device->room ? shown(device->room->text()) : QString();
        },
        [&form, id](const QString& room) {
            const auto* device = row(form, id);
            if (!device) return;
            form.change(
                model::StandInRoom{
                    {id}, model::RoomId::parse(room.toStdString()), device->standing, device->rack, device->chassis},
                tr("Change room"));
        });
}

void add_role(PropertyForm& form, model::DeviceId id, const catalogue::DeviceType& type) {
    if (!type.codec || type.codec->roles.size() < 2 || type.codec->roles_at_once) return;
    form.choice(
        tr("Role here"),
        [] {
            return std::vector<PropertyForm::Option>{
                {tr("undecided"), {}}, {tr("encoder"), "encoder"}, {tr("decoder"), "decoder"}};
        },
        [&form, id] {
            const auto* device = row(form, id);
            if (!device || device->roles.size() != 1) return QString();
            return QString::fromUtf8(base::enum_text(device->roles.front()).data());
        },
        [&form, id](const QString& role) {
            configure(form, id, tr("Change role"), [&](model::Device& device) {
                device.roles.clear();
                if (const auto parsed = base::parse_enum<catalogue::Role>(role.toStdString()))
                    device.roles.push_back(*parsed);
            });
        });
}

QString control_words(catalogue::ControlMethod method) {
    switch (method) {
        case catalogue::ControlMethod::ir:
            return tr("infrared");
        case catalogue::ControlMethod::serial:
            return tr("serial");
        case catalogue::ControlMethod::network:
            return tr("network");
        case catalogue::ControlMethod::contact:
            return tr("contact");
    }
    return {};
}

/// What is asked for here among what the type takes.
void add_control(PropertyForm& form, model::DeviceId id, const catalogue::DeviceType& type) {
    if (type.controlled_by.empty()) return;
    std::vector<PropertyForm::Option> options{{tr("any that it takes"), {}}};
    for (const auto method : type.controlled_by)
        options.push_back({control_words(method), shown(std::string(base::enum_text(method)))});
    form.choice(
        tr("Controlled by"), [options] { return options; },
        [&form, id] {
            const auto* device = row(form, id);
            return device && device->control ? shown(std::string(base::enum_text(*device->control))) : QString();
        },
        [&form, id](const QString& method) {
            configure(form, id, tr("Change control"), [&](model::Device& device) {
                device.control = base::parse_enum<catalogue::ControlMethod>(method.toStdString());
            });
        });
}

/// Delay set on what passes sound on, to hold it together with the pictures.
void add_sound_delay(PropertyForm& form, model::DeviceId id, const catalogue::DeviceType& type) {
    const auto kind = type.kind;
    using Kind = catalogue::DeviceKind;
    if (kind != Kind::audio_processor && kind != Kind::amplifier && kind != Kind::speaker && !type.codec) return;
    form.field(
        tr("Sound delay"),
        [&form, id] {
            const auto* device = row(form, id);
            return device && device->sound_delay ? shown(base::print(*device->sound_delay)) : QString();
        },
        [&form, id](const QString& text) -> std::optional<QString> {
            std::optional<base::Duration> delay;
            if (!text.trimmed().isEmpty()) {
                const auto typed = base::parse_duration(text.toStdString());
                if (!typed) return sentence(typed.error());
                delay = *typed;
            }
            return configure(form, id, tr("Change sound delay"),
                             [&](model::Device& device) { device.sound_delay = delay; });
        });
}

/// Its own pixels, and how large they light where the type says so.
void show_image(Figures& figures, const catalogue::ImageFacts& image, const base::NumberStyle& numbers) {
    figures.figure(tr("Pixels"), QStringLiteral("%1 x %2").arg(image.pixels_across).arg(image.pixels_down));
    if (image.width && image.height)
        figures.figure(tr("Lit image"), tr("%1 x %2").arg(shown(base::print(*image.width, numbers)),
                                                          shown(base::print(*image.height, numbers))));
}

void add_network(PropertyForm& form, model::DeviceId id, const catalogue::DeviceType& type) {
    const bool on_network =
        std::ranges::any_of(type.ports, [](const auto& p) { return catalogue::is_network(p.signal); });
    if (!on_network || type.kind == catalogue::DeviceKind::patch_panel) return;
    form.section(tr("Network"));
    form.field(
        tr("Host name"), [&form, id] { return row(form, id) ? shown(row(form, id)->host_name) : QString(); },
        [&form, id](const QString& text) {
            return configure(form, id, tr("Change host name"),
                             [&](model::Device& device) { device.host_name = text.toStdString(); });
        });
    form.field(
        tr("Address"),
        [&form, id] {
            const auto* device = row(form, id);
            if (!device || device->addresses.empty()) return QString();
            const auto& address = device->addresses.front().address;
            return address ? shown(base::print(*address)) : tr("leased");
        },
        [&form, id](const QString& text) -> std::optional<QString> {
            const auto address = base::parse_ipv4(text.toStdString());
            if (!address && !text.isEmpty() && text != tr("leased"))
                return tr("'%1' is not an IPv4 address; write four numbers, such as 10.20.0.11, or leave it empty.")
                    .arg(text);
            return configure(form, id, tr("Change address"), [&](model::Device& device) {
                if (device.addresses.empty()) device.addresses.emplace_back();
                if (text.isEmpty())
                    device.addresses.erase(device.addresses.begin());
                else
                    device.addresses.front().address = address;
            });
        });
}

void show_ports(Figures& figures, const model::Design& design, model::DeviceId id) {
    const auto* device = design.devices.find(id);
    const auto* type = device ? design.type_of(*device) : nullptr;
    if (!type) return;
    std::map<model::PortKey, std::pair<const model::Cable*, std::optional<model::CableEnd>>> far;
    for (const auto& cable : design.cables) {
        if (cable.a && cable.a->port.device == id) far[cable.a->port.port] = {&cable, cable.b};
        if (cable.b && cable.b->port.device == id) far[cable.b->port.port] = {&cable, cable.a};
    }
    int free = 0;
    figures.section(tr("Ports"), tr("%1 in all").arg(type->ports.size()));
    for (const auto& port : type->ports) {
        const auto found = far.find(port.key);
        if (found == far.end()) {
            ++free;
            continue;
        }
        const auto& [cable, end] = found->second;
        const auto to = end ? shown(model::port_name(design, end->port)) : tr("open end");
        figures.figure(shown(port.label.empty() ? port.key.text : port.label), to + " · " + shown(cable->tag));
    }
    figures.figure(tr("Free"), QString::number(free));
}

}  // namespace device_editor_detail

std::vector<PropertyForm::Option> room_options(const model::Design& design) {
    std::vector<PropertyForm::Option> options{{device_editor_detail::tr("none"), {}}};
    for (const auto& room : design.rooms)
        options.push_back({shown(room.number + (room.number.empty() ? "" : " ") + room.name), shown(room.id.text())});
    std::sort(options.begin() + 1, options.end(), [](const auto& a, const auto& b) { return a.label < b.label; });
    return options;
}

PropertyForm* device_editor(const EditorContext& context, model::DeviceId id, QWidget* parent) {
    using namespace device_editor_detail;
    auto* form = new PropertyForm(context.document, context.theme, parent);
    const auto* device = form->design().devices.find(id);
    const auto* type = device ? form->design().type_of(*device) : nullptr;
    if (!device) return form;
    form->head(type ? role_icon(*type, context.theme) : QIcon(), shown(device->tag),
               type ? shown(type->name) : QString());
    form->findings([id](const analysis::Subject& subject) {
        if (const auto* port = std::get_if<model::PortRef>(&subject)) return port->device == id;
        return subject == analysis::Subject(id);
    });
    add_identity(*form, id);
    if (type) {
        add_role(*form, id, *type);
        add_control(*form, id, *type);
        add_sound_delay(*form, id, *type);
        form->live([form, type = *type](Figures& figures) {
            figures.figure(tr("Maker"), shown(type.maker + (type.family.empty() ? "" : " " + type.family)));
            if (type.image) show_image(figures, *type.image, phrasebook(form->design()).numbers);
        });
        add_network(*form, id, *type);
        add_bridging(*form, context, id, *type);
        add_poe_supply(*form, id, *type);
        add_streams(*form, context, id);
        add_mounting(*form, context, id, *type);
        add_wall_of(*form, context, id);
    }
    form->live([form, &selection = context.selection, id](Figures& figures) {
        show_device_loads(figures, form->document(), id, selection.preset());
        show_latency(figures, form->document(), id, selection.preset());
        show_device_poe(figures, form->document(), id);
        show_ports(figures, form->design(), id);
    });
    form->finish();
    return form;
}

}  // namespace streamwright::app
