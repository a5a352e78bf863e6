// Networks that nobody means to build: the analysis ends, every finding is well formed, and what has no meaning is
// refused in one sentence.
#include "core/model/edits/all_edits.h"
#include "tests/support/clean_design.h"
#include "tests/support/design_builder.h"

#include <gtest/gtest.h>

#include <limits>

namespace streamwright::test::absurd_networks_test {

using namespace base::literals;

std::size_t count_of(const analysis::Findings& findings, std::string_view rule) {
    return static_cast<std::size_t>(
        std::ranges::count_if(findings, [&](const auto& finding) { return finding.rule == rule; }));
}

/// An encoder and a decoder that show each other something, cabled to these ports.
void add_pair(DesignBuilder& b, const model::PortRef& in, const model::PortRef& out, base::BitRate rate) {
    const auto encoder = b.device(types::encoder(), "ENC"), decoder = b.device(types::decoder(), "DEC");
    b.cable(types::cat6a(), port_of(encoder, "net"), in, 10_m);
    b.cable(types::cat6a(), port_of(decoder, "net"), out, 10_m);
    b.subscribe(b.preset("all"), b.stream(encoder, rate, "239.192.0.1"), decoder);
}

TEST(AbsurdNetworks, NothingAtAllAndNoSwitch) {
    EXPECT_TRUE(analyse_findings(model::Design{}).empty());
    DesignBuilder b;
    const auto encoder = b.device(types::encoder(), "ENC"), decoder = b.device(types::decoder(), "DEC");
    b.subscribe(b.preset("all"), b.stream(encoder, 100_Mbps, "239.192.0.1"), decoder);
    EXPECT_EQ(count_of(analyse_findings(b.design), "stream-cannot-reach"), 1u) << "they are not joined";
    b.cable(types::cat6a(), port_of(encoder, "net"), port_of(decoder, "net"), 10_m);
    EXPECT_EQ(count_of(analyse_findings(b.design), "stream-cannot-reach"), 0u) << "a cable between them does";
}

TEST(AbsurdNetworks, Islands) {
    DesignBuilder b;
    const auto one = b.device(types::switch_24(), "SW-1"), other = b.device(types::switch_24(), "SW-2");
    add_pair(b, port_of(one, "1"), port_of(other, "1"), 100_Mbps);
    EXPECT_EQ(count_of(analyse_findings(b.design), "stream-cannot-reach"), 1u);
}

TEST(AbsurdNetworks, ALinkFromASwitchToItselfIsBlocked) {
    DesignBuilder b;
    const auto lone = b.device(types::switch_24(), "SW-1");
    b.cable(types::cat6a(), port_of(lone, "10"), port_of(lone, "11"), 2_m);
    add_pair(b, port_of(lone, "1"), port_of(lone, "2"), 100_Mbps);
    const auto findings = analyse_findings(b.design);
    EXPECT_EQ(count_of(findings, "stream-cannot-reach"), 0u);
    b.change<model::Device>(lone, [](auto& row) { row.bridging.tree_off = true; });
    EXPECT_GE(count_of(analyse_findings(b.design), "loop-unprotected"), 1u);
}

TEST(AbsurdNetworks, APortCannotBeCabledToItself) {
    DesignBuilder b;
    const auto lone = b.device(types::switch_24(), "SW-1");
    const model::Connect edit{b.fresh<model::CableId>(),
                              types::cat6a(),
                              port_of(lone, "1"),
                              port_of(lone, "1"),
                              std::optional(1_m),
                              {},
                              std::nullopt,
                              {}};
    const auto delta = model::make(b.design, edit);
    ASSERT_FALSE(delta.ok());
    EXPECT_FALSE(delta.error().english().empty());
}

TEST(AbsurdNetworks, AHundredThousandParallelLinks) {
    constexpr int links = 100'000;
    DesignBuilder b;
    auto type = *types::switch_24();
    type.key = {"test.switch-of-very-many-ports"};
    const auto port = type.ports.front();
    type.ports.clear();
    for (int i = 1; i <= links + 1; ++i) {
        type.ports.push_back(port);
        type.ports.back().key = {std::to_string(i)};
    }
    const auto shared = std::make_shared<const catalogue::DeviceType>(type);
    const auto one = b.device(shared, "SW-1"), other = b.device(shared, "SW-2");
    for (int i = 1; i <= links; ++i)
        b.cable(types::cat6a(), port_of(one, std::to_string(i)), port_of(other, std::to_string(i)), 10_m);
    const auto last = std::to_string(links + 1);
    add_pair(b, port_of(one, last), port_of(other, last), 100_Mbps);
    const auto analysis = analysis::analyse(b.design);
    const auto& trees = analysis.facts.get<analysis::SpanningTrees>().trees;
    ASSERT_EQ(trees.size(), 1u);
    // IEEE 802.1Q: of parallel links one forwards, and every other has one blocked end.
    EXPECT_EQ(trees.front().blocked().size(), static_cast<std::size_t>(links - 1));
    EXPECT_EQ(count_of(analysis.findings, "stream-cannot-reach"), 0u);
}

TEST(AbsurdNetworks, RatesOfNothingAndBeyondAllLinks) {
    for (const std::int64_t rate : {std::int64_t{0}, std::int64_t{1}, std::numeric_limits<std::int64_t>::max()})
        for (const int octets : {1, 1400, 65535}) {
            DesignBuilder b;
            const auto lone = b.device(types::switch_24(), "SW-1");
            add_pair(b, port_of(lone, "1"), port_of(lone, "2"), base::BitRate::from_count(rate));
            const auto stream = b.design.streams.begin()->id;
            b.change<model::Stream>(stream, [&](auto& row) { row.payload_octets = octets; });
            const auto findings = analyse_findings(b.design);
            EXPECT_EQ(count_of(findings, "link-slower-than-stream") > 0, rate > 1'000'000'000) << rate << ' ' << octets;
        }
}

TEST(AbsurdNetworks, ARingOfDaisyChainedEndpoints) {
    constexpr int units = 60;
    DesignBuilder b;
    std::vector<model::DeviceId> ring;
    for (int i = 0; i < units; ++i) ring.push_back(b.device(types::make_chained_decoder(), "DEC-" + std::to_string(i)));
    for (int i = 0; i < units; ++i)
        b.cable(types::cat6a(), port_of(ring[i], "aux"), port_of(ring[(i + 1) % units], "net"), 5_m);
    const auto findings = analyse_findings(b.design);
    EXPECT_EQ(count_of(findings, "port-used-twice"), 0u);
}

TEST(AbsurdNetworks, VlanNumbersOutOfTheStandard) {
    for (const int vid : {-1, 0, 4095, 70000}) {
        auto row = model::Vlan::blank(model::VlanId(1));
        row.vid = vid;
        const auto delta = model::make(model::Design{}, model::AddRows{{row}});
        ASSERT_FALSE(delta.ok()) << vid;
        EXPECT_NE(delta.error().english().find("VLAN number"), std::string::npos);
    }
}

}  // namespace streamwright::test::absurd_networks_test
