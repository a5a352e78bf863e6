#include "core/analysis/line_reach.h"

#include "core/standards/line_lengths.h"
#include "core/standards/trade_lengths.h"
#include "core/standards/usb.h"

#include <algorithm>

namespace streamwright::analysis {

namespace line_reach_detail {

using catalogue::Signal;
using standards::PictureLink;
using namespace base::literals;

std::optional<LineReach> habit(std::string_view name) {
    const auto* row = standards::trade_length(name);
    if (!row) return std::nullopt;
    return LineReach{std::string(name), row->from, row->to, false, false, row->source};
}

const PictureLink* link_at(const graph::Wiring& wiring, graph::PortAt port) {
    for (const auto& standard : wiring.port_type(port).standards)
        if (const auto* link = standards::picture_link(standard)) return link;
    return nullptr;
}

/// The lesser of what the two ends give; the other where one is not known.
const PictureLink* slower(const graph::Wiring& wiring, const graph::Run& run) {
    const auto *a = link_at(wiring, *run.a), *b = link_at(wiring, *run.b);
    if (!a || !b) return a ? a : b;
    return a->raw <= b->raw ? a : b;
}

/// Then the loss is reckoned, and no habit is needed.
bool losses_stated(const graph::Wiring& wiring, const graph::Run& run) {
    return std::all_of(run.cables.begin(), run.cables.end(), [&](int cable) {
        const auto* type = wiring.cables[static_cast<std::size_t>(cable)].type;
        return type && !type->coax_losses.empty();
    });
}

std::optional<LineReach> pictures(const graph::Wiring& wiring, const graph::Run& run) {
    const auto* link = slower(wiring, run);
    if (!link) return std::nullopt;
    const auto name = link->name;
    if (link->coding == standards::LinkCoding::sdi) {
        auto whole = habit("3G-SDI, whole path");
        if (name != "3G-SDI" || losses_stated(wiring, run)) return std::nullopt;
        whole->line = name;
        return whole;
    }
    if (name.starts_with("DisplayPort"))
        return habit(name.find("UHBR") == std::string_view::npos ? "DisplayPort HBR2 or HBR3, passive copper"
                                                                 : "DisplayPort UHBR, passive copper");
    if (link->raw <= base::BitRate::from_count(4'950'000'000)) return habit("HDMI 4.95 Gbit/s, passive copper");
    if (link->raw <= base::BitRate::from_count(10'200'000'000)) return habit("HDMI 10.2 Gbit/s, passive copper");
    if (link->raw <= 18_Gbps) return habit("HDMI 18 Gbit/s, passive copper");
    return habit("HDMI 48 Gbit/s, passive copper");
}

std::optional<LineReach> usb(const std::string& standard) {
    if (!standard.starts_with("USB 2") && !standard.starts_with("USB 3")) return std::nullopt;
    const bool second = standard.starts_with("USB 2");
    const auto& row = standards::usb_class(second ? standards::UsbSpeed::high : standards::UsbSpeed::super_5);
    return LineReach{second ? "USB 2.0" : "USB 3", row.cable, row.cable, second, false, row.source};
}

std::optional<LineReach> serial(const graph::Wiring& wiring, const graph::Run& run) {
    int picofarad = 0;
    for (const int index : run.cables) {
        const auto* type = wiring.cables[static_cast<std::size_t>(index)].type;
        picofarad = std::max(picofarad, type ? type->picofarad_per_m.value_or(0) : 0);
    }
    const LineReach usual{"RS-232", standards::rs232_usual_length, standards::rs232_usual_length, false,
                          false,    standards::rs232_usual_source};
    if (picofarad == 0) return usual;
    const auto length = standards::rs232_length(standards::Capacitance::from_count(picofarad));
    return LineReach{"RS-232", length, length, true, false, standards::rs232_source};
}

std::optional<LineReach> control(const graph::Wiring& wiring, const graph::Run& run, const std::string& standard) {
    if (standard == "RS-232") return serial(wiring, run);
    if (standard == "IR") return habit("infrared emitter");
    if (standard == "contact closure") return habit("contact closure");
    if (standard == "RS-485" || standard == "RS-422")
        return LineReach{standard,
                         standards::balanced_serial_length,
                         standards::balanced_serial_length,
                         true,
                         false,
                         standard == "RS-485" ? standards::rs485_source : standards::rs422_source};
    return std::nullopt;
}

std::optional<LineReach> sound(const std::string& standard) {
    if (standard == "balanced line") return habit("analogue sound, balanced line");
    if (standard == "unbalanced line") return habit("analogue sound, unbalanced line");
    if (standard == "AES3") return habit("AES3, 110 ohm");
    return std::nullopt;
}

std::optional<LineReach> published(const graph::Wiring& wiring, const graph::Run& run) {
    const auto standard = standard_of(wiring, run);
    switch (wiring.port_type(*run.a).signal) {
        case Signal::video:
            return pictures(wiring, run);
        case Signal::extender:
            return habit("pictures over twisted pairs");
        case Signal::usb:
            return usb(standard);
        case Signal::control:
            return control(wiring, run, standard);
        case Signal::audio:
            return sound(standard);
        default:
            return std::nullopt;
    }
}

/// A type that states how far it works knows better, and a rule of its own holds it to that.
bool all_state_their_own(const graph::Wiring& wiring, const graph::Run& run) {
    return std::all_of(run.cables.begin(), run.cables.end(), [&](int cable) {
        const auto* type = wiring.cables[static_cast<std::size_t>(cable)].type;
        return type && type->most_length;
    });
}

}  // namespace line_reach_detail

std::string standard_of(const graph::Wiring& wiring, const graph::Run& run) {
    const auto &a = wiring.port_type(*run.a).standards, &b = wiring.port_type(*run.b).standards;
    for (const auto& each : a)
        if (std::find(b.begin(), b.end(), each) != b.end()) return each;
    if (!a.empty()) return a.front();
    return b.empty() ? std::string() : b.front();
}

std::optional<LineReach> line_reach(const graph::Wiring& wiring, const graph::Run& run) {
    using namespace line_reach_detail;
    if (!run.a || !run.b || run.cables.empty() || all_state_their_own(wiring, run)) return std::nullopt;
    auto reach = published(wiring, run);
    if (!reach) return reach;
    for (const auto& limit : wiring.design.settings().cabling.lines)
        if (limit.line == reach->line && limit.length) {
            reach->careful = reach->most = *limit.length;
            reach->set = true;
        }
    return reach;
}

}  // namespace streamwright::analysis
