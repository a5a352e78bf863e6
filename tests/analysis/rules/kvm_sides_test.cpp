#include "tests/support/clean_design.h"

#include <gmock/gmock.h>

namespace streamwright::test::kvm_sides_test {

using catalogue::Connector;
using catalogue::Signal;
using catalogue::Way;
using testing::ElementsAre;
using testing::IsEmpty;
using namespace base::literals;

/// An end with a USB port of either way, as encoder or as decoder with an input for USB.
catalogue::DeviceType unit(catalogue::DeviceType type, const std::string& key) {
    type.key = {key};
    std::erase_if(type.ports, [](const auto& port) { return port.signal == Signal::usb; });
    type.ports.push_back(types::make_port("b", Signal::usb, Way::usb_device, Connector::usb_b));
    type.ports.push_back(types::make_port("a", Signal::usb, Way::usb_host, Connector::usb_a));
    type.codec->inputs.push_back({{"usb"}, "USB", catalogue::StreamKind::usb});
    return type;
}

/// The clean design with a USB stream from one more encoder to one more decoder, nothing plugged in yet.
struct Session {
    CleanDesign c = clean_design();
    model::DeviceId sender{0}, receiver{0};
    int count = 0;

    Session() {
        sender = c.b.device(unit(types::make_encoder(), "kvm-encoder"), "ENC-9");
        receiver = c.b.device(unit(types::make_decoder(), "kvm-decoder"), "DEC-9");
        const auto source = c.b.device(types::source(), "SRC-9"), display = c.b.device(types::display(), "DSP-9");
        c.b.cable(types::hdmi(), port_of(source, "out"), port_of(sender, "in"), 2_m);
        c.b.cable(types::hdmi(), port_of(receiver, "out"), port_of(display, "in"), 2_m);
        c.b.cable(types::cat6a(), port_of(sender, "net"), port_of(c.switch_a, "9"), 20_m);
        c.b.cable(types::cat6a(), port_of(receiver, "net"), port_of(c.switch_a, "10"), 20_m);
        const auto stream = c.b.stream(sender, 10_Mbps, "239.192.1.9");
        c.b.change<model::Stream>(stream, [](auto& row) { row.kind = catalogue::StreamKind::usb; });
        c.b.subscribe(c.preset, stream, receiver, "usb");
    }
    Session& host(model::DeviceId end) {
        const auto computer = c.b.device(types::source(), "PC-" + std::to_string(++count));
        c.b.cable(types::usb_lead(), port_of(computer, "usb"), port_of(end, "b"), 2_m);
        return *this;
    }
    Session& keyboard(model::DeviceId end) {
        catalogue::DeviceType keys;
        keys.key = {"keys"}, keys.name = "Keyboard", keys.maker = "Generic";
        keys.ports = {types::make_port("usb", Signal::usb, Way::usb_device, Connector::usb_b)};
        const auto peripheral = c.b.device(keys, "KB-" + std::to_string(++count));
        c.b.cable(types::usb_lead(), port_of(end, "a"), port_of(peripheral, "usb"), 2_m);
        return *this;
    }
    std::vector<std::string> rules() const { return rules_found(c.design()); }
    int variant() const { return finding_of(c.design(), "kvm-sides").variant; }
};

// Field case F44: host to host and device to device are errors, host to device passes, either way round.
TEST(KvmSides, passesWithOneHostAndOneDeviceSide) {
    Session there, back;
    EXPECT_THAT(there.host(there.sender).keyboard(there.receiver).rules(), IsEmpty());
    EXPECT_THAT(back.keyboard(back.sender).host(back.receiver).rules(), IsEmpty());
}

TEST(KvmSides, firesWithTwoHosts) {
    Session s;
    EXPECT_THAT(s.host(s.sender).host(s.receiver).rules(), ElementsAre("kvm-sides"));
    EXPECT_THAT(english_sentence(s.c.design(), finding_of(s.c.design(), "kvm-sides")),
                testing::HasSubstr("has 2 USB hosts and 0 ends with peripherals"));
}

TEST(KvmSides, firesWithoutAHost) {
    Session s;
    EXPECT_THAT(s.keyboard(s.sender).keyboard(s.receiver).rules(), ElementsAre("kvm-sides"));
    EXPECT_THAT(english_sentence(s.c.design(), finding_of(s.c.design(), "kvm-sides")),
                testing::HasSubstr("has no USB host and 2 ends with peripherals"));
}

TEST(KvmSides, firesWithoutPeripheralsOrWithTwoSidesOfThem) {
    Session none, two;
    EXPECT_THAT(none.host(none.sender).rules(), ElementsAre("kvm-sides"));
    EXPECT_EQ(none.variant(), 3);
    EXPECT_THAT(two.host(two.sender).keyboard(two.sender).keyboard(two.receiver).rules(), ElementsAre("kvm-sides"));
    EXPECT_EQ(two.variant(), 2);
}

TEST(KvmSides, isSilentWhereAnEndsTypeIsNotKnown) {
    Session s;
    s.c.b.change<model::Device>(s.receiver, [](auto& row) { row.type = {"gone"}; });
    EXPECT_THAT(s.rules(), testing::Not(testing::Contains("kvm-sides")));
}

}  // namespace streamwright::test::kvm_sides_test
