#include "app/canvas/subject_words.h"

#include "app/words/words.h"
#include "core/model/mating.h"

#include <QCoreApplication>

namespace streamwright::app {

namespace subject_words_detail {

QString tr(const char* words) { return QCoreApplication::translate("canvas", words); }

QString end_words(const model::Design& design, const std::optional<model::CableEnd>& end) {
    return end ? shown(model::port_name(design, end->port)) : tr("an open end");
}

struct Words {
    const SheetScene& scene;
    const model::Design& design = scene.design();

    QString operator()(model::DeviceId id) const {
        const auto* device = design.devices.find(id);
        if (!device) return {};
        const auto* type = design.type_of(*device);
        const auto* room = device->room ? design.rooms.find(*device->room) : nullptr;
        QString words = shown(device->tag);
        if (type) words += QStringLiteral(", ") + shown(type->name);
        if (room) words += QStringLiteral(", ") + shown(room->number + (room->number.empty() ? "" : " ") + room->name);
        return words;
    }
    QString operator()(const model::PortRef& ref) const {
        const auto facts = model::port_facts(design, ref);
        QString words = tr("port %1").arg(shown(model::port_name(design, ref)));
        if (facts.port) words += QStringLiteral(", ") + signal_words(facts.port->signal);
        for (const auto& cable : design.cables)
            if ((cable.a && cable.a->port == ref) || (cable.b && cable.b->port == ref))
                return words + QStringLiteral(", ") + tr("cable %1").arg(shown(cable.tag));
        return words + QStringLiteral(", ") + tr("free");
    }
    QString operator()(model::CableId id) const {
        const auto* cable = design.cables.find(id);
        if (!cable) return {};
        const auto* on_sheet = scene.cable(id);
        QString words = shown(cable->tag);
        if (on_sheet) words += QStringLiteral(", ") + signal_words(on_sheet->line.signal);
        words += QStringLiteral(", ") + tr("%1 to %2").arg(end_words(design, cable->a), end_words(design, cable->b));
        if (cable->length) words += QStringLiteral(", ") + shown(print(*cable->length, phrasebook(design).numbers));
        return words;
    }
    QString operator()(model::StreamId id) const {
        const auto* stream = design.streams.find(id);
        return stream ? tr("stream %1").arg(shown(stream->tag)) : QString();
    }
    QString operator()(model::FrameId id) const {
        const auto* frame = design.room_frames.find(id);
        const auto* room = frame ? design.rooms.find(frame->room) : nullptr;
        return room ? tr("room %1 %2").arg(shown(room->number), shown(room->name)) : QString();
    }
    QString operator()(model::NoteId id) const {
        const auto* note = design.notes.find(id);
        return note ? tr("note: %1").arg(shown(note->text).simplified()) : QString();
    }
    QString operator()(model::VlanId id) const {
        const auto* vlan = design.vlans.find(id);
        return vlan ? tr("VLAN %1 %2").arg(vlan->vid).arg(shown(vlan->name)) : QString();
    }
};

}  // namespace subject_words_detail

QString signal_words(catalogue::Signal signal) {
    using catalogue::Signal;
    using subject_words_detail::tr;
    switch (signal) {
        case Signal::video:
            return tr("video");
        case Signal::extender:
            return tr("extender link");
        case Signal::copper:
            return tr("network, copper");
        case Signal::fibre:
            return tr("network, fibre");
        case Signal::audio:
            return tr("audio");
        case Signal::usb:
            return tr("USB");
        case Signal::control:
            return tr("control");
        case Signal::power:
            return tr("power");
    }
    return {};
}

QString subject_words(const SheetScene& scene, const Chosen& subject) {
    return std::visit(subject_words_detail::Words{scene}, subject);
}

QString badge_words(const SheetScene& scene, const BadgeOnSheet& badge) {
    using subject_words_detail::tr;
    const auto name = subject_words(scene, badge.subject).section(QLatin1Char(','), 0, 0);
    const QString gravest = badge.gravest == analysis::Severity::error     ? tr("error")
                            : badge.gravest == analysis::Severity::warning ? tr("warning")
                                                                           : tr("advice");
    return tr("%1 findings at %2, gravest: %3").arg(badge.count).arg(name, gravest);
}

}  // namespace streamwright::app
