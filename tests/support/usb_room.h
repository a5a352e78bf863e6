// The clean design with a computer, and endpoints that carry USB between it and what is plugged in at the other end.
#pragma once

#include "tests/support/clean_design.h"

namespace streamwright::test {

struct UsbRoom {
    CleanDesign c = clean_design();
    model::DeviceId computer, sender, receiver;
    int count = 0;

    static catalogue::PortType usb_port(const std::string& key, catalogue::Way way) {
        const bool socket = way == catalogue::Way::usb_host;
        auto port = types::make_port(key, catalogue::Signal::usb, way,
                                     socket ? catalogue::Connector::usb_a : catalogue::Connector::usb_b);
        port.standards = {"USB 2.0"};
        return port;
    }
    /// An end with a USB port of either way and an input for USB.
    static catalogue::DeviceType end(catalogue::DeviceType type, const std::string& key,
                                     const std::optional<catalogue::UsbCarriage>& carriage) {
        type.key = {key};
        std::erase_if(type.ports, [](const auto& port) { return port.signal == catalogue::Signal::usb; });
        type.ports.push_back(usb_port("b", catalogue::Way::usb_device));
        type.ports.push_back(usb_port("a", catalogue::Way::usb_host));
        type.codec->inputs.push_back({{"usb"}, "USB", catalogue::StreamKind::usb});
        type.codec->usb = carriage;
        return type;
    }

    explicit UsbRoom(const std::optional<catalogue::UsbCarriage>& carriage = catalogue::UsbCarriage{})
        : computer(c.b.device(types::source(), "PC-1")),
          sender(c.b.device(end(types::make_encoder(), "usb-encoder", carriage), "ENC-9")),
          receiver(c.b.device(end(types::make_decoder(), "usb-decoder", carriage), "DEC-9")) {
        auto& b = c.b;
        const auto display = b.device(types::display(), "DSP-9");
        b.cable(types::hdmi(), port_of(computer, "out"), port_of(sender, "in"), base::Length::from_count(2'000'000));
        b.cable(types::hdmi(), port_of(receiver, "out"), port_of(display, "in"), base::Length::from_count(2'000'000));
        const auto run = base::Length::from_count(20'000'000);
        b.cable(types::cat6a(), port_of(sender, "net"), port_of(c.switch_a, "9"), run);
        b.cable(types::cat6a(), port_of(receiver, "net"), port_of(c.switch_a, "10"), run);
    }
    /// The computer at the encoder, its USB on the decoder.
    void session() {
        lead(port_of(computer, "usb"), port_of(sender, "b"));
        const auto stream = c.b.stream(sender, base::BitRate::from_count(10'000'000), "239.192.1.9");
        c.b.change<model::Stream>(stream, [](auto& row) { row.kind = catalogue::StreamKind::usb; });
        c.b.subscribe(c.preset, stream, receiver, "usb");
    }
    void lead(const model::PortRef& socket, const model::PortRef& plug) {
        c.b.cable(types::usb_lead(), socket, plug, base::Length::from_count(2'000'000));
    }
    model::DeviceId plug(model::DeviceId into, const std::string& socket, catalogue::DeviceType type) {
        const auto device = c.b.device(type, "USB-" + std::to_string(++count));
        lead(port_of(into, socket), port_of(device, "usb"));
        return device;
    }
    void plug_camera(model::DeviceId into, const std::string& socket, base::BitRate sends) {
        catalogue::DeviceType type;
        type.key = {"test.camera." + std::to_string(sends.count())}, type.name = "USB camera", type.maker = "Generic";
        type.ports = {usb_port("usb", catalogue::Way::usb_device)};
        type.ports[0].usb = catalogue::UsbPort{sends, false, {}, {}};
        plug(into, socket, type);
    }
    /// A hub that counts for so many.
    model::DeviceId plug_hub(model::DeviceId into, const std::string& socket, int hubs) {
        catalogue::DeviceType type;
        type.key = {"test.hub." + std::to_string(hubs)}, type.name = "Hub", type.maker = "Generic";
        type.ports = {usb_port("usb", catalogue::Way::usb_device), usb_port("1", catalogue::Way::usb_host)};
        type.usb_hubs = hubs;
        return plug(into, socket, type);
    }
    const model::Design& design() const { return c.design(); }
};

}  // namespace streamwright::test
