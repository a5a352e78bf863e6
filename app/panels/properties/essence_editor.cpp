// What a stream carries and how it is packed: a choice, the fields of what is chosen, and the chain of numbers by which
// packets and rates follow. Where nothing is chosen the rate is typed in.
#include "app/panels/properties/editors.h"
#include "app/words/words.h"
#include "core/analysis/stream_chain.h"
#include "core/base/number_text.h"
#include "core/model/stream_packets.h"

#include <QCoreApplication>

#include <algorithm>
#include <functional>

namespace streamwright::app {

namespace essence_editor_detail {

using Options = std::vector<PropertyForm::Option>;
using standards::PictureCoding;
using Refusal = std::optional<QString>;

QString tr(const char* words) { return QCoreApplication::translate("properties", words); }

template <class Enum>
QString shown_enum(Enum value) {
    return shown(std::string(base::enum_text(value)));
}

const model::Stream* row(const PropertyForm& form, model::StreamId id) { return form.design().streams.find(id); }

Refusal set(PropertyForm& form, model::StreamId id, const QString& words,
            const std::function<void(model::Stream&)>& change) {
    const auto* held = row(form, id);
    if (!held) return std::nullopt;
    model::SetStream edit{*held};
    change(edit.row);
    return form.change(edit, words);
}

/// What a fresh choice begins with: usual figures, to be typed over. A format that is stated stays.
model::PictureEssence fresh_picture(PictureCoding coding, const model::Stream& before) {
    model::PictureEssence essence{.coding = coding};
    const bool by_rate = coding == PictureCoding::h264 || coding == PictureCoding::h265;
    if (by_rate) {
        essence.format.sampling = standards::Sampling::ycbcr_420;
        essence.format.depth = 8;
        essence.rate = base::BitRate::from_count(8'000'000);
        essence.udp_limit_octets = static_cast<int>(standards::full_mtu_udp_octets);
    }
    if (coding == PictureCoding::jpeg_xs) essence.millibits_per_pixel = 3000;
    if (before.picture) essence.format = before.picture->format;
    return essence;
}

/// The rate stays what it was, to the whole bit.
void type_in(model::Stream& stream) {
    const auto rate = model::payload_rate_of(stream).ceil();
    stream.payload_octets = static_cast<int>(model::full_payload_octets(stream));
    stream.picture.reset();
    stream.sound.reset();
    stream.payload_rate = rate;
}

void pack(model::Stream& stream, const std::string& chosen) {
    const auto before = stream;
    type_in(stream);
    if (chosen.empty()) return;
    stream.payload_rate = {};
    stream.payload_octets = model::Stream::blank(stream.id).payload_octets;
    stream.rtp = true;
    if (const auto coding = base::parse_enum<PictureCoding>(chosen)) {
        stream.kind = catalogue::StreamKind::video;
        stream.audio.reset();  // a packed picture carries none
        stream.picture = fresh_picture(*coding, before);
        return;
    }
    stream.kind = catalogue::StreamKind::audio;
    stream.audio.reset();
    stream.sound.emplace();
}

void add_choice(PropertyForm& form, model::StreamId id) {
    form.told_choice(
        tr("Packed as"),
        [] {
            Options options{{tr("rate typed in"), {}}};
            for (const auto& [coding, name] : base::EnumText<PictureCoding>::names)
                options.push_back({shown(std::string(name)), shown(std::string(name))});
            options.push_back({tr("network audio"), "sound"});
            return options;
        },
        [&form, id] { return row(form, id) ? shown(packed_as(*row(form, id))) : QString(); },
        [&form, id](const QString& chosen) {
            return set(form, id, tr("Change packing"),
                       [&](model::Stream& stream) { pack(stream, chosen.toStdString()); });
        });
}

void add_typed_rate(PropertyForm& form, model::StreamId id) {
    form.field(
        tr("Payload rate"),
        [&form, id] {
            return row(form, id) ? shown(print(row(form, id)->payload_rate, phrasebook(form.design()).numbers))
                                 : QString();
        },
        [&form, id](const QString& text) -> Refusal {
            const auto rate = base::parse_bit_rate(text.toStdString());
            if (!rate) return sentence(rate.error());
            return set(form, id, tr("Change rate"), [&](model::Stream& each) { each.payload_rate = *rate; });
        });
}

// ---- pictures ----

const model::PictureEssence* picture(const PropertyForm& form, model::StreamId id) {
    const auto* held = row(form, id);
    return held && held->picture ? &*held->picture : nullptr;
}

Refusal set_picture(PropertyForm& form, model::StreamId id, const std::function<void(model::PictureEssence&)>& change) {
    return set(form, id, tr("Change what it packs"), [&](model::Stream& stream) {
        if (stream.picture) change(*stream.picture);
    });
}

/// Raster and rate that streams usually have; sampling and depth stay as they are.
void add_common_formats(PropertyForm& form, model::StreamId id) {
    form.told_choice(
        tr("Raster"),
        [&form, id] {
            Options options;
            for (const char* text :
                 {"720p50", "720p59.94", "1080i50", "1080i59.94", "1080p25", "1080p29.97", "1080p50", "1080p59.94",
                  "1080p60", "2160p25", "2160p29.97", "2160p50", "2160p59.94", "2160p60"})
                options.push_back({text, text});
            const auto* held = picture(form, id);
            const auto own = held ? shown(standards::raster_text(held->format)) : QString();
            if (std::ranges::none_of(options, [&](const auto& each) { return each.value == own; }))
                options.push_back({own, own});
            return options;
        },
        [&form, id] {
            const auto* held = picture(form, id);
            return held ? shown(standards::raster_text(held->format)) : QString();
        },
        [&form, id](const QString& chosen) -> Refusal {
            auto format = standards::parse_video_format(chosen.toStdString());
            if (!format) return sentence(format.error());
            return set_picture(form, id, [&](model::PictureEssence& essence) {
                format->sampling = essence.format.sampling;
                format->depth = essence.format.depth;
                format->range = essence.format.range;
                essence.format = *format;
            });
        });
}

void add_format(PropertyForm& form, model::StreamId id) {
    add_common_formats(form, id);
    form.field(
        tr("Format"),
        [&form, id] {
            const auto* held = picture(form, id);
            return held ? shown(standards::text(held->format)) : QString();
        },
        [&form, id](const QString& text) -> Refusal {
            const auto format = standards::parse_video_format(text.toStdString());
            if (!format) return sentence(format.error());
            return set_picture(form, id, [&](model::PictureEssence& essence) { essence.format = *format; });
        });
}

void add_packing(PropertyForm& form, model::StreamId id) {
    form.told_choice(
        tr("Packing"),
        [] {
            return Options{{tr("lines in equal parts"), "general"}, {tr("full blocks"), "block"}};
        },
        [&form, id] { return picture(form, id) ? shown_enum(picture(form, id)->packing) : QString(); },
        [&form, id](const QString& chosen) {
            const auto packing = base::parse_enum<standards::Packing>(chosen.toStdString());
            return set_picture(form, id, [&](model::PictureEssence& essence) {
                if (packing) essence.packing = *packing;
            });
        });
}

QString thousandths(std::int64_t value) {
    return shown(standards::plain_number(standards::Hertz::ratio(std::max<std::int64_t>(value, 0), 1000)));
}

void add_bits_per_pixel(PropertyForm& form, model::StreamId id) {
    form.field(
        tr("Bits per pixel"),
        [&form, id] { return picture(form, id) ? thousandths(picture(form, id)->millibits_per_pixel) : QString(); },
        [&form, id](const QString& text) -> Refusal {
            const auto typed = text.trimmed().toStdString();
            const auto number = base::read_number(typed);
            const auto value = number && number->rest.empty() && !number->negative
                                   ? base::scale_number(*number, 1000, 1)
                                   : std::nullopt;
            if (!value || *value < 1)
                return tr("'%1' is no number of bits per pixel; write one such as 4 or 3.5.").arg(text);
            return set_picture(form, id, [&](model::PictureEssence& essence) { essence.millibits_per_pixel = *value; });
        });
}

void add_bit_rate(PropertyForm& form, model::StreamId id) {
    form.field(
        tr("Bit rate"),
        [&form, id] {
            return picture(form, id) ? shown(print(picture(form, id)->rate, phrasebook(form.design()).numbers))
                                     : QString();
        },
        [&form, id](const QString& text) -> Refusal {
            const auto rate = base::parse_bit_rate(text.toStdString());
            if (!rate) return sentence(rate.error());
            return set_picture(form, id, [&](model::PictureEssence& essence) { essence.rate = *rate; });
        });
}

void add_limit(PropertyForm& form, model::StreamId id) {
    form.told_choice(
        tr("Datagram at most"),
        [] {
            return Options{{tr("1460 octets"), "1460"}, {tr("1480 octets"), "1480"}, {tr("8960 octets"), "8960"}};
        },
        [&form, id] { return picture(form, id) ? QString::number(picture(form, id)->udp_limit_octets) : QString(); },
        [&form, id](const QString& chosen) {
            return set_picture(form, id,
                               [&](model::PictureEssence& essence) { essence.udp_limit_octets = chosen.toInt(); });
        });
}

void add_picture_fields(PropertyForm& form, model::StreamId id, PictureCoding coding) {
    add_format(form, id);
    if (coding == PictureCoding::uncompressed) add_packing(form, id);
    if (coding == PictureCoding::jpeg_xs) add_bits_per_pixel(form, id);
    if (coding == PictureCoding::h264 || coding == PictureCoding::h265) add_bit_rate(form, id);
    add_limit(form, id);
}

// ---- sound ----

const standards::AudioStream* flow(const PropertyForm& form, model::StreamId id) {
    const auto* held = row(form, id);
    return held && held->sound ? &held->sound->flow : nullptr;
}

Refusal set_flow(PropertyForm& form, model::StreamId id, const std::function<void(standards::AudioStream&)>& change) {
    return set(form, id, tr("Change what it packs"), [&](model::Stream& stream) {
        if (stream.sound) change(stream.sound->flow);
    });
}

template <class Enum>
void add_enum(PropertyForm& form, model::StreamId id, const QString& label, Enum standards::AudioStream::*field) {
    form.told_choice(
        label,
        [] {
            Options options;
            for (const auto& [value, name] : base::EnumText<Enum>::names)
                options.push_back({shown(std::string(name)), shown(std::string(name))});
            return options;
        },
        [&form, id, field] { return flow(form, id) ? shown_enum(flow(form, id)->*field) : QString(); },
        [&form, id, field](const QString& chosen) {
            const auto value = base::parse_enum<Enum>(chosen.toStdString());
            return set_flow(form, id, [&](standards::AudioStream& each) {
                if (value) each.*field = *value;
            });
        });
}

void add_sound_fields(PropertyForm& form, model::StreamId id) {
    form.field(
        tr("Channels"), [&form, id] { return flow(form, id) ? QString::number(flow(form, id)->channels) : QString(); },
        [&form, id](const QString& text) -> Refusal {
            bool number = false;
            const int channels = text.toInt(&number);
            if (!number) return tr("'%1' is no number of channels; write a whole number such as 2.").arg(text);
            return set_flow(form, id, [&](standards::AudioStream& each) { each.channels = channels; });
        });
    form.told_choice(
        tr("Sampling rate"),
        [] {
            return Options{{"44.1 kHz", "44100"}, {"48 kHz", "48000"}, {"88.2 kHz", "88200"}, {"96 kHz", "96000"}};
        },
        [&form, id] { return flow(form, id) ? QString::number(flow(form, id)->sampling_hz) : QString(); },
        [&form, id](const QString& chosen) {
            return set_flow(form, id, [&](standards::AudioStream& each) { each.sampling_hz = chosen.toLongLong(); });
        });
    add_enum(form, id, tr("Coding"), &standards::AudioStream::coding);
    add_enum(form, id, tr("Packet time"), &standards::AudioStream::packet_time);
}

void show_chain(Figures& figures, const PropertyForm& form, model::StreamId id) {
    const auto* held = row(form, id);
    if (!held) return;
    const auto book = phrasebook(form.design());
    for (const auto& line : analysis::stream_chain(*held)) {
        const auto label = shown(base::fill({line.pattern, line.values}, book));
        const auto figure = shown(base::print(line.figure, book));
        if (line.sum)
            figures.sum(label, figure);
        else
            figures.figure(label, figure);
    }
}

}  // namespace essence_editor_detail

std::string packed_as(const model::Stream& stream) {
    if (stream.sound) return "sound";
    return stream.picture ? std::string(base::enum_text(stream.picture->coding)) : std::string();
}

void add_essence(PropertyForm& form, model::StreamId id) {
    using namespace essence_editor_detail;
    const auto* stream = row(form, id);
    if (!stream) return;
    form.section(tr("What it carries"));
    add_choice(form, id);
    if (stream->picture)
        add_picture_fields(form, id, stream->picture->coding);
    else if (stream->sound)
        add_sound_fields(form, id);
    else
        add_typed_rate(form, id);
    form.live([&form, id](Figures& figures) { show_chain(figures, form, id); });
}

}  // namespace streamwright::app
