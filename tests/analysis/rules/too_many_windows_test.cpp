#include "tests/support/wall_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::too_many_windows_test {

using testing::ElementsAre;
using testing::IsEmpty;

constexpr auto rule = "too-many-windows";

/// A decoder of three inputs that shows three streams in the preset.
PictureRoom decoder_of(std::optional<int> windows) {
    PictureRoom room;
    const auto port = WallRoom::port();
    const auto decoder = room.decoder("MV-1", port, true);
    auto type = *room.b.design.type_of(*room.b.design.devices.find(decoder));
    type.most_windows = windows;
    type.codec->inputs = {{{"w1"}, "Window 1"}, {{"w2"}, "Window 2"}, {{"w3"}, "Window 3"}};
    room.b.embed(std::make_shared<const catalogue::DeviceType>(type));
    room.join(decoder, "out", room.display("DSP-1", port));
    for (const auto* n : {"1", "2", "3"}) {
        const auto encoder = room.encoder(std::string("ENC-") + n, port);
        const auto source = room.source(std::string("SRC-") + n, port);
        room.join(source, "out", encoder);
        room.set(source, "out", "1080p60");
        room.b.subscribe(room.preset, room.stream(encoder), decoder, std::string("w") + n);
    }
    return room;
}

TEST(TooManyWindows, FiresOnADecoder) {
    EXPECT_THAT(rules_found(decoder_of(3).b.design), IsEmpty());
    const auto room = decoder_of(2);
    EXPECT_THAT(rules_found(room.b.design), ElementsAre(rule));
    const auto finding = finding_of(room.b.design, rule);
    EXPECT_EQ(finding.severity, analysis::Severity::warning);
    EXPECT_EQ(english_sentence(room.b.design, finding),
              "In Lecture MV-1 is given 3 pictures; its outputs show 2 at once.");
}

TEST(TooManyWindows, SilentWhereTheTypeStatesNone) {
    EXPECT_THAT(rules_found(decoder_of(std::nullopt).b.design), IsEmpty());
}

/// The wall's four decoders on one processor of so many windows, with one output or two.
model::Design processor_of(int windows, int outputs, std::size_t shown) {
    WallRoom r;
    const auto passer = r.room.passer("MWP-1", WallRoom::port(), WallRoom::port(), 2);
    r.type_of(passer, [&](auto& type) {
        type.kind = catalogue::DeviceKind::video_processor;
        type.most_windows = windows;
        for (const auto* key : {"in-2", "in-3", "in-4", "in-5"}) {
            auto port = type.ports[0];
            port.key = {key};
            type.ports.push_back(port);
        }
    });
    r.room.b.design.walls.erase(r.wall);
    for (std::size_t i = 0; i < 4; ++i) {
        r.unplug(i);
        r.room.join(r.decoders[i], "out", passer, i ? "in-" + std::to_string(i + 1) : "in");
        if (i >= shown) r.forget(i);
        if (static_cast<int>(i) < outputs) r.room.join(passer, "out-" + std::to_string(i + 1), r.tiles[i]);
    }
    r.room.join(r.room.source("PC-1", WallRoom::port()), "out", passer, "in-5");
    return r.design();
}

int count(const model::Design& design) {
    const auto rules = rules_found(design);
    return static_cast<int>(std::count(rules.begin(), rules.end(), rule));
}

TEST(TooManyWindows, CountsWhatThePresetBringsToAProcessor) {
    EXPECT_EQ(count(processor_of(3, 1, 4)), 1) << "four streams, three windows";
    EXPECT_EQ(count(processor_of(4, 1, 4)), 0) << "the computer on its own lead is not counted";
    EXPECT_EQ(count(processor_of(3, 1, 3)), 0) << "the fourth decoder shows nothing";
    EXPECT_EQ(count(processor_of(2, 2, 4)), 0) << "two outputs of two windows";
    EXPECT_EQ(count(processor_of(1, 2, 4)), 1);
}

}  // namespace streamwright::test::too_many_windows_test
