#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::usb_both_roles_cabled_test {

using catalogue::Connector;
using catalogue::Signal;
using catalogue::Way;
using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

/// An endpoint with a USB port toward a computer and one toward peripherals, in one group or in none.
struct Desk {
    CleanDesign c = clean_design();
    model::DeviceId unit{0}, computer{0}, keyboard{0};

    explicit Desk(std::optional<int> group) {
        catalogue::DeviceType type;
        type.key = {"usb-unit"}, type.name = "Unit", type.maker = "Generic";
        type.ports = {types::make_port("b", Signal::usb, Way::usb_device, Connector::usb_b),
                      types::make_port("a", Signal::usb, Way::usb_host, Connector::usb_a)};
        for (auto& port : type.ports) port.usb_group = group;
        unit = c.b.device(type, "EP-9");
        computer = c.b.device(types::source(), "PC-9");
        catalogue::DeviceType keys;
        keys.key = {"keys"}, keys.name = "Keyboard", keys.maker = "Generic";
        keys.ports = {types::make_port("usb", Signal::usb, Way::usb_device, Connector::usb_b)};
        keyboard = c.b.device(keys, "KB-9");
    }
    void to_computer() { c.b.cable(types::usb_lead(), port_of(computer, "usb"), port_of(unit, "b"), 2_m); }
    void to_keyboard() { c.b.cable(types::usb_lead(), port_of(unit, "a"), port_of(keyboard, "usb"), 2_m); }
};

TEST(UsbBothRolesCabled, firesWhereBothSidesOfOneGroupAreCabled) {
    Desk desk(1);
    desk.to_computer();
    EXPECT_THAT(rules_found(desk.c.design()), IsEmpty()) << "one side only";
    desk.to_keyboard();
    EXPECT_THAT(rules_found(desk.c.design()), ElementsAre("usb-both-roles-cabled"));
}

TEST(UsbBothRolesCabled, isSilentWhereTheTypeSharesNoRole) {
    Desk desk(std::nullopt);
    desk.to_computer();
    desk.to_keyboard();
    EXPECT_THAT(rules_found(desk.c.design()), IsEmpty());
}

}  // namespace streamwright::test::usb_both_roles_cabled_test
