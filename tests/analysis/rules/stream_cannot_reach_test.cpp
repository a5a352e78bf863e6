#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::stream_cannot_reach_test {

using testing::Each;
using testing::ElementsAre;
using testing::HasSubstr;
using testing::IsEmpty;

TEST(StreamCannotReach, firesWhereADeviceIsNotCabled) {
    for (const bool encoder : {true, false}) {
        auto c = clean_design();
        c.b.design.cables.erase(encoder ? c.encoder_cable : c.decoder_cable);
        EXPECT_THAT(rules_found(c.design()), ElementsAre("stream-cannot-reach"));
        EXPECT_THAT(english_sentence(c.design(), finding_of(c.design(), "stream-cannot-reach")),
                    HasSubstr(encoder ? "ENC-1" : "DEC-1"));
    }
}

TEST(StreamCannotReach, firesWhereTheSwitchesAreNotJoined) {
    auto c = clean_design();
    c.b.design.cables.erase(c.trunk);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("stream-cannot-reach", "stream-cannot-reach"));
}

TEST(StreamCannotReach, firesInAnotherVlanAndPutsThePortIntoTheRightOne) {
    auto c = clean_design();
    c.b.port(port_of(c.switch_b, "1"), [&](auto& row) { row.untagged = c.second; });
    c.b.change<model::Device>(c.decoder, [](auto& row) { row.addresses.clear(); });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("stream-cannot-reach"));
    EXPECT_THAT(rules_found(cured(c.design(), finding_of(c.design(), "stream-cannot-reach"))), IsEmpty());
}

TEST(StreamCannotReach, firesOnAPortSwitchedOff) {
    auto c = clean_design();
    c.b.port(port_of(c.switch_b, "1"), [](auto& row) { row.disabled = true; });
    EXPECT_THAT(rules_found(c.design()), ElementsAre("stream-cannot-reach"));
    auto trunk = clean_design();
    trunk.b.port(port_of(trunk.switch_b, "s1"), [](auto& row) { row.disabled = true; });
    EXPECT_THAT(rules_found(trunk.design()), Each("stream-cannot-reach"));
}

TEST(StreamCannotReach, isSilentWhereNobodySubscribes) {
    auto c = clean_design();
    c.b.design.cables.erase(c.decoder_cable);
    c.b.design.subscriptions.erase(c.shown);
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
}

}  // namespace streamwright::test::stream_cannot_reach_test
