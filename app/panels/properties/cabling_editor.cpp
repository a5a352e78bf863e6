// What the design holds its cabling to, where published figures leave a choice or were only remembered. Empty takes
// the published figure.
#include "app/panels/properties/editors.h"
#include "app/words/words.h"

#include <QCoreApplication>

#include <algorithm>

namespace streamwright::app {

namespace cabling_editor_detail {

using model::CablingSettings;

QString tr(const char* words) { return QCoreApplication::translate("properties", words); }

const CablingSettings& cabling(PropertyForm& form) { return form.design().settings().cabling; }

std::optional<QString> change(PropertyForm& form, const QString& label,
                              const std::function<void(CablingSettings&)>& edit) {
    return change_settings(form, tr("Change %1").arg(label.toLower()),
                           [&](model::Settings& settings) { edit(settings.cabling); });
}

void add_loss(PropertyForm& form, const QString& label, std::optional<base::Loss> CablingSettings::*member) {
    form.field(
        label,
        [&form, member] {
            const auto& loss = cabling(form).*member;
            return loss ? shown(base::print(*loss)) : QString();
        },
        [&form, label, member](const QString& text) -> std::optional<QString> {
            std::optional<base::Loss> loss;
            if (!text.isEmpty()) {
                const auto typed = base::parse_loss(text.toStdString());
                if (!typed) return sentence(typed.error());
                loss = *typed;
            }
            return change(form, label, [&](CablingSettings& row) { row.*member = loss; });
        });
}

void add_rise(PropertyForm& form) {
    const auto label = tr("Powered bundle adds");
    form.field(
        label,
        [&form] {
            const auto rise = cabling(form).bundle_rise;
            return rise.count() > 0 ? shown(base::print(rise)) : QString();
        },
        [&form, label](const QString& text) -> std::optional<QString> {
            base::Temperature rise;
            if (!text.isEmpty()) {
                const auto typed = base::parse_temperature(text.toStdString());
                if (!typed) return sentence(typed.error());
                rise = *typed;
            }
            return change(form, label, [&](CablingSettings& row) { row.bundle_rise = rise; });
        });
}

void add_cat6(PropertyForm& form) {
    const auto label = tr("10 Gb/s on Cat 6 reaches");
    form.field(
        label,
        [&form] {
            const auto& reach = cabling(form).cat6_10g;
            return reach ? shown(print(*reach, phrasebook(form.design()).numbers)) : QString();
        },
        [&form, label](const QString& text) -> std::optional<QString> {
            std::optional<base::Length> reach;
            if (!text.isEmpty()) {
                const auto typed = base::parse_length(text.toStdString(), phrasebook(form.design()).numbers.system);
                if (!typed) return sentence(typed.error());
                reach = *typed;
            }
            return change(form, label, [&](CablingSettings& row) { row.cat6_10g = reach; });
        });
}

/// "HDMI 18 Gbit/s, passive copper = 9 m; 3G-SDI = 25 dB": the names as findings and the figures of a cable say them.
QString lines_words(const std::vector<model::LineLimit>& lines, const base::NumberStyle& numbers) {
    QStringList words;
    for (const auto& line : lines) {
        if (line.length) words << shown(line.line + " = " + base::print(*line.length, numbers));
        if (line.loss) words << shown(line.line + " = " + base::print(*line.loss, numbers));
    }
    return words.join(QStringLiteral("; "));
}

/// A length or a loss for one line; why it is none.
std::optional<QString> read_line(const QString& text, base::UnitSystem system, std::vector<model::LineLimit>& lines) {
    const auto equals = text.lastIndexOf('=');
    if (equals < 1) return tr("\"%1\" is no limit; write a line and its limit, such as RS-232 = 20 m.").arg(text);
    const auto name = text.left(equals).trimmed().toStdString();
    const auto value = text.mid(equals + 1).trimmed();
    auto found = std::ranges::find(lines, name, &model::LineLimit::line);
    if (found == lines.end()) found = lines.insert(lines.end(), {name, {}, {}});
    if (value.endsWith(QStringLiteral("dB"), Qt::CaseInsensitive)) {
        const auto loss = base::parse_loss(value.toStdString());
        if (!loss) return sentence(loss.error());
        found->loss = *loss;
        return std::nullopt;
    }
    const auto length = base::parse_length(value.toStdString(), system);
    if (!length) return sentence(length.error());
    found->length = *length;
    return std::nullopt;
}

void add_lines(PropertyForm& form) {
    const auto label = tr("Limits of lines");
    form.field(
        label, [&form] { return lines_words(cabling(form).lines, phrasebook(form.design()).numbers); },
        [&form, label](const QString& text) -> std::optional<QString> {
            std::vector<model::LineLimit> lines;
            for (const auto& part : text.split(';', Qt::SkipEmptyParts))
                if (auto trouble = read_line(part.trimmed(), phrasebook(form.design()).numbers.system, lines))
                    return trouble;
            return change(form, label, [&](CablingSettings& row) { row.lines = std::move(lines); });
        });
}

}  // namespace cabling_editor_detail

void add_cabling(PropertyForm& form) {
    using namespace cabling_editor_detail;
    form.section(tr("Cabling"));
    form.choice(
        tr("Warm copper by"),
        [] {
            return std::vector<PropertyForm::Option>{{tr("the strictest rule"), "strictest"},
                                                     {tr("the table of TIA-568"), "table"},
                                                     {tr("the linear rule"), "linear"},
                                                     {tr("the quotient rule"), "quotient"}};
        },
        [&form] { return shown(std::string(base::enum_text(cabling(form).warm_rule))); },
        [&form](const QString& rule) {
            change(form, tr("Warm copper by"), [&](CablingSettings& row) {
                row.warm_rule =
                    base::parse_enum<model::WarmRule>(rule.toStdString()).value_or(model::WarmRule::strictest);
            });
        });
    add_rise(form);
    add_cat6(form);
    add_loss(form, tr("Loss of a connector pair"), &CablingSettings::joint_loss);
    add_loss(form, tr("Loss of a splice"), &CablingSettings::splice_loss);
    add_lines(form);
}

}  // namespace streamwright::app
