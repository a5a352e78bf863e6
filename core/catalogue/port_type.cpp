#include "core/catalogue/port_type.h"

namespace streamwright::catalogue {

bool is_network(Signal signal) { return signal == Signal::copper || signal == Signal::fibre; }

bool is_cage(Connector connector) {
    return connector == Connector::sfp || connector == Connector::sfp_plus || connector == Connector::sfp28 ||
           connector == Connector::qsfp_plus;
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

}  // namespace streamwright::catalogue
