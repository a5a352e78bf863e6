#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::chassis_slot_clash_test {

using catalogue::DeviceKind;
using testing::ElementsAre;
using testing::IsEmpty;

/// A chassis of two slots for cards of the form "slim"; the expected findings follow from those two numbers.
struct Chassis {
    CleanDesign c = clean_design();
    model::DeviceId chassis{0};

    Chassis() {
        catalogue::DeviceType type;
        type.key = {"chassis"}, type.name = "Chassis", type.maker = "Generic", type.kind = DeviceKind::chassis;
        type.chassis = catalogue::ChassisFacts{2, "slim"};
        chassis = c.b.device(type, "CH-1");
    }
    void card(const std::string& tag, model::DeviceId into, int slot, const std::string& form = "slim") {
        catalogue::DeviceType type;
        type.key = {"card-" + form}, type.name = "Card " + form, type.maker = "Generic", type.kind = DeviceKind::card;
        type.card_form = form;
        const auto id = c.b.device(type, tag);
        c.b.change<model::Device>(id, [&](auto& row) { row.chassis = model::ChassisPlace{into, slot}; });
    }
    std::vector<std::string> rules() const { return rules_found(c.design()); }
};

TEST(ChassisSlotClash, firesForTwoCardsInOneSlot) {
    Chassis two;
    two.card("CARD-1", two.chassis, 1);
    two.card("CARD-2", two.chassis, 2);
    EXPECT_THAT(two.rules(), IsEmpty());
    two.card("CARD-3", two.chassis, 2);
    EXPECT_THAT(two.rules(), ElementsAre("chassis-slot-clash"));
}

TEST(ChassisSlotClash, firesBeyondTheLastSlot) {
    Chassis one;
    one.card("CARD-1", one.chassis, 3);
    EXPECT_THAT(one.rules(), ElementsAre("chassis-slot-clash"));
    EXPECT_EQ(english_sentence(one.c.design(), finding_of(one.c.design(), "chassis-slot-clash")),
              "CARD-1 stands in slot 3 of CH-1, which has 2 slots.");
}

TEST(ChassisSlotClash, firesForAnotherFormAndForWhatIsNoChassis) {
    Chassis other;
    other.card("CARD-1", other.chassis, 1, "wide");
    EXPECT_THAT(other.rules(), ElementsAre("chassis-slot-clash"));
    Chassis none;
    none.card("CARD-1", none.c.switch_a, 1);
    EXPECT_THAT(none.rules(), ElementsAre("chassis-slot-clash"));
}

}  // namespace streamwright::test::chassis_slot_clash_test
