// One port of a device type: what it carries, which way, by which connector.
#pragma once

#include "core/base/enum_text.h"
#include "core/base/units.h"
#include "core/catalogue/keys.h"
#include "core/catalogue/picture_facts.h"
#include "core/catalogue/usb_facts.h"

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace streamwright::catalogue {

/// Sound inside or beside a picture: two channels of linear PCM, more of them, or a compressed surround bitstream
/// (IEC 61937) that only a surround decoder makes audible.
enum class AudioFormat { stereo_pcm, multichannel_pcm, compressed_surround };

/// What a port or cable carries; the letters V X N F A U C P of drawings and tags.
enum class Signal { video, extender, copper, fibre, audio, usb, control, power };

/// Way of the signal seen from the device. USB: host is the side that plugs into a computer's peripheral (a socket for
/// devices), device is the side that faces a computer. through: passive, passed on to the port named by `passes_to`.
enum class Way { in, out, both, usb_host, usb_device, through };

enum class Connector {
    hdmi,
    displayport,
    bnc,
    usb_a,
    usb_b,
    usb_c,
    rj45,
    sfp,
    sfp_plus,
    sfp28,
    qsfp_plus,
    lc_duplex,
    lc_simplex,
    sc_duplex,
    mpo,
    jack_3_5,
    terminal,
    xlr,
    de9,
    ir_jack,
    iec_c14,  // IEC 60320-1: inlet for 10 A, fed by a C13; C8 for 2.5 A, fed by a C7; C20 for 16 A, fed by a C19
    iec_c13,
    iec_c8,
    iec_c20,
    iec_c19,
    speaker
};

/// Which way round PoE flows at the port, with its class by IEEE 802.3 (0 to 8).
enum class PoeSide { supplies, takes };
/// How the end face of a fibre is ground: flat (PC, UPC) or angled by 8 degrees (APC). They do not mate with each
/// other.
enum class Polish { flat, angled };
struct PoePort {
    PoeSide side = PoeSide::takes;
    int poe_class = 0;
    base::Power draw;          // takes: most the device draws, at the device; supplies: unused
    std::optional<bool> lldp;  // takes: asks for its watts by LLDP once it runs (IEEE 802.3 clause 79)
    friend bool operator==(const PoePort&, const PoePort&) = default;
};

struct PortType {
    PortKey key;
    std::string label;
    Signal signal = Signal::video;
    Way way = Way::both;
    Connector connector = Connector::hdmi;
    std::vector<base::BitRate> rates;    // network ports and cages: line speeds supported
    std::vector<std::string> standards;  // e.g. "HDMI 2.0", "RS-232", "balanced line"
    std::optional<PoePort> poe;
    std::optional<PortKey> passes_to;     // through ports: the other face
    std::optional<int> usb_group;         // ports of one group share one role: only one side may be cabled
    bool auxiliary = false;               // auxiliary network port or daisy-chain port of an endpoint's built-in switch
    bool local_output = false;            // loop-out of an encoder: alive while encoding
    std::optional<int> pairs;             // copper network ports that need fewer than four pairs
    std::vector<AudioFormat> audio;       // sound that an input takes or an output can give; empty: not stated
    std::optional<PictureFacts> picture;  // of picture ports; none: not stated
    std::optional<UsbPort> usb;           // USB ports, where more is known of them than their speed
    std::optional<Polish> polish;         // fibre sockets and adapters
    std::optional<int> joints;    // through ports of fibre: mated pairs between the two faces; usually 1, cassettes 2
    std::optional<bool> crosses;  // through ports of fibre: swaps the two strands of a pair
    std::optional<std::int64_t> most_pixels;  // outputs of LED data: of all cabinets behind it; none: not stated
    friend bool operator==(const PortType&, const PortType&) = default;
};

/// Data for LED cabinets: the plug of a network cable, and neither Ethernet nor an extender's link.
inline constexpr std::string_view led_data = "LED wall data";
bool carries_led_data(const PortType& port);
bool is_network(Signal signal);
bool is_cage(Connector connector);
/// Whether a transceiver of that form goes into the cage: SFP+ and SFP28 cages take the older forms too.
bool module_fits(Connector form, Connector cage);
char signal_letter(Signal signal);
/// What people call it: "HDMI", "RJ45", "LC duplex".
std::string connector_name(Connector connector);

}  // namespace streamwright::catalogue

template <>
struct streamwright::base::EnumText<streamwright::catalogue::Signal> {
    using E = streamwright::catalogue::Signal;
    static constexpr std::array<std::pair<E, std::string_view>, 8> names{{{E::video, "video"},
                                                                          {E::extender, "extender"},
                                                                          {E::copper, "copper"},
                                                                          {E::fibre, "fibre"},
                                                                          {E::audio, "audio"},
                                                                          {E::usb, "usb"},
                                                                          {E::control, "control"},
                                                                          {E::power, "power"}}};
};

template <>
struct streamwright::base::EnumText<streamwright::catalogue::AudioFormat> {
    using E = streamwright::catalogue::AudioFormat;
    static constexpr std::array<std::pair<E, std::string_view>, 3> names{
        {{E::stereo_pcm, "stereo_pcm"},
         {E::multichannel_pcm, "multichannel_pcm"},
         {E::compressed_surround, "compressed_surround"}}};
};

template <>
struct streamwright::base::EnumText<streamwright::catalogue::Way> {
    using E = streamwright::catalogue::Way;
    static constexpr std::array<std::pair<E, std::string_view>, 6> names{{{E::in, "in"},
                                                                          {E::out, "out"},
                                                                          {E::both, "both"},
                                                                          {E::usb_host, "usb_host"},
                                                                          {E::usb_device, "usb_device"},
                                                                          {E::through, "through"}}};
};

template <>
struct streamwright::base::EnumText<streamwright::catalogue::Polish> {
    using E = streamwright::catalogue::Polish;
    static constexpr std::array<std::pair<E, std::string_view>, 2> names{{{E::flat, "flat"}, {E::angled, "angled"}}};
};

template <>
struct streamwright::base::EnumText<streamwright::catalogue::PoeSide> {
    using E = streamwright::catalogue::PoeSide;
    static constexpr std::array<std::pair<E, std::string_view>, 2> names{
        {{E::supplies, "supplies"}, {E::takes, "takes"}}};
};

template <>
struct streamwright::base::EnumText<streamwright::catalogue::Connector> {
    using E = streamwright::catalogue::Connector;
    static constexpr std::array<std::pair<E, std::string_view>, 26> names{{{E::hdmi, "hdmi"},
                                                                           {E::displayport, "displayport"},
                                                                           {E::bnc, "bnc"},
                                                                           {E::usb_a, "usb_a"},
                                                                           {E::usb_b, "usb_b"},
                                                                           {E::usb_c, "usb_c"},
                                                                           {E::rj45, "rj45"},
                                                                           {E::sfp, "sfp"},
                                                                           {E::sfp_plus, "sfp_plus"},
                                                                           {E::sfp28, "sfp28"},
                                                                           {E::qsfp_plus, "qsfp_plus"},
                                                                           {E::lc_duplex, "lc_duplex"},
                                                                           {E::lc_simplex, "lc_simplex"},
                                                                           {E::sc_duplex, "sc_duplex"},
                                                                           {E::mpo, "mpo"},
                                                                           {E::jack_3_5, "jack_3_5"},
                                                                           {E::terminal, "terminal"},
                                                                           {E::xlr, "xlr"},
                                                                           {E::de9, "de9"},
                                                                           {E::ir_jack, "ir_jack"},
                                                                           {E::iec_c14, "iec_c14"},
                                                                           {E::iec_c13, "iec_c13"},
                                                                           {E::iec_c8, "iec_c8"},
                                                                           {E::iec_c20, "iec_c20"},
                                                                           {E::iec_c19, "iec_c19"},
                                                                           {E::speaker, "speaker"}}};
};
