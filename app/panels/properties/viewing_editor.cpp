// For whom pictures in a room must be large enough: the farthest viewer, the task, and the smallest thing to make out.
#include "app/panels/properties/editors.h"
#include "app/words/words.h"
#include "core/base/number_text.h"

#include <QCoreApplication>

namespace streamwright::app {

namespace viewing_editor_detail {

QString tr(const char* words) { return QCoreApplication::translate("properties", words); }

const model::Room* row(PropertyForm& form, model::RoomId id) { return form.design().rooms.find(id); }

std::optional<QString> change(PropertyForm& form, model::RoomId id, const std::function<void(model::Room&)>& change) {
    const auto* held = row(form, id);
    if (!held) return std::nullopt;
    auto next = *held;
    change(next);
    return form.change(model::AddRows{{next}}, tr("Change viewing"));
}

void add_farthest(PropertyForm& form, model::RoomId id) {
    form.field(
        tr("Farthest viewer"),
        [&form, id] {
            const auto* room = row(form, id);
            if (!room || !room->farthest_viewer) return QString();
            return shown(base::print(*room->farthest_viewer, phrasebook(form.design()).numbers));
        },
        [&form, id](const QString& text) -> std::optional<QString> {
            std::optional<base::Length> farthest;
            if (!text.trimmed().isEmpty()) {
                const auto typed = base::parse_length(text.toStdString(), phrasebook(form.design()).numbers.system);
                if (!typed) return sentence(typed.error());
                farthest = *typed;
            }
            return change(form, id, [&](model::Room& room) { room.farthest_viewer = farthest; });
        });
}

void add_task(PropertyForm& form, model::RoomId id) {
    form.choice(
        tr("Viewing task"),
        [] {
            std::vector<PropertyForm::Option> options{{tr("not said"), {}}};
            for (const auto& [value, words] : base::EnumText<standards::ViewingCategory>::names) {
                const auto name = QString::fromUtf8(words.data(), static_cast<qsizetype>(words.size()));
                options.push_back({tr(name.toUtf8().constData()), name});
            }
            return options;
        },
        [&form, id] {
            const auto* room = row(form, id);
            return room && room->viewing ? shown(std::string(base::enum_text(*room->viewing))) : QString();
        },
        [&form, id](const QString& task) {
            change(form, id, [&](model::Room& room) {
                room.viewing = base::parse_enum<standards::ViewingCategory>(task.toStdString());
            });
        });
}

/// "3", "3.5 %", "2,5 %" in thousandths of a percent; nothing where it is no percentage.
std::optional<standards::ElementHeight> parse_element(const QString& text) {
    constexpr std::int64_t thousandths = 1000;
    const auto typed = text.toStdString();
    const auto number = base::read_number(base::trim_spaces(typed));
    if (!number || number->negative || (!number->rest.empty() && number->rest != "%")) return std::nullopt;
    const auto count = base::scale_number(*number, thousandths, 1);
    if (!count) return std::nullopt;
    return standards::ElementHeight::from_count(*count);
}

QString element_words(standards::ElementHeight element) {
    auto digits = base::print_decimal(element.count(), 3);
    while (digits.back() == '0') digits.pop_back();
    if (digits.back() == '.') digits.pop_back();
    return shown(digits) + QStringLiteral(" %");
}

void add_element(PropertyForm& form, model::RoomId id) {
    form.field(
        tr("Smallest element"),
        [&form, id] {
            const auto* room = row(form, id);
            return room && room->element_height ? element_words(*room->element_height) : QString();
        },
        [&form, id](const QString& text) -> std::optional<QString> {
            const auto element = parse_element(text);
            if (!element && !text.trimmed().isEmpty())
                return tr("'%1' is no share of the image height; write a percentage, such as 3 %.").arg(text);
            return change(form, id, [&](model::Room& room) { room.element_height = element; });
        });
}

}  // namespace viewing_editor_detail

void add_viewing(PropertyForm& form, model::RoomId room) {
    using namespace viewing_editor_detail;
    form.section(tr("Viewing"));
    add_farthest(form, room);
    add_task(form, room);
    add_element(form, room);
}

}  // namespace streamwright::app
