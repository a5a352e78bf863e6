#include "tests/analysis/rules/packed_streams.h"

namespace streamwright::test::too_many_sound_flows_test {

using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

/// The first encoder sends so many flows, and the first decoder has an input for each and receives it.
CleanDesign flowing(int flows, std::optional<int> most_out, std::optional<int> most_in) {
    auto c = clean_design();
    pack_sound(c, {});
    const auto limits = catalogue::SoundFlows{{}, false, {}, most_out};
    change_type(c, c.encoder, [&](auto& type) { type.codec->sound_flows = limits; });
    change_type(c, c.decoder, [&](auto& type) {
        type.codec->sound_flows = catalogue::SoundFlows{{}, false, most_in, {}};
        for (int i = 1; i < flows; ++i)
            type.codec->inputs.push_back({{"f" + std::to_string(i)}, "", catalogue::StreamKind::audio});
    });
    for (int i = 1; i < flows; ++i) {
        const auto stream = c.b.stream(c.encoder, {}, "239.192.7." + std::to_string(i));
        c.b.change<model::Stream>(stream, [](model::Stream& row) {
            row.kind = catalogue::StreamKind::audio;
            row.sound.emplace();
        });
        c.b.subscribe(c.preset, stream, c.decoder, "f" + std::to_string(i));
    }
    return c;
}

TEST(TooManySoundFlows, FiresJustAboveWhatTheSenderHas) {
    EXPECT_THAT(rules_found(flowing(4, 4, {}).design()), IsEmpty());
    const auto design = flowing(5, 4, {}).b.design;
    EXPECT_THAT(rules_found(design), ElementsAre("too-many-sound-flows"));
    EXPECT_EQ(english_sentence(design, finding_of(design, "too-many-sound-flows")),
              "ENC-1 sends 5 flows of sound, and its type sends 4 at once: 1 too many.");
}

TEST(TooManySoundFlows, FiresJustAboveWhatTheReceiverHas) {
    EXPECT_THAT(rules_found(flowing(4, {}, 4).design()), IsEmpty());
    const auto design = flowing(5, {}, 4).b.design;
    EXPECT_THAT(rules_found(design), ElementsAre("too-many-sound-flows"));
    EXPECT_THAT(english_sentence(design, finding_of(design, "too-many-sound-flows")),
                HasSubstr("receives 5 flows of sound in preset Lecture"));
}

TEST(TooManySoundFlows, IsSilentWhereTheTypesStateNoNumber) {
    EXPECT_THAT(rules_found(flowing(5, {}, {}).design()), IsEmpty());
}

TEST(TooManySoundFlows, ATwinIsNoFlowOfItsOwn) {
    auto c = flowing(5, 4, {});
    std::vector<model::StreamId> sound;
    for (const auto& row : c.design().streams)
        if (row.sound) sound.push_back(row.id);
    c.b.change<model::Stream>(sound[0], [&](model::Stream& row) { row.twin = sound[1]; });
    const auto rules = rules_found(c.design());
    EXPECT_EQ(std::count(rules.begin(), rules.end(), "too-many-sound-flows"), 0);
}

}  // namespace streamwright::test::too_many_sound_flows_test
