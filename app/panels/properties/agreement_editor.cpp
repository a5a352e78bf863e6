// What has been agreed for a link: how many different sources may cross it, by whom and when; and how the preset shown
// and the worst case within the agreement stand to it.
#include "app/panels/properties/editors.h"
#include "app/panels/properties/traffic.h"
#include "app/words/words.h"
#include "core/analysis/agreed_contention.h"
#include "core/model/edits/agree_contention.h"

#include <QCoreApplication>
#include <QDate>

namespace streamwright::app {

namespace agreement_editor_detail {

QString tr(const char* words) { return QCoreApplication::translate("properties", words); }

std::optional<model::AgreedContention> agreed(PropertyForm& form, model::CableId id) {
    const auto* cable = form.design().cables.find(id);
    return cable ? cable->agreed : std::nullopt;
}

/// A fresh agreement is taken as made today by the design's own role; both can be changed.
model::AgreedContention fresh(PropertyForm& form) {
    const auto& role = form.design().settings().created_by;
    return {1, role.empty() ? std::string("design") : role, QDate::currentDate().toString(Qt::ISODate).toStdString()};
}

std::optional<QString> set_number(PropertyForm& form, model::CableId id, const QString& text) {
    if (text.isEmpty()) return form.change(model::AgreeContention{id, std::nullopt}, tr("Clear agreed sources"));
    bool good = false;
    const int number = text.toInt(&good);
    if (!good) return tr("\"%1\" is no number of sources; type one such as 4, or nothing.").arg(text);
    auto row = agreed(form, id).value_or(fresh(form));
    row.sources = number;
    return form.change(model::AgreeContention{id, row}, tr("Agree on %1 sources").arg(number));
}

void add_text(PropertyForm& form, model::CableId id, const QString& label,
              std::string model::AgreedContention::*field) {
    form.field(
        label,
        [&form, id, field] {
            const auto row = agreed(form, id);
            return row ? shown((*row).*field) : QString();
        },
        [&form, id, field](const QString& text) -> std::optional<QString> {
            auto row = agreed(form, id);
            if (!row) return tr("Say first how many sources are agreed.");
            (*row).*field = text.toStdString();
            return form.change(model::AgreeContention{id, *row}, tr("Change agreement"));
        });
}

void show_direction(Figures& figures, const Document& document, const analysis::Agreement& agreement, int arc,
                    std::optional<model::PresetId> preset) {
    const auto& facts = document.analyser().facts();
    const auto& wiring = facts.get<graph::Wiring>();
    const auto& network = facts.get<graph::NetworkGraph>();
    const auto& paths = facts.get<analysis::VlanPaths>();
    const auto& forwarding = facts.get<analysis::Forwarding>();
    const auto ends = graph::arc_ends(wiring, facts.get<graph::Runs>(), network, arc);
    const auto* to = document.design().devices.find(ends.to);
    const auto across = analysis::sources_across(wiring, network, paths, facts.get<analysis::SpanningTrees>(),
                                                 forwarding, preset_load(facts, preset), arc);
    figures.figure(tr("to %1").arg(to ? shown(to->tag) : QString()),
                   tr("%1 of %2 sources").arg(across.size()).arg(agreement.agreed.sources));
    const auto& agreed = facts.get<analysis::WorstCase>().agreed;
    const auto within = agreed.find(arc);
    const auto& capacity = facts.get<analysis::LinkCapacity>().arcs[static_cast<std::size_t>(arc)];
    if (!facts.deferred_known || within == agreed.end() || !capacity) return;
    const auto share = base::percent_tenths(within->second.wire, *capacity);
    figures.figure(tr("at most"),
                   tr("%1, %2 %")
                       .arg(shown(print(within->second.wire.ceil(), phrasebook(document.design()).numbers)),
                            shown(base::print_decimal(share, 1))));
}

void show(Figures& figures, const Document& document, model::CableId id, std::optional<model::PresetId> preset) {
    const auto& facts = document.analyser().facts();
    const auto& network = facts.get<graph::NetworkGraph>();
    for (const auto& agreement :
         analysis::find_agreements(facts.get<graph::Wiring>(), facts.get<graph::Runs>(), network)) {
        if (agreement.cable != id) continue;
        for (const bool a_to_b : {true, false})
            show_direction(figures, document, agreement, network.link_arc(agreement.link, a_to_b), preset);
    }
}

}  // namespace agreement_editor_detail

void add_agreement(PropertyForm& form, const EditorContext& context, model::CableId id) {
    using namespace agreement_editor_detail;
    if (!is_trunk(form.document().analyser().facts(), id)) return;
    form.section(tr("Agreed contention"));
    form.field(
        tr("At most sources"),
        [&form, id] {
            const auto row = agreed(form, id);
            return row ? QString::number(row->sources) : QString();
        },
        [&form, id](const QString& text) { return set_number(form, id, text); });
    add_text(form, id, tr("Agreed by"), &model::AgreedContention::by);
    add_text(form, id, tr("Agreed on"), &model::AgreedContention::on);
    form.live([&form, &selection = context.selection, id](Figures& figures) {
        show(figures, form.document(), id, selection.preset());
    });
}

}  // namespace streamwright::app
