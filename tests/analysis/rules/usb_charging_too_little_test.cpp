#include "tests/support/usb_room.h"

#include <gmock/gmock.h>

namespace streamwright::test::usb_charging_too_little_test {

using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

/// A laptop that asks for 65 W on a socket that gives so much.
model::Design with(std::optional<catalogue::UsbPort> gives) {
    UsbRoom room;
    const auto usb_c = [](const std::string& key, catalogue::Way way) {
        auto port = UsbRoom::usb_port(key, way);
        port.connector = catalogue::Connector::usb_c;
        return port;
    };
    catalogue::DeviceType laptop, table;
    laptop.key = {"test.laptop"}, laptop.name = "Laptop", laptop.maker = "Generic";
    laptop.ports = {usb_c("c", catalogue::Way::usb_host)};
    laptop.ports[0].usb = catalogue::UsbPort{{}, false, {}, 65_W};
    table.key = {"test.table"}, table.name = "Table socket", table.maker = "Generic";
    table.ports = {usb_c("c", catalogue::Way::usb_device)};
    table.ports[0].usb = gives;
    auto lead = *types::usb_lead();
    lead.key = {"test.usb-c"};
    lead.plugs = {catalogue::Connector::usb_c};
    auto& b = room.c.b;
    b.cable(std::make_shared<const catalogue::CableType>(lead), port_of(b.device(laptop, "LP-1"), "c"),
            port_of(b.device(table, "TB-1"), "c"), 1_m);
    return room.design();
}

TEST(UsbChargingTooLittle, comparesWhatIsAskedAndGiven) {
    EXPECT_THAT(rules_found(with(catalogue::UsbPort{{}, false, 65_W, {}})), IsEmpty());
    const auto weak = with(catalogue::UsbPort{{}, false, 15_W, {}}), none = with(catalogue::UsbPort{});
    EXPECT_THAT(rules_found(weak), ElementsAre("usb-charging-too-little"));
    EXPECT_EQ(finding_of(weak, "usb-charging-too-little").limit, base::Value(65_W));
    EXPECT_EQ(finding_of(none, "usb-charging-too-little").variant, 1);
    EXPECT_THAT(rules_found(with(std::nullopt)), IsEmpty());  // not known
}

}  // namespace streamwright::test::usb_charging_too_little_test
