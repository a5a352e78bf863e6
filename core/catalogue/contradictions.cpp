#include "core/catalogue/contradictions.h"

#include "core/catalogue/detail/judge.h"
#include "core/catalogue/detail/judge_essence.h"
#include "core/catalogue/detail/judge_image.h"
#include "core/standards/picture_links.h"

#include <algorithm>

namespace streamwright::catalogue {

namespace contradictions_detail {

constexpr std::size_t longest_name = 200;
constexpr std::size_t most_ports = 1024;

bool key_ok(const std::string& key) {
    return !key.empty() && key.size() <= longest_name && std::all_of(key.begin(), key.end(), [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') || c == '-' || c == '_' || c == '.';
    });
}

bool line_ok(const std::string& text) {
    return text.size() <= longest_name && std::none_of(text.begin(), text.end(), [](char c) {
               return static_cast<unsigned char>(c) < 32 || c == 127;
           });
}

bool rates_ok(const std::vector<base::BitRate>& rates) {
    for (std::size_t i = 0; i < rates.size(); ++i)
        if (rates[i].count() <= 0 || (i > 0 && rates[i] <= rates[i - 1])) return false;
    return true;
}

void judge_names(Judge& judge, const std::string& key, const std::string& name, const std::string& maker) {
    judge.refuse_if(!key_ok(key), "key", "must be small letters, digits, hyphens, dots or underscores");
    judge.refuse_if(name.empty() || !line_ok(name), "name", "must be one line of 1 to 200 characters");
    judge.refuse_if(maker.empty() || !line_ok(maker), "maker", "must be one line of 1 to 200 characters");
}

void judge_poe(Judge& judge, const PortType& port, const std::string& field) {
    if (!port.poe) return;
    judge.refuse_if(port.signal != Signal::copper || is_cage(port.connector), field + ".poe",
                    "only copper network ports carry PoE");
    judge.refuse_if(port.poe->poe_class < 0 || port.poe->poe_class > 8, field + ".poe.class",
                    "classes run from 0 to 8 (IEEE 802.3)");
    judge.refuse_if(port.poe->draw.count() < 0, field + ".poe.draw_mw", "must not be negative");
}

void judge_passage(Judge& judge, const DeviceType& type, const PortType& port, const std::string& field) {
    judge.refuse_if((port.way == Way::through) != port.passes_to.has_value(), field + ".passes_to",
                    "stands on through ports, and only there");
    if (!port.passes_to) return;
    const PortType* other = type.find_port(*port.passes_to);
    judge.refuse_if(other == nullptr, field + ".passes_to", "names a port that the type does not have");
    if (other == nullptr) return;
    judge.refuse_if(other == &port, field + ".passes_to", "names the port itself");
    judge.refuse_if(other->passes_to != port.key, field + ".passes_to", "the port it names does not pass back to it");
    judge.refuse_if(other->signal != port.signal, field + ".passes_to", "the port it names carries another signal");
}

void judge_usb_port(Judge& judge, const PortType& port, const std::string& field) {
    if (!port.usb) return;
    const auto& usb = *port.usb;
    const auto below = [](const auto& value) { return value && value->count() <= 0; };
    judge.refuse_if(port.signal != Signal::usb, field + ".usb", "only USB ports have such facts");
    judge.refuse_if(below(usb.isochronous), field + ".usb.isochronous_bps", "must be above zero");
    judge.refuse_if(below(usb.charges) || (usb.charges && usb.charges->count() > 240'000), field + ".usb.charges_mw",
                    "must be above zero and at most 240 W (USB Power Delivery 3.1)");
    judge.refuse_if(below(usb.charging) || (usb.charging && usb.charging->count() > 240'000),
                    field + ".usb.charging_mw", "must be above zero and at most 240 W (USB Power Delivery 3.1)");
    judge.refuse_if((usb.charges || usb.charging) && port.connector != Connector::usb_c, field + ".usb",
                    "charging stands on USB-C ports only");
    judge.refuse_if(usb.charges && usb.charging, field + ".usb", "charges and is charged at once");
}

void judge_usb_carriage(Judge& judge, const UsbCarriage& usb) {
    judge.refuse_if(usb.isochronous && usb.isochronous->count() < 0, "codec.usb.isochronous_bps",
                    "must not be negative");
    judge.refuse_if(usb.human_interface_only && usb.isochronous && usb.isochronous->count() > 0,
                    "codec.usb.human_interface_only", "carries no isochronous device");
    judge.refuse_if(usb.hubs && (*usb.hubs < 0 || *usb.hubs > 5), "codec.usb.hubs", "must be 0 to 5 (USB 2.0)");
    judge.refuse_if(usb.devices && *usb.devices < 1, "codec.usb.devices", "must be at least 1");
}

void judge_fibre_port(Judge& judge, const PortType& port, const std::string& field) {
    const bool passage = port.signal == Signal::fibre && port.way == Way::through;
    judge.refuse_if(port.polish && port.signal != Signal::fibre, field + ".polish", "stands on fibre ports only");
    judge.refuse_if(port.joints && !passage, field + ".joints", "stands on through ports of fibre only");
    judge.refuse_if(port.joints && (*port.joints < 0 || *port.joints > 10), field + ".joints", "must be 0 to 10");
    judge.refuse_if(port.crosses && !passage, field + ".crosses", "stands on through ports of fibre only");
}

/// Lists of rasters name no colour form: that is said once for all of them.
void judge_raster(Judge& judge, const standards::VideoFormat& format, const std::string& field) {
    const standards::VideoFormat plain;
    judge.refuse_if(format.sampling != plain.sampling || format.depth != plain.depth || format.range != plain.range,
                    field, "names raster and rate alone, such as 2160p60");
}

void judge_depth(Judge& judge, const std::optional<int>& depth, const std::string& field) {
    judge.refuse_if(depth && (*depth < 8 || *depth > 16), field, "must be 8 to 16 bits per component");
}

void judge_picture(Judge& judge, const PortType& port, const std::string& field) {
    if (!port.picture) return;
    const auto& facts = *port.picture;
    constexpr std::size_t most_formats = 64;
    judge.refuse_if(port.signal != Signal::video && port.signal != Signal::extender, field,
                    "only picture ports have it");
    judge.refuse_if(port.way == Way::through, field, "a passive port takes what its cables carry");
    judge.refuse_if(facts.formats.size() > most_formats, field + ".formats", "are more than 64");
    for (const auto& format : facts.formats) judge_raster(judge, format, field + ".formats");
    judge.refuse_if(any_twice(facts.formats, [](const auto& format) { return standards::text(format); }),
                    field + ".formats", "name a format twice");
    judge.refuse_if(any_twice(facts.samplings, [](auto each) { return each; }), field + ".samplings",
                    "name a sampling twice");
    judge.refuse_if(any_twice(facts.ranges, [](auto each) { return each; }), field + ".ranges", "name a range twice");
    judge_depth(judge, facts.most_depth, field + ".most_depth");
    judge.refuse_if(facts.hdcp_most_devices && *facts.hdcp_most_devices < 0, field + ".hdcp_most_devices",
                    "must not be negative");
    judge.refuse_if(facts.hdcp_most_levels && *facts.hdcp_most_levels < 0, field + ".hdcp_most_levels",
                    "must not be negative");
    judge.refuse_if((facts.repeats || facts.captures) && port.way == Way::out, field,
                    "repeats and captures stand on inputs");
}

void judge_port(Judge& judge, const DeviceType& type, const PortType& port) {
    const std::string field = "ports[" + port.key.text + "]";
    judge.refuse_if(!key_ok(port.key.text), field + ".key",
                    "must be small letters, digits, hyphens, dots or underscores");
    judge.refuse_if(!line_ok(port.label), field + ".label", "must be one line of at most 200 characters");
    const bool usb_way = port.way == Way::usb_host || port.way == Way::usb_device;
    judge.refuse_if(usb_way != (port.signal == Signal::usb) && port.way != Way::through, field + ".way",
                    "usb_host and usb_device stand on USB ports, and USB ports bear one of them");
    judge.refuse_if(port.usb_group && port.signal != Signal::usb, field + ".usb_group", "only USB ports have one");
    const bool active_network = is_network(port.signal) && port.way != Way::through;
    judge.refuse_if(is_cage(port.connector) && !active_network, field + ".connector", "a cage is a network port");
    judge.refuse_if(active_network && port.rates.empty(), field + ".rates_bps",
                    "a network port or cage must state its speeds");
    judge.refuse_if(!active_network && !port.rates.empty(), field + ".rates_bps",
                    "only active network ports have speeds");
    judge.refuse_if(!rates_ok(port.rates), field + ".rates_bps", "must be above zero and rise");
    judge.refuse_if(active_network && port.way != Way::both, field + ".way", "a network port goes both ways");
    judge.refuse_if(port.auxiliary && !active_network, field + ".auxiliary", "only network ports are auxiliary");
    judge.refuse_if(port.local_output && (port.signal != Signal::video || port.way != Way::out),
                    field + ".local_output", "a local output is a picture output");
    judge.refuse_if(port.local_output && !type.can(Role::encoder), field + ".local_output",
                    "a local output belongs to a type that encodes");
    judge.refuse_if(port.pairs && (port.signal != Signal::copper || (*port.pairs != 2 && *port.pairs != 4)),
                    field + ".pairs", "2 or 4, on copper network ports");
    judge.refuse_if(!port.audio.empty() && port.signal != Signal::audio && port.signal != Signal::video,
                    field + ".audio", "only picture and audio ports carry sound");
    judge.refuse_if(any_twice(port.audio, [](AudioFormat format) { return format; }), field + ".audio",
                    "names a format twice");
    judge_usb_port(judge, port, field);
    judge_picture(judge, port, field + ".picture");
    judge_led(judge, port, field + ".most_pixels");
    judge_poe(judge, port, field);
    judge_fibre_port(judge, port, field);
    judge_passage(judge, type, port, field);
}

void judge_codec(Judge& judge, const Codec& codec, const DeviceType& type) {
    judge.refuse_if(codec.family.empty(), "codec.family", "must be named: streams are decoded within a family");
    judge.refuse_if(codec.sends_family && (codec.sends_family->empty() || *codec.sends_family == codec.family),
                    "codec.sends_family", "names the other family of a gateway");
    judge.refuse_if(codec.sends_family && !codec.roles_at_once, "codec.sends_family",
                    "a gateway decodes and encodes at once: roles_at_once");
    judge.refuse_if(codec.roles.empty(), "codec.roles", "must name encoder, decoder or both");
    judge.refuse_if(any_twice(codec.roles, [](Role role) { return role; }), "codec.roles", "names a role twice");
    judge.refuse_if(codec.roles_at_once && codec.roles.size() < 2, "codec.roles_at_once", "needs two roles");
    const bool decodes = type.can(Role::decoder);
    judge.refuse_if(decodes && codec.inputs.empty(), "codec.inputs", "a decoder must have at least one");
    judge.refuse_if(!decodes && !codec.inputs.empty(), "codec.inputs", "only decoders have them");
    judge.refuse_if(any_twice(codec.inputs, [](const DecoderInput& input) { return input.key; }), "codec.inputs",
                    "holds a key twice");
    judge.refuse_if(std::any_of(codec.inputs.begin(), codec.inputs.end(),
                                [](const DecoderInput& input) { return !key_ok(input.key.text); }),
                    "codec.inputs", "holds a key that is not small letters, digits, hyphens, dots or underscores");
    judge.refuse_if(codec.usual_rate && codec.usual_rate->count() <= 0, "codec.usual_rate_bps", "must be above zero");
    judge.refuse_if(codec.most_rate && codec.most_rate->count() <= 0, "codec.most_rate_bps", "must be above zero");
    judge.refuse_if(codec.usual_rate && codec.most_rate && *codec.usual_rate > *codec.most_rate, "codec.usual_rate_bps",
                    "is above most_rate_bps");
    judge.refuse_if(codec.payload_octets && (*codec.payload_octets < 1 || *codec.payload_octets > 9000),
                    "codec.payload_octets", "must be 1 to 9000");
    judge.refuse_if((codec.encode_latency && codec.encode_latency->count() < 0) ||
                        (codec.decode_latency && codec.decode_latency->count() < 0),
                    "codec.latency", "must not be negative");
    judge.refuse_if(codec.downmix && !decodes, "codec.downmix", "only decoders mix down");
    judge.refuse_if(codec.skew_class && !decodes, "codec.skew_class", "only decoders take two planes");
    judge.refuse_if(codec.most_without_server && *codec.most_without_server < 0, "codec.most_without_server",
                    "must not be negative");
    if (codec.picture) {
        judge_depth(judge, codec.picture->most_depth, "codec.picture.most_depth");
        if (codec.picture->most_format) judge_raster(judge, *codec.picture->most_format, "codec.picture.most_format");
    }
    judge.refuse_if(codec.most_groups && *codec.most_groups < 1, "codec.most_groups", "must be at least 1");
    if (codec.usb) judge_usb_carriage(judge, *codec.usb);
    judge_essence(judge, codec, type);
    const auto pictures_in = std::count_if(type.ports.begin(), type.ports.end(), [](const PortType& port) {
        return port.signal == Signal::video && port.way == Way::in;
    });
    judge.refuse_if(codec.switches_inputs && pictures_in < 2, "codec.switches_inputs", "needs two picture inputs");
}

void judge_bridging(Judge& judge, const SwitchFacts& facts) {
    const auto negative = [](const auto& value) { return value && *value < 0; };
    judge.refuse_if(negative(facts.group_table_size), "bridging.group_table_size", "must not be negative");
    judge.refuse_if(negative(facts.groups_per_port), "bridging.groups_per_port", "must not be negative");
    judge.refuse_if(negative(facts.vlan_limit), "bridging.vlan_limit", "must not be negative");
    judge.refuse_if(facts.vlan_limit && *facts.vlan_limit > 4094, "bridging.vlan_limit",
                    "is at most 4094 (IEEE 802.1Q)");
    judge.refuse_if(negative(facts.addresses_per_port), "bridging.addresses_per_port", "must not be negative");
    judge.refuse_if(negative(facts.address_table_size), "bridging.address_table_size", "must not be negative");
    judge.refuse_if(negative(facts.aggregation_limit), "bridging.aggregation_limit", "must not be negative");
    judge.refuse_if(facts.frame_limit && *facts.frame_limit < 1518, "bridging.frame_limit",
                    "must take at least 1518 octets (IEEE 802.3)");
    judge.refuse_if(facts.poe_budget && facts.poe_budget->count() < 0, "bridging.poe_budget_mw",
                    "must not be negative");
    judge.refuse_if(facts.poe_budget_two && (!facts.poe_budget || *facts.poe_budget_two < *facts.poe_budget),
                    "bridging.poe_budget_two_mw", "must stand beside poe_budget_mw and be no less");
    judge.refuse_if(facts.forwarding_latency && facts.forwarding_latency->count() < 0, "bridging.forwarding_latency_ns",
                    "must not be negative");
}

void judge_module(Judge& judge, const ModuleFacts& module) {
    judge.refuse_if(!is_cage(module.form), "module.form", "must be a cage");
    judge.refuse_if(module.phy.empty(), "module.phy", "must name the physical layer, such as 10GBASE-SR");
    judge.refuse_if(module.rate.count() <= 0, "module.rate_bps", "must be stated and above zero");
    const bool lights = module.medium == Medium::multimode || module.medium == Medium::singlemode;
    judge.refuse_if(lights != (module.wavelength_nm > 0), "module.wavelength_nm",
                    "stands on fibre modules, and only there");
    judge.refuse_if(lights && module.strands < 1, "module.strands", "must be at least 1");
    judge.refuse_if(module.receive_nm < 0, "module.receive_nm", "must not be negative");
    judge.refuse_if(module.receive_nm > 0 && module.strands != 1, "module.receive_nm",
                    "stands on modules of one strand only");
    judge.refuse_if(module.receive_nm > 0 && module.receive_nm == module.wavelength_nm, "module.receive_nm",
                    "must differ from the wavelength it sends on the same strand");
    judge.refuse_if(module.polish && !lights, "module.polish", "stands on fibre modules only");
}

void judge_kind(Judge& judge, const DeviceType& type) {
    const auto is = [&](DeviceKind kind) { return type.kind == kind; };
    const bool endpoint = is(DeviceKind::encoder) || is(DeviceKind::decoder) || is(DeviceKind::endpoint);
    judge.refuse_if(endpoint && !type.codec, "codec", "must be stated for encoders, decoders and endpoints");
    judge.refuse_if(is(DeviceKind::encoder) && !type.can(Role::encoder), "codec.roles", "of an encoder lack encoder");
    judge.refuse_if(is(DeviceKind::decoder) && !type.can(Role::decoder), "codec.roles", "of a decoder lack decoder");
    judge.refuse_if(is(DeviceKind::network_switch) && !type.bridging, "bridging", "must be stated for switches");
    judge.refuse_if(is(DeviceKind::transceiver) != type.module.has_value(), "module",
                    "stands on transceivers, and only there");
    judge.refuse_if(is(DeviceKind::chassis) != type.chassis.has_value(), "chassis",
                    "stands on chassis, and only there");
    judge.refuse_if(is(DeviceKind::card) != type.card_form.has_value(), "card_form", "stands on cards, and only there");
    judge.refuse_if(is(DeviceKind::rack) && type.size.rack_units < 1, "size.rack_units",
                    "of a rack must be at least 1");
}

void judge_body(Judge& judge, const DeviceType& type) {
    judge.refuse_if(!line_ok(type.control_note), "control_note", "must be one line of at most 200 characters");
    judge.refuse_if(type.usb_hubs && (*type.usb_hubs < 0 || *type.usb_hubs > 5), "usb_hubs",
                    "must be 0 to 5 (USB 2.0)");
    judge.refuse_if(type.delay && type.delay->count() < 0, "delay_ns", "must not be negative");
    const auto& size = type.size;
    judge.refuse_if(size.rack_units < 0 || size.rack_units > 60, "size.rack_units", "must be 0 to 60");
    judge.refuse_if(size.height.count() < 0, "size.height_um", "must not be negative");
    judge.refuse_if(size.width.count() < 0, "size.width_um", "must not be negative");
    judge.refuse_if(size.depth.count() < 0, "size.depth_um", "must not be negative");
    judge.refuse_if(size.mass.count() < 0, "size.mass_g", "must not be negative");
    if (type.chassis) {
        judge.refuse_if(type.chassis->slots < 1, "chassis.slots", "must be at least 1");
        judge.refuse_if(type.chassis->takes.empty(), "chassis.takes", "must name the form of its cards");
    }
    judge.refuse_if(any_twice(type.controlled_by, [](ControlMethod method) { return method; }), "controlled_by",
                    "names a method twice");
    for (const auto& licence : type.licences) {
        judge.refuse_if(licence.name.empty() || !line_ok(licence.name), "licences.name",
                        "must be one line of 1 to 200 characters");
        judge.refuse_if(licence.each < 1 || licence.count < 1 || licence.count > 1000, "licences",
                        "must need 1 to 1000 for every 1 or more");
    }
    judge.refuse_if(type.card_form && type.card_form->empty(), "card_form", "must not be empty");
    if (!type.power) return;
    judge.refuse_if(type.power->most.count() < 0, "power.most_mw", "must not be negative");
    judge.refuse_if(type.power->most_apparent.count() < 0, "power.most_apparent_mva", "must not be negative");
    judge.refuse_if(
        type.power->most_apparent.count() > 0 && type.power->most_apparent.count() < type.power->most.count(),
        "power.most_apparent_mva", "apparent power is never below real power");
}

bool grade_fits(CableGrade grade, Medium medium) {
    switch (grade) {
        case CableGrade::none:
            return true;
        case CableGrade::cat5e:
        case CableGrade::cat6:
        case CableGrade::cat6a:
        case CableGrade::cat8:
            return medium == Medium::balanced_copper;
        case CableGrade::om1:
        case CableGrade::om2:
        case CableGrade::om3:
        case CableGrade::om4:
        case CableGrade::om5:
        case CableGrade::old_62_5:
        case CableGrade::old_50:
            return medium == Medium::multimode;
        case CableGrade::os1a:
        case CableGrade::os2:
            return medium == Medium::singlemode;
    }
    return false;
}

void judge_losses(Judge& judge, const CableType& type, bool fibre) {
    judge.refuse_if(type.crossed && !fibre, "crossed", "stands on fibre only");
    judge.refuse_if(type.crossed && type.strands != 2, "crossed", "stands on fibre of two strands only");
    judge.refuse_if(type.polish && !fibre, "polish", "stands on fibre only");
    judge.refuse_if(type.loss_per_km && (!fibre || type.loss_per_km->count() <= 0), "loss_per_km_mdb",
                    "stands on fibre and is above zero");
    judge.refuse_if(!type.coax_losses.empty() && type.medium != Medium::coaxial, "coax_losses",
                    "stand on coaxial cable only");
    int before = 0;
    for (const auto& loss : type.coax_losses) {
        judge.refuse_if(loss.megahertz <= before, "coax_losses", "must rise by frequency from above zero");
        judge.refuse_if(loss.per_100m.count() <= 0, "coax_losses", "must be above zero");
        before = loss.megahertz;
    }
}

void judge_conductors(Judge& judge, const CableType& type) {
    judge.refuse_if(type.awg && type.medium != Medium::balanced_copper, "awg", "stands on balanced copper only");
    judge.refuse_if(type.awg && (*type.awg < 10 || *type.awg > 40), "awg", "must be 10 to 40");
    judge.refuse_if(type.conductor_mm2_tenths && (*type.conductor_mm2_tenths < 1 || *type.conductor_mm2_tenths > 1000),
                    "conductor_mm2_tenths", "must be 1 to 1000");
    judge.refuse_if(type.picofarad_per_m && (*type.picofarad_per_m < 1 || *type.picofarad_per_m > 10'000),
                    "picofarad_per_m", "must be 1 to 10000");
}

}  // namespace contradictions_detail

std::optional<base::Error> contradiction(const DeviceType& type, const std::string& where) {
    using namespace contradictions_detail;
    Judge judge(where);
    judge_names(judge, type.key.text, type.name, type.maker);
    judge.refuse_if(!line_ok(type.tag_prefix), "tag_prefix", "must be one line of at most 200 characters");
    judge.refuse_if(type.ports.size() > most_ports, "ports", "are more than 1024");
    judge.refuse_if(any_twice(type.ports, [](const PortType& port) { return port.key; }), "ports", "hold a key twice");
    for (const auto& port : type.ports) judge_port(judge, type, port);
    if (type.codec) judge_codec(judge, *type.codec, type);
    if (type.bridging) judge_bridging(judge, *type.bridging);
    if (type.module) judge_module(judge, *type.module);
    judge_kind(judge, type);
    judge_body(judge, type);
    judge_image(judge, type);
    return judge.error();
}

std::optional<base::Error> contradiction(const CableType& type, const std::string& where) {
    using namespace contradictions_detail;
    Judge judge(where);
    judge_names(judge, type.key.text, type.name, type.maker);
    judge.refuse_if(type.plugs.empty(), "plugs", "must name at least one connector");
    judge.refuse_if(any_twice(type.plugs, [](Connector plug) { return plug; }), "plugs", "name a connector twice");
    judge.refuse_if(!grade_fits(type.grade, type.medium), "grade", "does not fit the medium");
    judge.refuse_if(type.medium == Medium::balanced_copper && type.pairs < 1, "pairs", "must be at least 1");
    const bool fibre = type.medium == Medium::multimode || type.medium == Medium::singlemode;
    judge.refuse_if(fibre && type.strands < 1, "strands", "must be at least 1");
    judge_losses(judge, type, fibre);
    judge_conductors(judge, type);
    judge.refuse_if(!rates_ok(type.rates), "rates_bps", "must be above zero and rise");
    judge.refuse_if(!type.rates.empty() && !is_network(type.signal), "rates_bps", "only network cables have speeds");
    judge.refuse_if(!type.picture_link.empty() && !standards::picture_link(type.picture_link), "picture_link",
                    "names no picture link that is known, such as HDMI 2.0");
    judge.refuse_if(!type.picture_link.empty() && type.signal != Signal::video && type.signal != Signal::extender,
                    "picture_link", "only picture cables have one");
    judge.refuse_if(type.medium == Medium::twinax && type.rates.empty(), "rates_bps",
                    "a direct-attach cable must state its speeds");
    judge.refuse_if(type.made_length && type.made_length->count() <= 0, "made_length_um", "must be above zero");
    judge.refuse_if(type.most_length && type.most_length->count() <= 0, "most_length_um", "must be above zero");
    judge.refuse_if(type.made_length && type.use != CableUse::lead, "made_length_um",
                    "only leads come in fixed lengths");
    judge.refuse_if(type.made_length && type.most_length && *type.made_length > *type.most_length, "made_length_um",
                    "is above most_length_um");
    return judge.error();
}

}  // namespace streamwright::catalogue
