// Properties of a cable: ends, type, the chain of its length, the load of each direction, power.
#include "app/canvas/subject_words.h"
#include "app/panels/properties/editors.h"
#include "app/panels/properties/traffic.h"
#include "app/render/role_icon.h"
#include "app/tools/cable_choice.h"
#include "app/words/words.h"
#include "core/analysis/limit_chain.h"
#include "core/model/edits/connect.h"
#include "core/model/mating.h"

#include <QCoreApplication>
#include <QPainter>

#include <algorithm>

namespace streamwright::app {

namespace cable_editor_detail {

QString tr(const char* words) { return QCoreApplication::translate("properties", words); }

const model::Cable* row(PropertyForm& form, model::CableId id) { return form.design().cables.find(id); }

QIcon lug_icon(catalogue::Signal signal, const Theme& theme) {
    QPixmap picture(40, 40);
    picture.setDevicePixelRatio(2);
    picture.fill(Qt::transparent);
    QPainter painter(&picture);
    paint_lug(painter, signal, theme, {10, 10});
    painter.end();
    return picture;
}

QString end_words(const model::Design& design, const std::optional<model::CableEnd>& end) {
    return end ? shown(model::port_name(design, end->port)) : tr("open");
}

std::vector<PropertyForm::Option> type_options(PropertyForm& form, const Library& library, model::CableId id) {
    std::vector<PropertyForm::Option> options;
    const auto* cable = row(form, id);
    if (!cable) return options;
    const auto fits = [&](const std::shared_ptr<const catalogue::CableType>& type) {
        for (const auto& end : {cable->a, cable->b})
            if (end && model::refusal(form.design(), *type, end->port)) return false;
        return !cable->a || !cable->b ||
               model::cable_joins(*type, model::port_facts(form.design(), cable->a->port),
                                  model::port_facts(form.design(), cable->b->port));
    };
    for (const auto& each : form.design().cable_types)
        if (each.type->key == cable->type || fits(each.type))
            options.push_back({shown(each.type->name), shown(each.type->key.text)});
    for (const auto& type : library.cables)
        if (!form.design().cable_types.contains(type->key) && fits(type))
            options.push_back({shown(type->name), shown(type->key.text)});
    return options;
}

void set_type(PropertyForm& form, const Library& library, model::CableId id, const QString& key) {
    const auto* held = form.design().cable_types.find({key.toStdString()});
    const auto type = held ? held->type : library.cable({key.toStdString()});
    if (type) form.change(model::SetCableType{{id}, type}, tr("Change cable type"));
}

std::optional<QString> set_length(PropertyForm& form, model::CableId id, const QString& text) {
    if (text.isEmpty()) return form.change(model::SetLength{{id}, std::nullopt}, tr("Clear length"));
    const auto length = base::parse_length(text.toStdString(), phrasebook(form.design()).numbers.system);
    if (!length) return sentence(length.error());
    return form.change(model::SetLength{{id}, *length}, tr("Set length"));
}

/// What the run is held to, and what the limit is made of.
void show_limits(Figures& figures, const Document& document, int run) {
    const auto book = phrasebook(document.design());
    for (const auto& line : analysis::limit_chain(document.analyser().facts(), run)) {
        const auto label = shown(base::fill({line.pattern, line.values}, book));
        const auto figure = shown(base::print(line.figure, book));
        if (line.sum || line.over)
            figures.sum(label, figure, line.over);
        else
            figures.figure(label, figure);
    }
}

void show_length(Figures& figures, const Document& document, model::CableId id) {
    const auto& design = document.design();
    const auto& facts = document.analyser().facts();
    const auto& lengths = facts.get<analysis::CableLengths>();
    const auto& runs = facts.get<graph::Runs>();
    const auto& wiring = facts.get<graph::Wiring>();
    const auto index = wiring.cable_index(id);
    if (!index) return;
    const auto run = static_cast<std::size_t>(runs.run_of_cable[static_cast<std::size_t>(*index)]);
    const auto numbers = phrasebook(design).numbers;
    const auto words = [&](const std::optional<base::Length>& length) {
        return length ? shown(print(*length, numbers)) : tr("not known");
    };
    figures.section(tr("Length"));
    for (const int cable : runs.list[run].cables) {
        const auto& length = lengths.cables[static_cast<std::size_t>(cable)];
        const auto* wired = wiring.cables[static_cast<std::size_t>(cable)].row;
        const auto* held = design.cables.find(wired->id);
        const auto from = length.from == analysis::LengthFrom::made    ? tr("made length")
                          : length.from == analysis::LengthFrom::typed ? tr("as typed")
                                                                       : tr("nobody said");
        figures.figure(tr("%1, %2").arg(held ? shown(held->tag) : QString(), from), words(length.length));
    }
    const auto& sums = lengths.runs[run];
    if (sums.permanent && runs.list[run].cables.size() > 1) figures.figure(tr("Installed part"), words(sums.permanent));
    if (runs.list[run].cables.size() > 1) figures.sum(tr("Channel"), words(sums.channel));
    show_limits(figures, document, runs.run_of_cable[static_cast<std::size_t>(*index)]);
}

void show_ends(Figures& figures, PropertyForm& form, model::CableId id) {
    const auto* cable = row(form, id);
    if (!cable) return;
    figures.figure(tr("From"), end_words(form.design(), cable->a));
    figures.figure(tr("To"), end_words(form.design(), cable->b));
}

void show_rate(Figures& figures, const Document& document, model::CableId id) {
    const auto& facts = document.analyser().facts();
    const auto index = facts.get<graph::Wiring>().cable_index(id);
    if (!index) return;
    const auto run = static_cast<std::size_t>(facts.get<graph::Runs>().run_of_cable[static_cast<std::size_t>(*index)]);
    const auto& speeds = facts.get<analysis::LinkCapacity>().runs;
    if (run >= speeds.size() || !speeds[run].rate) return;
    QString rate = shown(print(*speeds[run].rate, phrasebook(document.design()).numbers));
    if (!speeds[run].phy.empty()) rate += QStringLiteral(", ") + shown(speeds[run].phy);
    figures.figure(tr("Rate"), rate);
}

void add_fields(PropertyForm& form, const EditorContext& context, model::CableId id) {
    form.field(
        tr("Label"), [&form, id] { return row(form, id) ? shown(row(form, id)->tag) : QString(); },
        [&form, id](const QString& text) {
            return form.change(model::Rename{id, text.toStdString(), {}}, tr("Rename to %1").arg(text));
        });
    form.section(tr("Cable"));
    form.choice(
        tr("Type"), [&form, library = context.library, id] { return type_options(form, *library, id); },
        [&form, id] { return row(form, id) ? shown(row(form, id)->type.text) : QString(); },
        [&form, library = context.library, id](const QString& key) { set_type(form, *library, id, key); });
    form.field(
        tr("Length"),
        [&form, id] {
            const auto* cable = row(form, id);
            return cable && cable->length ? shown(print(*cable->length, phrasebook(form.design()).numbers)) : QString();
        },
        [&form, id](const QString& text) { return set_length(form, id, text); });
    form.field(
        tr("Note"), [&form, id] { return row(form, id) ? shown(row(form, id)->note) : QString(); },
        [&form, id](const QString& text) {
            return form.change(model::Rename{id, {}, text.toStdString()}, tr("Change note"));
        });
}

/// What stands in the cages at its ends, of the medium that the cable is.
void add_transceivers(PropertyForm& form, const EditorContext& context, model::CableId id) {
    const auto* cable = row(form, id);
    if (!cable) return;
    const auto medium = [&form, id]() -> std::optional<catalogue::Medium> {
        const auto* held = row(form, id);
        const auto* type = held ? form.design().type_of(*held) : nullptr;
        return type ? std::optional(type->medium) : std::nullopt;
    };
    bool headed = false;
    for (const auto& end : {cable->a, cable->b}) {
        const auto facts = end ? model::port_facts(form.design(), end->port) : model::PortFacts{};
        if (!facts.port || !catalogue::is_cage(facts.port->connector)) continue;
        if (!headed) form.section(tr("Transceivers"));
        headed = true;
        add_transceiver(form, context, end->port, tr("At %1").arg(shown(facts.device->tag)), medium);
    }
}

}  // namespace cable_editor_detail

PropertyForm* cable_editor(const EditorContext& context, model::CableId id, QWidget* parent) {
    using namespace cable_editor_detail;
    auto* form = new PropertyForm(context.document, context.theme, parent);
    const auto* cable = row(*form, id);
    if (!cable) return form;
    const auto* type = form->design().type_of(*cable);
    const auto signal = type ? type->signal : catalogue::Signal::copper;
    form->head(lug_icon(signal, context.theme), shown(cable->tag), signal_words(signal));
    form->findings([id](const analysis::Subject& subject) { return subject == analysis::Subject(id); });
    form->section(tr("Ends"));
    form->live([form, id](Figures& figures) { show_ends(figures, *form, id); });
    add_fields(*form, context, id);
    add_fibre_work(*form, id);
    add_transceivers(*form, context, id);
    form->live([form, &selection = context.selection, id](Figures& figures) {
        show_rate(figures, form->document(), id);
        show_length(figures, form->document(), id);
        show_cable_loads(figures, form->document(), id, selection.preset());
        show_cable_poe(figures, form->document(), id);
    });
    add_agreement(*form, context, id);
    form->finish();
    return form;
}

}  // namespace streamwright::app
