// One line from an output to an input, with what the two ports state; for the tests of lines that are no network.
#pragma once

#include "tests/support/clean_design.h"

#include <string>

namespace streamwright::test {

class LineOf {
public:
    LineOf(catalogue::Signal signal, catalogue::Connector connector, const std::string& from, const std::string& to,
           base::Length length = base::Length::from_count(2'000'000)) {
        using catalogue::Way;
        const bool usb = signal == catalogue::Signal::usb;
        const auto end = [&](const char* key, Way way, const std::string& standard) {
            catalogue::DeviceType type;
            type.key = {std::string("test.line.") + key};
            type.name = key;
            type.maker = "Generic";
            type.ports = {types::make_port("p", signal, way, connector)};
            if (!standard.empty()) type.ports[0].standards = {standard};
            return b.device(type, key);
        };
        type_.key = {"test.line"};
        type_.name = "Line";
        type_.maker = "Generic";
        type_.signal = signal;
        type_.plugs = {connector};
        if (connector == catalogue::Connector::bnc) type_.medium = catalogue::Medium::coaxial;
        const auto a = end("from", usb ? Way::usb_host : Way::out, from);
        const auto z = end("to", usb ? Way::usb_device : Way::in, to);
        cable = b.cable(std::make_shared<const catalogue::CableType>(type_), port_of(a, "p"), port_of(z, "p"), length);
    }
    template <class Change>
    void type(Change&& change) {
        change(type_);
        b.embed(std::make_shared<const catalogue::CableType>(type_));
    }
    void length(base::Length length) {
        b.change<model::Cable>(cable, [&](auto& row) { row.length = length; });
    }

private:
    catalogue::CableType type_;

public:
    DesignBuilder b{5};
    model::CableId cable{0};
};

}  // namespace streamwright::test
