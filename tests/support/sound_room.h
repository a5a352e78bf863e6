// The clean design with sound in the room of its display: source - processor - loudspeaker, beside the picture.
#pragma once

#include "tests/support/clean_design.h"

namespace streamwright::test {

struct SoundRoom {
    CleanDesign c = clean_design();
    model::RoomId room = c.b.room("1.01", "Hall");
    model::DeviceId player, processor, speaker;
    model::CableId into_processor, into_speaker;

    static catalogue::PortType sound_port(const std::string& key, catalogue::Way way, const std::string& standard) {
        auto port = types::make_port(key, catalogue::Signal::audio, way, catalogue::Connector::terminal);
        port.standards = {standard};
        return port;
    }
    static catalogue::DeviceType make_processor(std::optional<base::Duration> delay) {
        catalogue::DeviceType type;
        type.key = {"test.processor"};
        type.name = "Audio processor";
        type.kind = catalogue::DeviceKind::audio_processor;
        type.tag_prefix = "AP";
        type.ports = {sound_port("in-1", catalogue::Way::in, "balanced line"),
                      sound_port("in-2", catalogue::Way::in, "balanced line"),
                      sound_port("out-1", catalogue::Way::out, "balanced line"),
                      sound_port("out-2", catalogue::Way::out, "balanced line")};
        type.delay = delay;
        return type;
    }
    static catalogue::DeviceType make_speaker() {
        catalogue::DeviceType type;
        type.key = {"test.speaker"};
        type.name = "Active loudspeaker";
        type.kind = catalogue::DeviceKind::speaker;
        type.tag_prefix = "LS";
        type.ports = {sound_port("in", catalogue::Way::in, "balanced line")};
        return type;
    }
    /// A source with a sound output beside its picture.
    static catalogue::DeviceType make_player() {
        auto type = types::make_source();
        type.key = {"test.player"};
        type.ports.push_back(sound_port("sound", catalogue::Way::out, "balanced line"));
        return type;
    }

    explicit SoundRoom(std::optional<base::Duration> processing = base::Duration::from_count(3'000'000),
                       base::Duration decoding = base::Duration::from_count(17'000'000),
                       base::Duration showing = base::Duration::from_count(50'000'000))
        : player(c.b.device(make_player(), "SRC-9")),
          processor(c.b.device(make_processor(processing), "AP-1")),
          speaker(c.b.device(make_speaker(), "LS-1")),
          into_processor(c.b.cable(types::speaker_cable(), port_of(player, "sound"), port_of(processor, "in-1"),
                                   base::Length::from_count(5'000'000))),
          into_speaker(c.b.cable(types::speaker_cable(), port_of(processor, "out-1"), port_of(speaker, "in"),
                                 base::Length::from_count(10'000'000))) {
        auto& b = c.b;
        b.design.cables.erase(c.source_lead);
        b.design.devices.erase(c.source);
        b.cable(types::hdmi(), port_of(player, "out"), port_of(c.encoder, "in"), base::Length::from_count(2'000'000));
        retype(c.encoder, types::make_encoder(), [&](auto& type) { type.codec->encode_latency = base::Duration{}; });
        retype(c.decoder, types::make_decoder(), [&](auto& type) { type.codec->decode_latency = decoding; });
        retype(c.display, types::make_display(), [&](auto& type) { type.delay = showing; });
        for (const auto id : {c.display, speaker}) b.change<model::Device>(id, [&](auto& row) { row.room = room; });
    }
    template <class F>
    void retype(model::DeviceId id, catalogue::DeviceType type, F&& f) {
        f(type);
        type.key.text += ".timed";
        c.b.embed(std::make_shared<const catalogue::DeviceType>(type));
        c.b.change<model::Device>(id, [&](auto& row) { row.type = type.key; });
    }
    const model::Design& design() const { return c.design(); }
};

}  // namespace streamwright::test
