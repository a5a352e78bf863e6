#include "core/catalogue/port_type.h"

#include <algorithm>

namespace streamwright::catalogue {

bool is_network(Signal signal) { return signal == Signal::copper || signal == Signal::fibre; }

bool carries_led_data(const PortType& port) {
    return port.signal == Signal::extender &&
           std::find(port.standards.begin(), port.standards.end(), led_data) != port.standards.end();
}

bool is_cage(Connector connector) {
    return connector == Connector::sfp || connector == Connector::sfp_plus || connector == Connector::sfp28 ||
           connector == Connector::qsfp_plus;
}

bool module_fits(Connector form, Connector cage) {
    if (form == cage) return true;
    if (cage == Connector::sfp28) return form == Connector::sfp_plus || form == Connector::sfp;
    return cage == Connector::sfp_plus && form == Connector::sfp;
}

char signal_letter(Signal signal) {
    switch (signal) {
        case Signal::video:
            return 'V';
        case Signal::extender:
            return 'X';
        case Signal::copper:
            return 'N';
        case Signal::fibre:
            return 'F';
        case Signal::audio:
            return 'A';
        case Signal::usb:
            return 'U';
        case Signal::control:
            return 'C';
        case Signal::power:
            return 'P';
    }
    return '?';
}

std::string connector_name(Connector connector) {
    using C = Connector;
    static constexpr std::pair<C, std::string_view> names[] = {{C::hdmi, "HDMI"},
                                                               {C::displayport, "DisplayPort"},
                                                               {C::bnc, "BNC"},
                                                               {C::usb_a, "USB A"},
                                                               {C::usb_b, "USB B"},
                                                               {C::usb_c, "USB C"},
                                                               {C::rj45, "RJ45"},
                                                               {C::sfp, "SFP"},
                                                               {C::sfp_plus, "SFP+"},
                                                               {C::sfp28, "SFP28"},
                                                               {C::qsfp_plus, "QSFP+"},
                                                               {C::lc_duplex, "LC duplex"},
                                                               {C::lc_simplex, "LC"},
                                                               {C::sc_duplex, "SC duplex"},
                                                               {C::mpo, "MPO"},
                                                               {C::jack_3_5, "3.5 mm jack"},
                                                               {C::terminal, "screw terminal"},
                                                               {C::xlr, "XLR"},
                                                               {C::de9, "DE-9"},
                                                               {C::ir_jack, "IR jack"},
                                                               {C::iec_c14, "IEC C14"},
                                                               {C::iec_c13, "IEC C13"},
                                                               {C::iec_c8, "IEC C8"},
                                                               {C::iec_c20, "IEC C20"},
                                                               {C::iec_c19, "IEC C19"},
                                                               {C::speaker, "speaker terminal"}};
    for (const auto& [each, name] : names)
        if (each == connector) return std::string(name);
    return std::string(base::enum_text(connector));
}

}  // namespace streamwright::catalogue
