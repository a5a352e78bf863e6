// The security plan of the design: questions that no drawing answers.
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

}  // namespace plan_editor_detail

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
