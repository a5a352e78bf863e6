// Line speeds. Expected values: IEEE 802.3 physical layers by their names, and the rates the test types state.
#include "core/analysis/facts/link_capacity.h"

#include "tests/support/design_builder.h"

#include <gtest/gtest.h>

namespace streamwright::analysis {
namespace {

using namespace base::literals;
using test::DesignBuilder;
using test::port_of;
namespace types = test::types;

struct Pair {
    DesignBuilder b;
    model::DeviceId left = b.device(types::switch_24(), "L");
    model::DeviceId right = b.device(types::switch_24(), "R");

    RunSpeed speed() const {
        const auto wiring = graph::wire(b.design);
        const auto runs = graph::find_runs(wiring);
        return find_link_capacity(wiring, runs, graph::build_network(wiring, runs)).runs.at(0);
    }
    void set_modules(const types::DevicePtr& left_type, const types::DevicePtr& right_type) {
        for (const auto& [device, type] : {std::pair(left, left_type), std::pair(right, right_type)}) {
            b.embed(type);
            b.port(port_of(device, "s1"), [&, key = type->key](auto& row) { row.module = key; });
        }
    }
};

TEST(LinkCapacity, IsTheHighestSpeedThatBothEndsHave) {
    Pair p;
    p.b.cable(types::cat6a(), port_of(p.left, "1"), port_of(p.right, "1"));
    EXPECT_EQ(p.speed(), (RunSpeed{1_Gbps, NoLink::none, "1000BASE-T"}));
    p.b.port(port_of(p.left, "1"), [](auto& row) { row.rate_limit = 100_Mbps; });
    EXPECT_EQ(p.speed(), (RunSpeed{100_Mbps, NoLink::none, "100BASE-TX"}));
    p.b.port(port_of(p.right, "1"), [](auto& row) { row.disabled = true; });
    EXPECT_EQ(p.speed().reason, NoLink::disabled);
}

TEST(LinkCapacity, OfCagesNeedsModulesThatFitEachOtherAndTheFibre) {
    Pair p;
    const auto cable = p.b.cable(types::om3(), port_of(p.left, "s1"), port_of(p.right, "s1"));
    EXPECT_EQ(p.speed().reason, NoLink::module_missing);
    p.set_modules(types::module_sr(), types::module_sr());
    EXPECT_EQ(p.speed(), (RunSpeed{10_Gbps, NoLink::none, "10GBASE-SR"}));
    p.set_modules(types::module_sr(), types::module_lr());
    EXPECT_EQ(p.speed().reason, NoLink::medium_misfit);
    p.set_modules(types::module_lr(), types::module_lr());
    EXPECT_EQ(p.speed().reason, NoLink::medium_misfit);
    p.b.embed(types::os2());
    p.b.change<model::Cable>(cable, [](auto& row) { row.type = types::os2()->key; });
    EXPECT_EQ(p.speed(), (RunSpeed{10_Gbps, NoLink::none, "10GBASE-LR"}));
    auto other = *types::module_lr();
    other.key = {"test.module.other-colour"};
    other.module->wavelength_nm = types::module_lr()->module->wavelength_nm + 240;
    p.set_modules(types::module_lr(), std::make_shared<const catalogue::DeviceType>(other));
    EXPECT_EQ(p.speed().reason, NoLink::wavelength_misfit);
    other.module->form = catalogue::Connector::qsfp_plus;
    p.set_modules(std::make_shared<const catalogue::DeviceType>(other), types::module_lr());
    EXPECT_EQ(p.speed().reason, NoLink::module_misfit);
}

/// Of one strand both ways, sending and hearing at these wavelengths.
types::DevicePtr one_strand(int sends, int hears) {
    auto type = *types::module_lr();
    type.key = {"test.bidi." + std::to_string(sends) + '.' + std::to_string(hears)};
    type.module->strands = 1;
    type.module->wavelength_nm = sends;
    type.module->receive_nm = hears;
    return std::make_shared<const catalogue::DeviceType>(type);
}

// What one end sends is what the other must hear (IEEE 802.3 clause 59, 1000BASE-BX10: 1490 and 1310 nm; from memory).
TEST(LinkCapacity, OneStrandNeedsOppositeWavelengths) {
    Pair p;
    p.b.cable(types::os2(), port_of(p.left, "s1"), port_of(p.right, "s1"));
    const auto reason = [&](const types::DevicePtr& left, const types::DevicePtr& right) {
        p.set_modules(left, right);
        return p.speed().reason;
    };
    EXPECT_EQ(reason(one_strand(1310, 1490), one_strand(1490, 1310)), NoLink::none);
    EXPECT_EQ(reason(one_strand(1310, 1490), one_strand(1310, 1490)), NoLink::wavelength_misfit);
    EXPECT_EQ(reason(one_strand(1310, 1490), one_strand(1550, 1310)), NoLink::wavelength_misfit);
    EXPECT_EQ(reason(one_strand(1310, 0), one_strand(1490, 0)), NoLink::none) << "not stated: they differ at least";
    EXPECT_EQ(reason(one_strand(1310, 1490), types::module_lr()), NoLink::wavelength_misfit);
}

TEST(LinkCapacity, ADirectAttachCableBringsItsOwnEnds) {
    Pair p;
    catalogue::CableType twinax;
    twinax.key = {"test.dac"};
    twinax.medium = catalogue::Medium::twinax;
    twinax.plugs = {catalogue::Connector::sfp_plus};
    twinax.rates = {10_Gbps};
    p.b.cable(std::make_shared<const catalogue::CableType>(twinax), port_of(p.left, "s1"), port_of(p.right, "s1"));
    EXPECT_EQ(p.speed().rate, 10_Gbps);
    p.set_modules(types::module_sr(), types::module_sr());
    EXPECT_EQ(p.speed().reason, NoLink::module_misfit);
}

TEST(LinkCapacity, AGroupAddsItsMembersAndNoCommonRateIsNoLink) {
    Pair p;
    for (const char* port : {"1", "2", "3"}) {
        p.b.cable(types::cat6a(), port_of(p.left, port), port_of(p.right, port));
        for (const auto device : {p.left, p.right})
            p.b.port(port_of(device, port), [](auto& row) { row.aggregate = "t"; });
    }
    p.b.port(port_of(p.left, "3"), [](auto& row) { row.rate_limit = 10_Mbps; });  // its ports start at 100 Mb/s
    const auto wiring = graph::wire(p.b.design);
    const auto runs = graph::find_runs(wiring);
    const auto network = graph::build_network(wiring, runs);
    const auto capacity = find_link_capacity(wiring, runs, network);
    ASSERT_EQ(network.links.size(), 1U);
    EXPECT_EQ(capacity.arcs, (std::vector<std::optional<base::BitRate>>{2_Gbps, 2_Gbps}));
    int without = 0;
    for (const auto& run : capacity.runs) without += run.reason == NoLink::no_common_rate ? 1 : 0;
    EXPECT_EQ(without, 1);
}

}  // namespace
}  // namespace streamwright::analysis
