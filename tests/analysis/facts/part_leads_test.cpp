// Leads that are not drawn, against counts by hand over small designs.
#include "tests/analysis/facts/counted_parts.h"
#include "tests/support/clean_design.h"

#include <gtest/gtest.h>

namespace streamwright::test::part_leads_test {

using namespace counted_parts;
using namespace base::literals;
using catalogue::CableGrade;
using catalogue::Connector;
using catalogue::Signal;

const Part* patch_leads(const std::vector<Part>& parts, Signal signal) {
    for (const auto& part : parts)
        if (part.kind == PartKind::patch_lead && part.lead->signal == signal) return &part;
    return nullptr;
}

TEST(PartLeads, installedCableStraightToAPortNeedsALeadAtEitherEnd) {
    // Four cables of category 6A from endpoints to switches: 4 x 2; one fibre trunk between modules: 2.
    const auto parts = parts_of(clean_design().design());
    const auto* copper = patch_leads(parts, Signal::copper);
    ASSERT_NE(copper, nullptr);
    EXPECT_EQ(copper->quantity, 8);
    EXPECT_EQ(copper->cables.size(), 4u);
    EXPECT_EQ(copper->lead->grade, CableGrade::cat6a);
    EXPECT_EQ(copper->lead->near, Connector::rj45);
    const auto* fibre = patch_leads(parts, Signal::fibre);
    ASSERT_NE(fibre, nullptr);
    EXPECT_EQ(fibre->quantity, 2);
    EXPECT_EQ(fibre->lead->grade, CableGrade::om3);
    EXPECT_EQ(fibre->lead->near, Connector::lc_duplex) << "the socket of the module, not of the cage";
}

TEST(PartLeads, sixFibreLinksNeedTwelveModulesAndTwelveLeads) {
    // Field case F48: transceivers 6 x 2 = 12, duplex leads 6 x 2 = 12.
    DesignBuilder b;
    b.embed(types::module_lr());
    const auto sw = types::make_switch(1, 1_Gbps, 6);
    const auto a = b.device(sw, "SW-A"), c = b.device(sw, "SW-B");
    for (int i = 1; i <= 6; ++i) {
        const auto cage = "s" + std::to_string(i);
        for (const auto& device : {a, c})
            b.port(port_of(device, cage), [](auto& row) { row.module = types::module_lr()->key; });
        b.cable(types::os2(), port_of(a, cage), port_of(c, cage), 80_m);
    }
    const auto parts = parts_of(b.design);
    ASSERT_NE(find(parts, "test.module.10gbase-lr", PartFrom::derived), nullptr);
    EXPECT_EQ(find(parts, "test.module.10gbase-lr", PartFrom::derived)->quantity, 12);
    ASSERT_NE(only(parts, PartKind::patch_lead), nullptr);
    EXPECT_EQ(only(parts, PartKind::patch_lead)->quantity, 12);
    EXPECT_EQ(only(parts, PartKind::patch_lead)->lead->grade, CableGrade::os2);
}

TEST(PartLeads, drawnLeadsAndRearsOfPanelsNeedNoMore) {
    DesignBuilder b;
    const auto sw = b.device(types::switch_24(), "SW-1"), panel = b.device(types::patch_panel(), "PP-1");
    const auto decoder = b.device(types::decoder(), "DEC-1");
    b.cable(types::cat6a_lead(), port_of(sw, "1"), port_of(panel, "f1"));
    const auto cable = b.cable(types::cat6a(), port_of(panel, "r1"), port_of(decoder, "net"), 40_m);
    const auto parts = parts_of(b.design);
    ASSERT_NE(only(parts, PartKind::patch_lead), nullptr);
    EXPECT_EQ(only(parts, PartKind::patch_lead)->quantity, 1) << "at the decoder only";
    EXPECT_EQ(only(parts, PartKind::patch_lead)->devices, std::vector{decoder});
    EXPECT_EQ(only(parts, PartKind::patch_lead)->cables, std::vector{cable});
}

TEST(PartLeads, installedCableOnTheFrontOfAPanelNeedsALead) {
    DesignBuilder b;
    const auto one = b.device(types::patch_panel(), "PP-1"), other = b.device(types::patch_panel(), "PP-2");
    b.cable(types::cat6a(), port_of(one, "f1"), port_of(other, "r1"), 40_m);
    EXPECT_EQ(pieces(parts_of(b.design), PartKind::patch_lead), 1);
    b.cable(types::cat6a(), port_of(one, "r2"), port_of(other, "r2"), 40_m);
    EXPECT_EQ(pieces(parts_of(b.design), PartKind::patch_lead), 1) << "a tie line that is patched nowhere";
}

TEST(PartLeads, cablesThatAreNoNetworkAndOpenEndsNeedNone) {
    DesignBuilder b;
    const auto source = b.device(types::source(), "SRC-1"), encoder = b.device(types::encoder(), "ENC-1");
    b.cable(types::hdmi(), port_of(source, "out"), port_of(encoder, "in"), 2_m);
    EXPECT_EQ(pieces(parts_of(b.design), PartKind::patch_lead), 0);
    b.open_cable(types::cat6a(), port_of(encoder, "net"));
    EXPECT_EQ(pieces(parts_of(b.design), PartKind::patch_lead), 1) << "the end that is plugged";
}

catalogue::DeviceType with_inlet(const std::string& key, Connector connector) {
    catalogue::DeviceType type;
    type.key = {key};
    type.name = key;
    type.ports = {types::make_port("mains", Signal::power, catalogue::Way::in, connector)};
    return type;
}

TEST(PartLeads, eachInletWithoutADrawnCableNeedsOneOfItsKind) {
    DesignBuilder b;
    b.device(with_inlet("test.server", Connector::iec_c14), "MS-1");
    const auto second = b.device(with_inlet("test.server", Connector::iec_c14), "MS-2");
    b.device(with_inlet("test.player", Connector::iec_c8), "PL-1");
    b.device(with_inlet("test.big-ups", Connector::iec_c20), "UPS-2");
    b.device(types::display(), "DSP-1");  // states no inlet
    auto parts = parts_of(b.design);
    EXPECT_EQ(pieces(parts, PartKind::mains_lead), 4);
    for (const auto& part : parts)
        if (part.kind == PartKind::mains_lead) {
            EXPECT_EQ(part.quantity, part.lead->near == Connector::iec_c14 ? 2 : 1);
        }
    catalogue::CableType lead;
    lead.key = {"test.mains"};
    lead.signal = Signal::power;
    lead.use = catalogue::CableUse::lead;
    lead.plugs = {Connector::iec_c13, Connector::iec_c14};
    auto ups = with_inlet("test.ups", Connector::iec_c14);
    ups.ports = {types::make_port("out", Signal::power, catalogue::Way::out, Connector::iec_c13)};
    const auto feed = b.device(ups, "UPS-1");
    b.cable(std::make_shared<const catalogue::CableType>(lead), port_of(feed, "out"), port_of(second, "mains"));
    parts = parts_of(b.design);
    EXPECT_EQ(pieces(parts, PartKind::mains_lead), 3) << "one is drawn now; outlets are no inlets";
    EXPECT_EQ(find(parts, "test.mains")->quantity, 1);
}

}  // namespace streamwright::test::part_leads_test
