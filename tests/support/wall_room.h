// A room with a video wall for tests: four tiles two by two, each on a decoder of its own, a source on one encoder, and
// one preset that shows its stream on all four. Not a finding in it.
#pragma once

#include "tests/support/picture_room.h"

#include <array>
#include <string>

namespace streamwright::test {

struct WallRoom {
    PictureRoom room;
    std::array<model::DeviceId, 4> tiles{model::DeviceId(0), model::DeviceId(0), model::DeviceId(0),
                                         model::DeviceId(0)};
    std::array<model::DeviceId, 4> decoders = tiles;
    model::DeviceId source = room.source("PLAYER-1", port());
    model::DeviceId encoder = room.encoder("ENC-1", port());
    model::StreamId stream = room.stream(encoder);
    model::WallId wall{77};

    static PicturePort port() { return {picture_facts({"2160p60", "1080p60"}), "HDMI 2.0"}; }

    WallRoom() {
        room.join(source, "out", encoder);
        room.set(source, "out", "1080p60");
        for (std::size_t i = 0; i < tiles.size(); ++i) {
            const auto n = std::to_string(i + 1);
            tiles[i] = room.display("WT-" + n, port());
            decoders[i] = room.decoder("DEC-" + n, port(), true);
            room.join(decoders[i], "out", tiles[i]);
            room.show(stream, decoders[i]);
            image(i, catalogue::ImageFacts{1920, 1080, length_um(1'209'600), length_um(680'400)});
        }
        auto row = model::Wall::blank(wall);
        row.name = "Wall 1";
        row.tiles.assign(tiles.begin(), tiles.end());
        row.gap_across = row.gap_down = length_um(1'800);
        room.b.put(row);
        state_delays(base::Duration::from_count(16'700'000));
    }
    static base::Length length_um(std::int64_t count) { return base::Length::from_count(count); }
    /// Changes the type of one device.
    template <class Change>
    void type_of(model::DeviceId id, Change&& change) {
        auto type = *design().type_of(*design().devices.find(id));
        change(type);
        room.b.embed(std::make_shared<const catalogue::DeviceType>(std::move(type)));
    }
    void image(std::size_t tile, const std::optional<catalogue::ImageFacts>& facts) {
        type_of(tiles[tile], [&](auto& type) { type.image = facts; });
    }
    void delay(std::size_t tile, const std::optional<base::Duration>& decoding) {
        type_of(decoders[tile], [&](auto& type) { type.codec->decode_latency = decoding; });
    }
    /// All decoders and tiles state what they take.
    void state_delays(base::Duration decoding) {
        for (std::size_t i = 0; i < tiles.size(); ++i) {
            delay(i, decoding);
            type_of(tiles[i], [](auto& type) { type.delay = base::Duration::from_count(20'000'000); });
        }
    }
    template <class Change>
    void change_wall(Change&& change) {
        room.b.change<model::Wall>(wall, change);
    }
    /// What that decoder shows in the preset goes.
    void forget(std::size_t decoder) {
        std::vector<model::SubscriptionId> gone;
        for (const auto& row : design().subscriptions)
            if (row.decoder == decoders[decoder]) gone.push_back(row.id);
        for (const auto id : gone) room.b.design.subscriptions.erase(id);
    }
    void unplug(std::size_t tile) {
        std::vector<model::CableId> gone;
        for (const auto& row : design().cables)
            if (row.b && row.b->port.device == tiles[tile]) gone.push_back(row.id);
        for (const auto id : gone) room.b.design.cables.erase(id);
    }
    const model::Design& design() const { return room.b.design; }
};

/// A processor with LED data outputs that drive so many pixels, and chains of cabinets on it.
struct LedRoom {
    CleanDesign c = clean_design();
    model::DeviceId processor;

    explicit LedRoom(std::optional<std::int64_t> most) : processor(add_processor(most)) {
        c.b.cable(types::hdmi(), port_of(c.b.device(types::source(), "SRC-9"), "out"), port_of(processor, "in"), {});
    }
    static catalogue::PortType data(const std::string& key, catalogue::Way way) {
        auto port = types::make_port(key, catalogue::Signal::extender, way, catalogue::Connector::rj45);
        port.standards = {std::string(catalogue::led_data)};
        return port;
    }
    model::DeviceId add_processor(std::optional<std::int64_t> most) {
        auto type = types::make_display();
        type.key = {"test.led-processor"};
        type.kind = catalogue::DeviceKind::video_processor;
        for (const auto* key : {"data-1", "data-2"}) {
            type.ports.push_back(data(key, catalogue::Way::out));
            type.ports.back().most_pixels = most;
        }
        return c.b.device(type, "LED-1");
    }
    model::DeviceId cabinet(const std::string& tag, const std::optional<catalogue::ImageFacts>& image) {
        auto type = types::make_display();
        type.key = {"test.cabinet." + tag};
        type.kind = catalogue::DeviceKind::wall_tile;
        type.ports = {data("data-in", catalogue::Way::in), data("data-out", catalogue::Way::out)};
        type.image = image;
        return c.b.device(type, tag);
    }
    static base::Length led_lead() { return base::Length::from_count(5'000'000); }
    /// So many cabinets one behind the other on the output.
    void chain(const std::string& output, int count, const std::optional<catalogue::ImageFacts>& image) {
        auto before = port_of(processor, output);
        for (int i = 1; i <= count; ++i) {
            const auto next = cabinet(output + "-C" + std::to_string(i), image);
            c.b.cable(types::cat6a(), before, port_of(next, "data-in"), led_lead());
            before = port_of(next, "data-out");
        }
    }
    const model::Design& design() const { return c.design(); }
};

}  // namespace streamwright::test
