#include "core/analysis/facts/parts.h"

#include "tests/analysis/facts/counted_parts.h"
#include "tests/support/clean_design.h"

#include <gtest/gtest.h>

namespace streamwright::test::parts_test {

using analysis::PartFrom;
using counted_parts::find;
using counted_parts::parts_of;
using namespace base::literals;

TEST(Parts, countsWhatIsDrawn) {
    const auto parts = parts_of(clean_design().design());
    ASSERT_NE(find(parts, "test.encoder"), nullptr);
    EXPECT_EQ(find(parts, "test.encoder")->quantity, 2);
    EXPECT_EQ(find(parts, "test.encoder")->name, "Encoder");
    ASSERT_NE(find(parts, "test.cat6a"), nullptr);
    EXPECT_EQ(find(parts, "test.cat6a")->quantity, 4);
    EXPECT_EQ(find(parts, "test.cat6a")->length, 120_m) << "four cables of 30 m";
    EXPECT_FALSE(find(parts, "test.hdmi")->length) << "leads are bought by the piece";
}

TEST(Parts, derivesTheTransceiversOfTheCages) {
    // Field case F48: two transceivers for each fibre link.
    const auto parts = parts_of(clean_design().design());
    const auto* modules = find(parts, "test.module.10gbase-sr", PartFrom::derived);
    ASSERT_NE(modules, nullptr);
    EXPECT_EQ(modules->quantity, 2);
    EXPECT_EQ(modules->devices.size(), 2u);
}

TEST(Parts, aDirectAttachCableReplacesTwoTransceiversAndALead) {
    // Field case F48, last line. The modules stay set at the ports, as they do when a cable is changed in the drawing.
    auto c = clean_design();
    c.b.embed(counted_parts::direct_attach());
    c.b.change<model::Cable>(c.trunk, [](auto& row) { row.type = counted_parts::direct_attach()->key; });
    const auto parts = parts_of(c.design());
    EXPECT_EQ(find(parts, "test.module.10gbase-sr", PartFrom::derived), nullptr);
    ASSERT_NE(find(parts, "test.dac"), nullptr);
    EXPECT_EQ(find(parts, "test.dac")->quantity, 1);
    for (const auto& part : parts)
        EXPECT_FALSE(part.lead && part.lead->signal == catalogue::Signal::fibre) << "no fibre, no fibre lead";
}

TEST(Parts, countsCablesOfUnknownLength) {
    auto c = clean_design();
    c.b.change<model::Cable>(c.decoder_cable, [](auto& row) { row.length.reset(); });
    const auto parts = parts_of(c.design());
    EXPECT_EQ(find(parts, "test.cat6a")->length, 90_m);
    EXPECT_EQ(find(parts, "test.cat6a")->unknown_lengths, 1);
}

TEST(Parts, derivesTheChassisOfLooseCards) {
    DesignBuilder b;
    auto card = types::make_encoder();
    card.key = {"test.card"};
    card.card_form = "K2";
    for (int i = 0; i < 5; ++i) b.device(card, "ENC-" + std::to_string(i));
    for (const int slots : {2, 4}) {
        catalogue::DeviceType chassis;
        chassis.key = {"test.chassis." + std::to_string(slots)};
        chassis.name = "Chassis";
        chassis.kind = catalogue::DeviceKind::chassis;
        chassis.chassis = catalogue::ChassisFacts{slots, "K2"};
        b.embed(std::make_shared<const catalogue::DeviceType>(chassis));
    }
    const auto parts = parts_of(b.design);
    const auto* chassis = find(parts, "test.chassis.4", PartFrom::derived);
    ASSERT_NE(chassis, nullptr) << "none holds all five: the largest";
    EXPECT_EQ(chassis->quantity, 2);
}

TEST(Parts, leavesCardsInADrawnChassisAlone) {
    DesignBuilder b;
    auto card = types::make_encoder();
    card.key = {"test.card"};
    card.card_form = "K2";
    catalogue::DeviceType type;
    type.key = {"test.chassis"};
    type.kind = catalogue::DeviceKind::chassis;
    type.chassis = catalogue::ChassisFacts{4, "K2"};
    const auto chassis = b.device(type, "CH-1"), loose = b.device(card, "ENC-1");
    b.change<model::Device>(loose, [&](auto& row) { row.chassis = model::ChassisPlace{chassis, 1}; });
    const auto parts = parts_of(b.design);
    EXPECT_EQ(find(parts, "test.chassis")->quantity, 1);
    EXPECT_EQ(find(parts, "test.chassis", PartFrom::derived), nullptr);
}

TEST(Parts, countsRacks) {
    DesignBuilder b;
    b.rack("North 1");
    b.rack("North 2");
    EXPECT_EQ(find(parts_of(b.design), "test.rack")->quantity, 2);
}

}  // namespace streamwright::test::parts_test
