// A type of device that may be placed: its ports, abilities, size and needs. Each ability is a value of the type.
#pragma once

#include "core/catalogue/codec.h"
#include "core/catalogue/image_facts.h"
#include "core/catalogue/module_facts.h"
#include "core/catalogue/port_type.h"
#include "core/catalogue/switch_facts.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace streamwright::catalogue {

enum class DeviceKind {
    source,
    camera,
    encoder,
    decoder,
    endpoint,
    card,
    chassis,
    network_switch,
    transceiver,
    patch_panel,
    display,
    projector,
    wall_tile,
    extender_sender,
    extender_receiver,
    control_processor,
    management_server,
    rack,
    speaker,
    amplifier,
    other,
    ups,
    microphone,
    audio_processor,
    touch_panel,
    video_processor,
    authentication_server
};

/// How a device is switched on, set and asked from outside.
enum class ControlMethod { ir, serial, network, contact };

/// What one licence is counted by: an encoder, a decoder or any endpoint of the design.
enum class LicencePer { encoder, decoder, endpoint };

/// Licences that a device of the type needs: `count` for every `each` begun.
struct LicenceNeed {
    std::string name;
    LicencePer per = LicencePer::endpoint;
    int each = 1;
    int count = 1;
    friend bool operator==(const LicenceNeed&, const LicenceNeed&) = default;
};

struct PhysicalSize {
    int rack_units = 0;  // 0: not rack-mounted
    base::Length height, width, depth;
    base::Mass mass;
    std::optional<bool> full_depth;  // blocks both faces of the rack
    friend bool operator==(const PhysicalSize&, const PhysicalSize&) = default;
};

struct PowerNeed {
    base::Power most;  // drawn from its own supply, without PoE passed on
    base::ApparentPower most_apparent;
    bool external_supply = false;  // comes with, or needs, a plug-in supply
    friend bool operator==(const PowerNeed&, const PowerNeed&) = default;
};

struct ChassisFacts {
    int slots = 0;
    std::string takes;  // card form
    friend bool operator==(const ChassisFacts&, const ChassisFacts&) = default;
};

struct DeviceType {
    TypeKey key;
    std::string name;   // one short line
    std::string maker;  // "Generic" or invented
    std::string family;
    std::string note;
    DeviceKind kind = DeviceKind::other;
    std::string tag_prefix;  // "ENC": fresh devices are tagged ENC-001, ...
    std::vector<PortType> ports;
    std::optional<Codec> codec;
    std::optional<SwitchFacts> bridging;  // switches, and endpoints with a built-in switch
    std::optional<ModuleFacts> module;    // transceivers
    std::optional<ChassisFacts> chassis;
    std::optional<std::string> card_form;  // fits chassis that take this form
    PhysicalSize size;
    std::optional<PowerNeed> power;
    std::vector<ControlMethod> controlled_by;  // needs any one of these; empty: works without
    std::string control_note;                  // wiring and hidden settings that control depends on
    std::optional<int> usb_hubs;               // that it puts in series between its sides
    std::optional<base::Duration> delay;       // of sound or pictures: in to out, or in to what is seen
    std::optional<ImageFacts> image;           // of what shows pictures; none: not stated
    std::optional<int> most_windows;           // pictures that it composes on one output at once; none: not stated
    std::vector<LicenceNeed> licences;
    std::map<std::string, std::string> unknown;  // keys of a newer format, kept as JSON text

    /// The port of that key; null if the type has none.
    const PortType* find_port(const PortKey& port) const;
    bool can(Role role) const;
    friend bool operator==(const DeviceType&, const DeviceType&) = default;
};

/// What the port controls, or is controlled by: "IR", "RS-232" and its kin, "contact closure", or a network; none:
/// nothing.
std::optional<ControlMethod> control_of(const PortType& port);

}  // namespace streamwright::catalogue

template <>
struct streamwright::base::EnumText<streamwright::catalogue::DeviceKind> {
    using E = streamwright::catalogue::DeviceKind;
    static constexpr std::array<std::pair<E, std::string_view>, 27> names{
        {{E::source, "source"},
         {E::camera, "camera"},
         {E::encoder, "encoder"},
         {E::decoder, "decoder"},
         {E::endpoint, "endpoint"},
         {E::card, "card"},
         {E::chassis, "chassis"},
         {E::network_switch, "switch"},
         {E::transceiver, "transceiver"},
         {E::patch_panel, "patch_panel"},
         {E::display, "display"},
         {E::projector, "projector"},
         {E::wall_tile, "wall_tile"},
         {E::extender_sender, "extender_sender"},
         {E::extender_receiver, "extender_receiver"},
         {E::control_processor, "control_processor"},
         {E::management_server, "management_server"},
         {E::rack, "rack"},
         {E::speaker, "speaker"},
         {E::amplifier, "amplifier"},
         {E::other, "other"},
         {E::ups, "ups"},
         {E::microphone, "microphone"},
         {E::audio_processor, "audio_processor"},
         {E::touch_panel, "touch_panel"},
         {E::video_processor, "video_processor"},
         {E::authentication_server, "authentication_server"}}};
};

template <>
struct streamwright::base::EnumText<streamwright::catalogue::ControlMethod> {
    using E = streamwright::catalogue::ControlMethod;
    static constexpr std::array<std::pair<E, std::string_view>, 4> names{
        {{E::ir, "ir"}, {E::serial, "serial"}, {E::network, "network"}, {E::contact, "contact"}}};
};

template <>
struct streamwright::base::EnumText<streamwright::catalogue::LicencePer> {
    using E = streamwright::catalogue::LicencePer;
    static constexpr std::array<std::pair<E, std::string_view>, 3> names{
        {{E::encoder, "encoder"}, {E::decoder, "decoder"}, {E::endpoint, "endpoint"}}};
};
