// The streams of an encoder and what a decoder's inputs show in the chosen preset, as part of a device's properties.
#include "app/panels/properties/editors.h"
#include "app/words/words.h"
#include "core/base/net_address.h"
#include "core/model/stream_packets.h"

#include <QCoreApplication>

#include <algorithm>
#include <iterator>
#include <utility>

namespace streamwright::app {

namespace stream_list_detail {

QString tr(const char* words) { return QCoreApplication::translate("properties", words); }

const model::Stream* row(PropertyForm& form, model::StreamId id) { return form.design().streams.find(id); }

std::optional<QString> set(PropertyForm& form, model::StreamId id, const QString& words,
                           const std::function<void(model::Stream&)>& change) {
    const auto* stream = row(form, id);
    if (!stream) return std::nullopt;
    model::SetStream edit{*stream};
    change(edit.row);
    return form.change(edit, words);
}

void add_stream(Document& document, model::DeviceId encoder) {
    const auto& design = document.design();
    const auto* device = design.devices.find(encoder);
    const auto* type = device ? design.type_of(*device) : nullptr;
    if (!type || !type->codec) return;
    auto stream = model::Stream::blank(document.ids().next<model::StreamId>());
    stream.encoder = encoder;
    stream.tag = model::next_stream_tag(design);
    if (type->codec->usual_rate) stream.payload_rate = *type->codec->usual_rate;
    if (type->codec->payload_octets) stream.payload_octets = *type->codec->payload_octets;
    stream.rtp = type->codec->rtp;
    if (!type->codec->usual_rate && type->codec->sound_flows) {  // it sends nothing but sound
        stream.kind = catalogue::StreamKind::audio;
        stream.sound.emplace();
        stream.rtp = true;
    }
    document.edit(model::SetStream{stream}, tr("Add stream %1").arg(shown(stream.tag)));
}

void show_streams(Figures& figures, const EditorContext& context, model::DeviceId id) {
    auto& document = context.document;
    const auto& design = document.design();
    const auto numbers = phrasebook(design).numbers;
    figures.section(tr("Streams sent"));
    std::vector<model::Stream> sent;
    std::ranges::copy_if(design.streams, std::back_inserter(sent),
                         [&](const model::Stream& stream) { return stream.encoder == id; });
    std::ranges::sort(sent, {}, [](const model::Stream& stream) { return std::pair(stream.tag.size(), stream.tag); });
    for (const auto& stream : sent) {
        const auto group = stream.group ? shown(base::print(*stream.group)) : tr("no group");
        figures.figure(shown(stream.tag), group + " · " + shown(print(model::payload_rate_of(stream).ceil(), numbers)));
        figures.button(tr("Edit %1").arg(shown(stream.tag)), [&selection = context.selection, stream_id = stream.id] {
            QMetaObject::invokeMethod(
                &selection, [&selection, stream_id] { selection.set(Chosen(stream_id)); }, Qt::QueuedConnection);
        });
    }
    if (sent.empty()) figures.words(tr("It sends nothing yet."));
    figures.button(tr("Add a stream"), [&document, id] {
        QMetaObject::invokeMethod(
            &document, [&document, id] { add_stream(document, id); }, Qt::QueuedConnection);
    });
}

const model::Subscription* shown_at(const model::Design& design, model::PresetId preset, model::DeviceId decoder,
                                    const model::InputKey& input) {
    for (const auto& each : design.subscriptions)
        if (each.preset == preset && each.decoder == decoder && each.input == input) return &each;
    return nullptr;
}

/// Streams of the input's kind, and the one it shows, whatever that is.
std::vector<PropertyForm::Option> stream_options(const model::Design& design, catalogue::StreamKind kind,
                                                 const model::Subscription* held) {
    std::vector<PropertyForm::Option> options{{tr("nothing"), {}}};
    for (const auto& stream : design.streams) {
        if (stream.kind != kind && !(held && held->stream == stream.id)) continue;
        const auto* encoder = design.devices.find(stream.encoder);
        options.push_back({shown(stream.tag + (encoder ? " · " + encoder->tag : "")), shown(stream.id.text())});
    }
    std::sort(options.begin() + 1, options.end(), [](const auto& a, const auto& b) { return a.label < b.label; });
    return options;
}

void add_input(PropertyForm& form, const EditorContext& context, model::DeviceId id,
               const catalogue::DecoderInput& input) {
    auto& selection = context.selection;
    const auto shows = [&form, &selection, id, key = input.key] {
        return selection.preset() ? shown_at(form.design(), *selection.preset(), id, key) : nullptr;
    };
    form.choice(
        input.label.empty() ? shown(input.key.text) : shown(input.label),
        [&form, shows, kind = input.kind] { return stream_options(form.design(), kind, shows()); },
        [shows] { return shows() ? shown(shows()->stream.text()) : QString(); },
        [&form, &selection, id, key = input.key](const QString& stream) {
            if (!selection.preset()) return;
            form.change(model::Subscribe{form.document().ids().next<model::SubscriptionId>(), *selection.preset(), id,
                                         key, model::StreamId::parse(stream.toStdString())},
                        tr("Route"));
        });
}

void add_kind(PropertyForm& form, model::StreamId id) {
    using catalogue::StreamKind;
    form.choice(
        tr("Carries"),
        [] {
            return std::vector<PropertyForm::Option>{
                {tr("picture"), "video"}, {tr("sound alone"), "audio"}, {tr("USB"), "usb"}, {tr("control"), "control"}};
        },
        [&form, id] {
            const auto* held = row(form, id);
            return held ? shown(std::string(base::enum_text(held->kind))) : QString();
        },
        [&form, id](const QString& chosen) {
            if (const auto kind = base::parse_enum<StreamKind>(chosen.toStdString()))
                set(form, id, tr("Change what it carries"), [&](model::Stream& each) { each.kind = *kind; });
        });
}

void add_sound(PropertyForm& form, model::StreamId id) {
    using catalogue::AudioFormat;
    form.told_choice(
        tr("Sound"),
        [] {
            return std::vector<PropertyForm::Option>{{tr("not stated"), {}},
                                                     {tr("stereo"), "stereo_pcm"},
                                                     {tr("multichannel"), "multichannel_pcm"},
                                                     {tr("compressed surround"), "compressed_surround"}};
        },
        [&form, id] {
            const auto* held = row(form, id);
            return held && held->audio ? shown(std::string(base::enum_text(*held->audio))) : QString();
        },
        [&form, id](const QString& chosen) {
            std::optional<AudioFormat> sound;
            for (const auto& [format, name] : base::EnumText<AudioFormat>::names)
                if (chosen.toStdString() == name) sound = format;
            return set(form, id, tr("Change sound"), [&](model::Stream& each) { each.audio = sound; });
        });
}

/// The same picture on another plane.
void add_twin(PropertyForm& form, model::StreamId id) {
    form.choice(
        tr("Twin"),
        [&form, id] {
            const auto* held = row(form, id);
            auto options = stream_options(form.design(), held ? held->kind : catalogue::StreamKind::video, nullptr);
            std::erase_if(options, [&](const PropertyForm::Option& each) { return each.value == shown(id.text()); });
            return options;
        },
        [&form, id] {
            const auto* held = row(form, id);
            return held && held->twin ? shown(held->twin->text()) : QString();
        },
        [&form, id](const QString& chosen) {
            set(form, id, tr("Change twin"),
                [&](model::Stream& each) { each.twin = model::StreamId::parse(chosen.toStdString()); });
        });
}

}  // namespace stream_list_detail

void add_streams(PropertyForm& form, const EditorContext& context, model::DeviceId id) {
    using namespace stream_list_detail;
    const auto* device = form.design().devices.find(id);
    const auto* type = device ? form.design().type_of(*device) : nullptr;
    if (!type || !type->codec) return;
    const bool decided = !device->roles.empty();
    const auto does = [&](catalogue::Role role) {
        return decided ? std::ranges::find(device->roles, role) != device->roles.end() : type->can(role);
    };
    if (does(catalogue::Role::encoder))
        form.live([context, id](Figures& figures) { show_streams(figures, context, id); });
    if (!does(catalogue::Role::decoder) || type->codec->inputs.empty()) return;
    const auto* preset = context.selection.preset() ? form.design().presets.find(*context.selection.preset()) : nullptr;
    form.section(preset ? tr("Shows in preset %1").arg(shown(preset->name)) : tr("Shows"));
    if (!preset) {
        form.live([](Figures& figures) {
            figures.words(tr("Choose a preset in the top bar, or add one with nothing selected, to route streams."));
        });
        return;
    }
    for (const auto& input : type->codec->inputs) add_input(form, context, id, input);
}

PropertyForm* stream_editor(const EditorContext& context, model::StreamId id, QWidget* parent) {
    using namespace stream_list_detail;
    auto* form = new PropertyForm(context.document, context.theme, parent);
    const auto* stream = form->design().streams.find(id);
    if (!stream) return form;
    const auto* encoder = form->design().devices.find(stream->encoder);
    form->head({}, shown(stream->tag), tr("stream of %1").arg(encoder ? shown(encoder->tag) : QString()));
    form->findings([id](const analysis::Subject& subject) { return subject == analysis::Subject(id); });
    form->section(tr("Stream"));
    form->field(
        tr("Tag"), [form, id] { return row(*form, id) ? shown(row(*form, id)->tag) : QString(); },
        [form, id](const QString& text) {
            return form->change(model::Rename{id, text.toStdString(), {}}, tr("Rename to %1").arg(text));
        });
    form->field(
        tr("Group"),
        [form, id] {
            return row(*form, id) && row(*form, id)->group ? shown(base::print(*row(*form, id)->group)) : QString();
        },
        [form, id](const QString& text) -> std::optional<QString> {
            const auto group = base::parse_ipv4(text.toStdString());
            if (!group && !text.isEmpty())
                return tr("'%1' is not an IPv4 address; write a multicast group, such as 239.10.0.21.").arg(text);
            return set(*form, id, tr("Change group"), [&](model::Stream& each) { each.group = group; });
        });
    add_twin(*form, id);
    if (!model::packs_essence(*stream)) add_kind(*form, id);
    if (!stream->picture) add_sound(*form, id);  // a packed picture carries none
    add_essence(*form, id);
    form->live([form, id](Figures& figures) {
        if (!row(*form, id)) return;
        figures.button(tr("Remove the stream"), [form, id] {
            QMetaObject::invokeMethod(
                &form->document(),
                [&document = form->document(), id] { document.edit(model::Remove{{id}}, tr("Remove stream")); },
                Qt::QueuedConnection);
        });
    });
    form->finish();
    return form;
}

}  // namespace streamwright::app
