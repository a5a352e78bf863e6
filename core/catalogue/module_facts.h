// A transceiver: which cage takes it, which medium it lights, by which physical layer.
#pragma once

#include "core/base/enum_text.h"
#include "core/base/units.h"
#include "core/catalogue/port_type.h"

#include <algorithm>
#include <optional>
#include <string>
#include <vector>

namespace streamwright::catalogue {

enum class Medium { balanced_copper, multimode, singlemode, coaxial, twinax, other };

struct ModuleFacts {
    Connector form = Connector::sfp_plus;  // the cage it goes into; smaller speeds in larger cages by the cage's rates
    std::string phy;                       // full name, for example "10GBASE-SR"
    base::BitRate rate;
    Medium medium = Medium::multimode;
    Connector connector = Connector::lc_duplex;
    int wavelength_nm = 0;  // transmit wavelength; 0 for copper
    int strands = 2;
    int receive_nm = 0;            // of one strand both ways: the wavelength it hears; 0: not stated
    std::optional<Polish> polish;  // of its socket
    friend bool operator==(const ModuleFacts&, const ModuleFacts&) = default;
};

/// Whether the transceiver goes into the cage and lights a speed that the port supports.
inline bool module_works(const ModuleFacts& module, const PortType& port) {
    return module_fits(module.form, port.connector) &&
           std::find(port.rates.begin(), port.rates.end(), module.rate) != port.rates.end();
}

}  // namespace streamwright::catalogue

template <>
struct streamwright::base::EnumText<streamwright::catalogue::Medium> {
    using E = streamwright::catalogue::Medium;
    static constexpr std::array<std::pair<E, std::string_view>, 6> names{{{E::balanced_copper, "balanced_copper"},
                                                                          {E::multimode, "multimode"},
                                                                          {E::singlemode, "singlemode"},
                                                                          {E::coaxial, "coaxial"},
                                                                          {E::twinax, "twinax"},
                                                                          {E::other, "other"}}};
};
