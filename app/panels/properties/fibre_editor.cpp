// What was done to a fibre on its way: pair swaps as installed, splices, connector pairs that are not drawn.
#include "app/panels/properties/editors.h"
#include "app/words/words.h"
#include "core/model/edits/set_fibre_work.h"

#include <QCoreApplication>

namespace streamwright::app {

namespace fibre_editor_detail {

QString tr(const char* words) { return QCoreApplication::translate("properties", words); }

model::FibreWork work(PropertyForm& form, model::CableId id) {
    const auto* cable = form.design().cables.find(id);
    return cable ? cable->fibre : model::FibreWork{};
}

std::optional<QString> set(PropertyForm& form, model::CableId id, const QString& label, const QString& text,
                           const std::function<void(model::FibreWork&, std::optional<int>)>& change) {
    bool number = false;
    const int count = text.toInt(&number);
    if (!text.isEmpty() && !number) return tr("\"%1\" is no number; type one such as 2, or nothing.").arg(text);
    auto row = work(form, id);
    change(row, text.isEmpty() ? std::nullopt : std::optional(count));
    return form.change(model::SetFibreWork{id, row}, tr("Change %1").arg(label.toLower()));
}

void add_count(PropertyForm& form, model::CableId id, const QString& label, int model::FibreWork::*member) {
    form.field(
        label, [&form, id, member] { return QString::number(work(form, id).*member); },
        [&form, id, label, member](const QString& text) {
            return set(form, id, label, text,
                       [member](model::FibreWork& row, std::optional<int> count) { row.*member = count.value_or(0); });
        });
}

}  // namespace fibre_editor_detail

void add_fibre_work(PropertyForm& form, model::CableId id) {
    using namespace fibre_editor_detail;
    const auto* cable = form.design().cables.find(id);
    const auto* type = cable ? form.design().type_of(*cable) : nullptr;
    if (!type || type->signal != catalogue::Signal::fibre) return;
    form.section(tr("Fibre"));
    const auto swaps = tr("Pair swaps");
    form.field(
        swaps,
        [&form, id] {
            const auto row = work(form, id);
            return row.pair_swaps ? QString::number(*row.pair_swaps) : QString();
        },
        [&form, id, swaps](const QString& text) {
            return set(form, id, swaps, text,
                       [](model::FibreWork& row, std::optional<int> count) { row.pair_swaps = count; });
        });
    add_count(form, id, tr("Splices"), &model::FibreWork::splices);
    add_count(form, id, tr("Connector pairs not drawn"), &model::FibreWork::joints);
}

}  // namespace streamwright::app
