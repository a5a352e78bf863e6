// The plans of the design, which no drawing answers: questions of security, and spares to buy.
#include "app/panels/properties/editors.h"
#include "app/words/words.h"

#include <QCoreApplication>

namespace streamwright::app {

namespace plan_editor_detail {

QString tr(const char* words) { return QCoreApplication::translate("properties", words); }

void add_question(PropertyForm& form, const QString& label, std::optional<bool> model::SecurityPlan::*member) {
    form.choice(
        label,
        [] {
            return std::vector<PropertyForm::Option>{
                {tr("not answered"), "open"}, {tr("yes"), "yes"}, {tr("no"), "no"}};
        },
        [&form, member] {
            const auto& answer = form.design().settings().security.*member;
            return answer ? *answer ? QStringLiteral("yes") : QStringLiteral("no") : QStringLiteral("open");
        },
        [&form, member](const QString& answer) {
            change_settings(form, tr("Answer the security plan"), [&](model::Settings& settings) {
                settings.security.*member = answer == "open" ? std::nullopt : std::optional(answer == "yes");
            });
        });
}

constexpr int most_spares = 1000;

void add_number(PropertyForm& form, const QString& label, const QString& unit, int most,
                int model::SparePlan::*member) {
    form.field(
        label, [&form, unit, member] { return QString::number(form.design().settings().spares.*member) + unit; },
        [&form, unit, most, member](const QString& text) -> std::optional<QString> {
            bool number = false;
            QString digits = text;
            if (!unit.isEmpty()) digits.remove(unit.trimmed());
            const int count = digits.trimmed().toInt(&number);
            if (!number || count < 0 || count > most)
                return tr("'%1' is no number of spares; write a whole number from 0 to %2.").arg(text).arg(most);
            return change_settings(form, tr("Change spares"),
                                   [&](model::Settings& settings) { settings.spares.*member = count; });
        });
}

}  // namespace plan_editor_detail

void add_spares(PropertyForm& form) {
    using namespace plan_editor_detail;
    form.section(tr("Spares"));
    add_number(form, tr("Endpoints"), QStringLiteral(" %"), 100, &model::SparePlan::endpoints_percent);
    add_number(form, tr("Of each transceiver"), {}, most_spares, &model::SparePlan::of_each_module);
    add_number(form, tr("Of each patch lead"), {}, most_spares, &model::SparePlan::of_each_lead);
}

void add_plan(PropertyForm& form) {
    using namespace plan_editor_detail;
    form.section(tr("Security plan"));
    add_question(form, tr("Streams encrypted"), &model::SecurityPlan::streams_encrypted);
    add_question(form, tr("Port access control"), &model::SecurityPlan::port_access_control);
    form.field(
        tr("Certificates expire"), [&form] { return shown(form.design().settings().security.certificates_expire); },
        [&form](const QString& text) {
            return change_settings(form, tr("Answer the security plan"), [&](model::Settings& s) {
                s.security.certificates_expire = text.trimmed().toStdString();
            });
        });
    add_question(form, tr("Account directory"), &model::SecurityPlan::account_directory);
}

}  // namespace streamwright::app
