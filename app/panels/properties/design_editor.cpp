// Properties of the design as a whole, shown while nothing is selected; and of frames, notes and several things.
#include "app/panels/properties/editors.h"
#include "app/words/words.h"

#include <QCoreApplication>

#include <algorithm>

namespace streamwright::app {

namespace design_editor_detail {

QString tr(const char* words) { return QCoreApplication::translate("properties", words); }

void add_text(PropertyForm& form, const QString& label, std::string model::Settings::*member) {
    form.field(
        label, [&form, member] { return shown(form.design().settings().*member); },
        [&form, label, member](const QString& text) {
            return change_settings(form, tr("Change %1").arg(label.toLower()),
                                   [&](model::Settings& settings) { settings.*member = text.toStdString(); });
        });
}

void add_checks(PropertyForm& form) {
    form.section(tr("Checks"));
    form.field(
        tr("Headroom"), [&form] { return QStringLiteral("%1 %").arg(form.design().settings().headroom_percent); },
        [&form](const QString& text) -> std::optional<QString> {
            bool number = false;
            QString digits = text;
            const int percent = digits.remove('%').trimmed().toInt(&number);
            if (!number || percent < 1 || percent > 100)
                return tr("'%1' is not a share of a link; write a whole number from 1 to 100.").arg(text);
            return change_settings(form, tr("Change headroom"),
                                   [&](model::Settings& s) { s.headroom_percent = percent; });
        });
    form.field(
        tr("Cables at"),
        [&form] {
            const auto hottest = form.design().settings().cable_temperature;
            return hottest ? shown(base::print(*hottest)) : QString();
        },
        [&form](const QString& text) -> std::optional<QString> {
            if (text.isEmpty())
                return change_settings(form, tr("Change temperature"),
                                       [](model::Settings& s) { s.cable_temperature.reset(); });
            const auto hottest = base::parse_temperature(text.toStdString());
            if (!hottest) return sentence(hottest.error());
            return change_settings(form, tr("Change temperature"),
                                   [&](model::Settings& s) { s.cable_temperature = *hottest; });
        });
    form.choice(
        tr("Pictures outlive"),
        [] {
            return std::vector<PropertyForm::Option>{{tr("nothing asked"), "nothing"},
                                                     {tr("any one link"), "link"},
                                                     {tr("any one link or switch"), "link_or_switch"}};
        },
        [&form] { return shown(std::string(base::enum_text(form.design().settings().survive))); },
        [&form](const QString& what) {
            change_settings(form, tr("Change what pictures outlive"), [&](model::Settings& s) {
                s.survive = base::parse_enum<model::Survival>(what.toStdString()).value_or(model::Survival::nothing);
            });
        });
    form.choice(
        tr("Lengths in"),
        [] {
            return std::vector<PropertyForm::Option>{{tr("metres"), "metric"}, {tr("feet"), "imperial"}};
        },
        [&form] { return form.design().settings().imperial ? QStringLiteral("imperial") : QStringLiteral("metric"); },
        [&form](const QString& system) {
            change_settings(form, tr("Change units"), [&](model::Settings& s) { s.imperial = system == "imperial"; });
        });
}

void add_lip_sync(PropertyForm& form) {
    form.choice(
        tr("Lip sync within"),
        [] {
            return std::vector<PropertyForm::Option>{{tr("ITU-R BT.1359-1, acceptable"), "bt1359"},
                                                     {tr("EBU R37"), "ebu_r37"},
                                                     {tr("ATSC IS-191"), "atsc_is191"}};
        },
        [&form] { return shown(std::string(base::enum_text(form.design().settings().lip_sync))); },
        [&form](const QString& window) {
            change_settings(form, tr("Change lip sync"), [&](model::Settings& s) {
                s.lip_sync = base::parse_enum<model::LipSync>(window.toStdString()).value_or(model::LipSync::bt1359);
            });
        });
}

void show_counts(Figures& figures, const model::Design& design) {
    figures.section(tr("In this design"));
    figures.figure(tr("Rooms"), QString::number(design.rooms.size()));
    figures.figure(tr("Devices"), QString::number(design.devices.size()));
    figures.figure(tr("Cables"), QString::number(design.cables.size()));
    figures.figure(tr("Streams"), QString::number(design.streams.size()));
    figures.figure(tr("Sheets"), QString::number(design.sheets.size()));
    if (!design.walls.empty()) figures.figure(tr("Video walls"), QString::number(design.walls.size()));
}

void add_preset(Document& document, Selection& selection) {
    model::Preset preset{document.ids().next<model::PresetId>()};
    for (const auto& each : document.design().presets) preset.number = std::max(preset.number, each.number + 1);
    preset.name = std::to_string(preset.number);  // read after the word: "preset 1"
    if (document.edit(model::AddRows{{preset}}, tr("Add preset"))) selection.set_preset(preset.id);
}

/// Whether its pictures are among those that must outlive failures; with none named, all are.
void add_outliving(PropertyForm& form, model::PresetId id, int number) {
    const auto named = [id](const model::Settings& settings) {
        return std::ranges::find(settings.survive_presets, id) != settings.survive_presets.end();
    };
    form.check(
        tr("Preset %1 must outlive").arg(number), [&form, named] { return named(form.design().settings()); },
        [&form, id](bool on) {
            change_settings(form, tr("Change which pictures outlive"), [&](model::Settings& settings) {
                std::erase(settings.survive_presets, id);
                if (on) settings.survive_presets.push_back(id);
            });
        });
}

void add_presets(PropertyForm& form, Selection& selection) {
    form.section(tr("Presets"));
    for (const auto& preset : form.design().presets)
        form.field(
            tr("Preset %1").arg(preset.number),
            [&form, id = preset.id] {
                const auto* held = form.design().presets.find(id);
                return held ? shown(held->name) : QString();
            },
            [&form, id = preset.id](const QString& text) {
                return form.change(model::Rename{id, text.toStdString(), {}}, tr("Rename preset"));
            });
    if (form.design().settings().survive != model::Survival::nothing)
        for (const auto& preset : form.design().presets) add_outliving(form, preset.id, preset.number);
    form.live([&form, &selection](Figures& figures) {
        figures.button(tr("Add a preset"), [&form, &selection] {
            QMetaObject::invokeMethod(
                &selection, [&document = form.document(), &selection] { add_preset(document, selection); },
                Qt::QueuedConnection);
        });
    });
}

}  // namespace design_editor_detail

std::optional<QString> change_settings(PropertyForm& form, const QString& words,
                                       const std::function<void(model::Settings&)>& change) {
    model::SetSettings edit{form.design().settings()};
    change(edit.row);
    return form.change(edit, words);
}

PropertyForm* design_editor(const EditorContext& context, QWidget* parent) {
    using namespace design_editor_detail;
    auto* form = new PropertyForm(context.document, context.theme, parent);
    form->head({}, tr("Design"), tr("nothing selected"));
    form->section(tr("Title block"));
    add_text(*form, tr("Title"), &model::Settings::title);
    add_text(*form, tr("Legal owner"), &model::Settings::owner);
    add_text(*form, tr("Department"), &model::Settings::department);
    add_text(*form, tr("Reference"), &model::Settings::reference);
    add_text(*form, tr("Number"), &model::Settings::number);
    add_text(*form, tr("Status"), &model::Settings::status);
    add_text(*form, tr("Created by"), &model::Settings::created_by);
    add_text(*form, tr("Approved by"), &model::Settings::approved_by);
    add_checks(*form);
    add_lip_sync(*form);
    add_cabling(*form);
    add_vlans(*form, context.selection);
    add_spares(*form);
    add_plan(*form);
    add_presets(*form, context.selection);
    add_walls(*form, context);
    form->live([form](Figures& figures) { show_counts(figures, form->design()); });
    form->finish();
    return form;
}

PropertyForm* frame_editor(const EditorContext& context, model::FrameId id, QWidget* parent) {
    using namespace design_editor_detail;
    auto* form = new PropertyForm(context.document, context.theme, parent);
    const auto* frame = form->design().room_frames.find(id);
    const auto* room = frame ? form->design().rooms.find(frame->room) : nullptr;
    if (!room) return form;
    form->head({}, shown(room->number), tr("room"));
    form->section(tr("Room"));
    const auto held = [form, room_id = room->id] { return form->design().rooms.find(room_id); };
    const auto put = [form, held](const QString& words, const std::function<void(model::Room&)>& change) {
        const auto* now = held();
        if (!now) return std::optional<QString>();
        auto next = *now;
        change(next);
        return form->change(model::AddRows{{next}}, words);
    };
    const std::pair<QString, std::string model::Room::*> texts[] = {{tr("Number"), &model::Room::number},
                                                                    {tr("Name"), &model::Room::name},
                                                                    {tr("Floor"), &model::Room::floor},
                                                                    {tr("Note"), &model::Room::note}};
    for (const auto& [label, member] : texts)
        form->field(
            label, [held, member = member] { return held() ? shown(held()->*member) : QString(); },
            [put, member = member](const QString& text) {
                return put(tr("Change room"), [&](model::Room& each) { each.*member = text.toStdString(); });
            });
    form->field(
        tr("Cable ways at"),
        [held] { return held() && held()->temperature ? shown(base::print(*held()->temperature)) : QString(); },
        [put](const QString& text) -> std::optional<QString> {
            std::optional<base::Temperature> warmth;
            if (!text.isEmpty()) {
                const auto typed = base::parse_temperature(text.toStdString());
                if (!typed) return sentence(typed.error());
                warmth = *typed;
            }
            return put(tr("Change temperature"), [&](model::Room& each) { each.temperature = warmth; });
        });
    add_viewing(*form, room->id);
    form->live([form, id](Figures& figures) {
        const auto* now = form->design().room_frames.find(id);
        if (!now) return;
        const auto in_room =
            std::ranges::count_if(form->design().devices, [&](const auto& device) { return device.room == now->room; });
        figures.figure(tr("Devices in it"), QString::number(in_room));
    });
    form->finish();
    return form;
}

PropertyForm* note_editor(const EditorContext& context, model::NoteId id, QWidget* parent) {
    using namespace design_editor_detail;
    auto* form = new PropertyForm(context.document, context.theme, parent);
    form->head({}, tr("Note"), {});
    form->field(
        tr("Text"),
        [form, id] {
            const auto* note = form->design().notes.find(id);
            return note ? shown(note->text) : QString();
        },
        [form, id](const QString& text) -> std::optional<QString> {
            const auto* note = form->design().notes.find(id);
            if (!note) return std::nullopt;
            auto next = *note;
            next.text = text.toStdString();
            return form->change(model::AddRows{{next}}, tr("Change note"));
        });
    form->finish();
    return form;
}

PropertyForm* several_editor(const EditorContext& context, QWidget* parent) {
    using namespace design_editor_detail;
    auto* form = new PropertyForm(context.document, context.theme, parent);
    auto& selection = context.selection;
    form->head({}, tr("%1 things").arg(selection.all().size()), tr("selected"));
    const auto devices = selection.of<model::DeviceId>();
    const auto cables = selection.of<model::CableId>();
    form->live([devices, cables](Figures& figures) {
        figures.section(tr("Selected"));
        figures.figure(tr("Devices"), QString::number(devices.size()));
        figures.figure(tr("Cables"), QString::number(cables.size()));
    });
    if (!devices.empty())
        form->choice(
            tr("Room of all"), [form] { return room_options(form->design()); }, [] { return QString("?"); },
            [form, devices](const QString& room) {
                form->change(model::StandInRoom{devices, model::RoomId::parse(room.toStdString()), {}, {}, {}},
                             tr("Change room"));
            });
    if (!cables.empty())
        form->field(
            tr("Length of all"), [] { return QString(); },
            [form, cables](const QString& text) -> std::optional<QString> {
                const auto length = base::parse_length(text.toStdString(), phrasebook(form->design()).numbers.system);
                if (!length) return sentence(length.error());
                return form->change(model::SetLength{cables, *length}, tr("Set lengths"));
            });
    form->finish();
    return form;
}

}  // namespace streamwright::app
