#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::port_used_twice_test {

using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

TEST(PortUsedTwice, firesAndMovesTheSecondToAFreePort) {
    auto c = clean_design();
    auto type = types::make_source();
    type.key = {"test.source.two"};
    type.ports.push_back(type.ports.front());
    type.ports.back().key = {"out2"};
    c.b.embed(std::make_shared<const catalogue::DeviceType>(type));
    c.b.change<model::Device>(c.source, [&](auto& row) { row.type = type.key; });
    const auto display = c.b.device(types::display(), "DSP-9");
    EXPECT_THAT(rules_found(c.design()), IsEmpty());
    c.b.cable(types::hdmi(), port_of(c.source, "out"), port_of(display, "in"), 2_m);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("port-used-twice"));
    const auto finding = finding_of(c.design(), "port-used-twice");
    EXPECT_EQ(finding.measured, base::Value(std::int64_t{2}));
    EXPECT_THAT(terms_of(c.design(), finding), ElementsAre("2 cables - 1 socket = 1 too many"));
    EXPECT_THAT(rules_found(cured(c.design(), finding)), IsEmpty());
}

TEST(PortUsedTwice, firesOnceForThreeCables) {
    auto c = clean_design();
    for (const auto* tag : {"DSP-8", "DSP-9"})
        c.b.cable(types::hdmi(), port_of(c.source, "out"), port_of(c.b.device(types::display(), tag), "in"), 2_m);
    EXPECT_THAT(rules_found(c.design()), ElementsAre("port-used-twice"));
}

}  // namespace streamwright::test::port_used_twice_test
