// What is set on a picture port: the format and the content of a source, the EDID of an input.
#include "app/panels/properties/editors.h"
#include "app/panels/properties/picture_figures.h"
#include "app/words/words.h"
#include "core/analysis/facts/picture_ways.h"
#include "core/analysis/rule_help.h"
#include "core/model/mating.h"

#include <QCoreApplication>

#include <algorithm>

namespace streamwright::app {

namespace picture_editor_detail {

using model::EdidPolicy;
using model::EdidWay;

QString tr(const char* words) { return QCoreApplication::translate("properties", words); }

model::PortOverride row(const PropertyForm& form, const model::PortRef& ref) {
    const auto* held = form.design().port_overrides.find(ref);
    return held ? *held : model::PortOverride::blank(ref);
}

template <class Change>
std::optional<QString> set(PropertyForm& form, const model::PortRef& ref, const QString& words, Change&& change) {
    model::ConfigurePort edit{row(form, ref), nullptr};
    change(edit.row);
    return form.change(edit, words);
}

/// The format typed; nothing typed clears it. A sentence why it was refused, or nothing.
std::optional<QString> take_format(
    const QString& text, const std::function<std::optional<QString>(std::optional<standards::VideoFormat>)>& take) {
    const auto typed = text.trimmed().toStdString();
    if (typed.empty()) return take(std::nullopt);
    const auto format = standards::parse_video_format(typed);
    return format ? take(*format) : std::optional(sentence(format.error()));
}

void add_output(PropertyForm& form, const model::PortRef& ref, bool source) {
    form.field(
        tr("Set to"),
        [&form, ref] {
            const auto set_to = row(form, ref).picture;
            return set_to ? shown(standards::text(*set_to)) : QString();
        },
        [&form, ref](const QString& text) {
            return take_format(text, [&](const auto& format) {
                return set(form, ref, tr("Set picture format"), [&](auto& port) { port.picture = format; });
            });
        });
    if (!source) return;
    form.choice(
        tr("Content"),
        [] {
            return std::vector<PropertyForm::Option>{{tr("not stated"), {}},
                                                     {tr("open"), "open"},
                                                     {tr("protected, type 0"), "type 0"},
                                                     {tr("protected, type 1"), "type 1"}};
        },
        [&form, ref] {
            const auto held = row(form, ref).protection;
            return held ? shown(std::string(base::enum_text(*held))) : QString();
        },
        [&form, ref](const QString& chosen) {
            set(form, ref, tr("Set content"),
                [&](auto& port) { port.protection = base::parse_enum<standards::HdcpContent>(chosen.toStdString()); });
        });
}

/// "copied:DEVICE/PORT", the value of a choice.
QString copied_value(const model::PortRef& from) {
    return QStringLiteral("copied:") + shown(from.device.text() + '/' + from.port.text);
}

std::optional<model::PortRef> copied_from(const QString& value) {
    const auto text = value.toStdString();
    const auto colon = text.find(':'), slash = text.find('/');
    if (colon == std::string::npos || slash == std::string::npos) return std::nullopt;
    const auto device = model::DeviceId::parse(text.substr(colon + 1, slash - colon - 1));
    return device ? std::optional(model::PortRef{*device, {text.substr(slash + 1)}}) : std::nullopt;
}

/// The displays behind the input, and what is copied now though it stands elsewhere.
std::vector<PropertyForm::Option> edid_options(PropertyForm& form, const model::PortRef& ref) {
    std::vector<PropertyForm::Option> options{
        {tr("as its type states"), {}}, {tr("fixed format"), "fixed"}, {tr("merged from all behind"), "merged"}};
    const auto book = phrasebook(form.design());
    const auto add = [&](const model::PortRef& from) {
        const auto value = copied_value(from);
        if (std::ranges::any_of(options, [&](const auto& each) { return each.value == value; })) return;
        const auto name = base::print(base::Value(analysis::named(analysis::Subject(from))), book);
        options.push_back({tr("copied from %1").arg(shown(name)), value});
    };
    if (const auto edid = row(form, ref).edid; edid && edid->from) add(*edid->from);
    const auto& facts = form.document().analyser().facts();
    const auto& wiring = facts.get<graph::Wiring>();
    const auto in = wiring.port_at(ref);
    if (!in) return options;
    analysis::PictureWays ways(wiring, facts.get<graph::Runs>(), facts.get<graph::SignalGraph>());
    for (const auto& end : ways.node(ways.node_at(*in)).ends)
        if (end.shows && end.at != *in) add(wiring.ref(end.at));
    return options;
}

QString chosen_edid(const std::optional<EdidPolicy>& edid) {
    if (!edid) return {};
    if (edid->way == EdidWay::copied && edid->from) return copied_value(*edid->from);
    return shown(std::string(base::enum_text(edid->way)));
}

EdidPolicy policy_of(const QString& chosen, const std::optional<EdidPolicy>& held) {
    if (const auto from = copied_from(chosen)) return {EdidWay::copied, {}, from, {}};
    if (chosen == QStringLiteral("merged")) return {EdidWay::merged, {}, {}, {}};
    if (held && held->way == EdidWay::fixed) return *held;
    return {EdidWay::fixed, standards::VideoFormat{}, {}, {}};  // 1080p60, to be typed over
}

void add_input(PropertyForm& form, const model::PortRef& ref) {
    form.choice(
        tr("EDID"), [&form, ref] { return edid_options(form, ref); },
        [&form, ref] { return chosen_edid(row(form, ref).edid); },
        [&form, ref](const QString& chosen) {
            set(form, ref, tr("Set EDID"), [&](auto& port) {
                port.edid = chosen.isEmpty() ? std::nullopt : std::optional(policy_of(chosen, port.edid));
            });
        });
    form.field(
        tr("Announces at most"),
        [&form, ref] {
            const auto edid = row(form, ref).edid;
            return edid && edid->format ? shown(standards::text(*edid->format)) : QString();
        },
        [&form, ref](const QString& text) {
            return take_format(text, [&](const auto& format) {
                return set(form, ref, tr("Set EDID"), [&](auto& port) {
                    const auto sound = port.edid ? port.edid->audio : std::nullopt;
                    port.edid = format ? std::optional(EdidPolicy{EdidWay::fixed, format, {}, sound}) : std::nullopt;
                });
            });
        });
    form.choice(
        tr("Sound announced"),
        [] {
            return std::vector<PropertyForm::Option>{{tr("as its type states"), {}},
                                                     {tr("stereo"), "stereo_pcm"},
                                                     {tr("multichannel"), "multichannel_pcm"},
                                                     {tr("compressed surround"), "compressed_surround"}};
        },
        [&form, ref] {
            const auto edid = row(form, ref).edid;
            return edid && edid->audio ? shown(std::string(base::enum_text(*edid->audio))) : QString();
        },
        [&form, ref](const QString& chosen) {
            set(form, ref, tr("Set EDID"), [&](auto& port) {  // sound is said where the EDID is fixed, and only there
                if (port.edid && port.edid->way == EdidWay::fixed)
                    port.edid->audio = base::parse_enum<catalogue::AudioFormat>(chosen.toStdString());
            });
        });
}

}  // namespace picture_editor_detail

void add_picture(PropertyForm& form, const EditorContext& context, const model::PortRef& ref) {
    using namespace picture_editor_detail;
    const auto facts = model::port_facts(form.design(), ref);
    const auto* type = facts.device ? form.design().type_of(*facts.device) : nullptr;
    if (!type || !facts.port || facts.port->signal != catalogue::Signal::video) return;
    const auto way = facts.port->way;
    if (way != catalogue::Way::in && way != catalogue::Way::out) return;
    form.section(tr("Picture"));
    const bool begins = analysis::begins_pictures(*type, *facts.port);
    if (way == catalogue::Way::in)
        add_input(form, ref);
    else if (begins || !facts.port->local_output)
        add_output(form, ref, begins);
    form.live([&document = context.document, ref, way](Figures& figures) {
        if (way == catalogue::Way::in)
            show_input_picture(figures, document, ref);
        else
            show_output_picture(figures, document, ref);
    });
}

}  // namespace streamwright::app
