// Types as JSON: which key names which field, ports given once for a whole range, and the folder of one file a type.
#include "core/catalogue/catalogue.h"
#include "core/catalogue/contradictions.h"
#include "core/catalogue/detail/body_keys.h"
#include "core/catalogue/detail/essence_keys.h"
#include "core/catalogue/detail/json_codec.h"
#include "core/catalogue/detail/parser_watch.h"
#include "core/catalogue/detail/picture_fields.h"
#include "core/catalogue/detail/usb_keys.h"
#include "core/catalogue/type_files.h"

#include <algorithm>

namespace streamwright::catalogue::json_detail {

template <>
struct Fields<PoePort> {
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("side", s.side);
        v("class", s.poe_class);
        v("draw_mw", s.draw);
        v("lldp", s.lldp);
    }
};

template <>
struct Fields<PortType> {
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("key", s.key);
        v("label", s.label);
        v("signal", s.signal);
        v("way", s.way);
        v("connector", s.connector);
        v("rates_bps", s.rates);
        v("standards", s.standards);
        v("poe", s.poe);
        v("passes_to", s.passes_to);
        v("usb_group", s.usb_group);
        v("auxiliary", s.auxiliary);
        v("local_output", s.local_output);
        v("pairs", s.pairs);
        v("audio", s.audio);
        v("usb", s.usb);
        v("polish", s.polish);
        v("joints", s.joints);
        v("crosses", s.crosses);
        v("picture", s.picture);
        v("most_pixels", s.most_pixels);
    }
};

template <>
struct Fields<DecoderInput> {
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("key", s.key);
        v("label", s.label);
        v("kind", s.kind);
    }
};

template <>
struct Fields<Codec> {
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("family", s.family);
        v("sends_family", s.sends_family);
        v("roles", s.roles);
        v("roles_at_once", s.roles_at_once);
        v("usual_rate_bps", s.usual_rate);
        v("most_rate_bps", s.most_rate);
        v("payload_octets", s.payload_octets);
        v("rtp", s.rtp);
        v("inputs", s.inputs);
        v("switches_inputs", s.switches_inputs);
        v("encode_latency_ns", s.encode_latency);
        v("decode_latency_ns", s.decode_latency);
        v("scales", s.scales);
        v("picture", s.picture);
        v("downmix", s.downmix);
        v("skew_class", s.skew_class);
        v("most_without_server", s.most_without_server);
        v("most_groups", s.most_groups);
        v("usb", s.usb);
        v("packed", s.packed);
        v("sound_flows", s.sound_flows);
    }
};

template <>
struct Fields<SwitchFacts> {
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("snooping", s.snooping);
        v("unknown_groups", s.unknown_groups);
        v("lookup", s.lookup);
        v("floods_without_querier", s.floods_without_querier);
        v("zero_query_makes_router_port", s.zero_query_makes_router_port);
        v("queries_without_snooping", s.queries_without_snooping);
        v("fast_leave", s.fast_leave);
        v("group_table_size", s.group_table_size);
        v("groups_per_port", s.groups_per_port);
        v("vlan_limit", s.vlan_limit);
        v("bpdus", s.bpdus);
        v("trees", s.trees);
        v("rapid_tree", s.rapid_tree);
        v("query_on_topology_change", s.query_on_topology_change);
        v("long_path_costs", s.long_path_costs);
        v("poe_budget_mw", s.poe_budget);
        v("poe_by_class", s.poe_by_class);
        v("addresses_per_port", s.addresses_per_port);
        v("address_table_size", s.address_table_size);
        v("forwarding_latency_ns", s.forwarding_latency);
        v("frame_limit", s.frame_limit);
        v("aggregation_limit", s.aggregation_limit);
        v("member_by", s.member_by);
        v("stackable", s.stackable);
        v("poe_budget_two_mw", s.poe_budget_two);
    }
};

template <>
struct Fields<ModuleFacts> {
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("form", s.form);
        v("phy", s.phy);
        v("rate_bps", s.rate);
        v("medium", s.medium);
        v("connector", s.connector);
        v("wavelength_nm", s.wavelength_nm);
        v("strands", s.strands);
        v("receive_nm", s.receive_nm);
        v("polish", s.polish);
    }
};

template <>
struct Fields<DeviceType> {
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("key", s.key);
        v("name", s.name);
        v("maker", s.maker);
        v("family", s.family);
        v("note", s.note);
        v("kind", s.kind);
        v("tag_prefix", s.tag_prefix);
        v("ports", s.ports);
        v("codec", s.codec);
        v("bridging", s.bridging);
        v("module", s.module);
        v("chassis", s.chassis);
        v("card_form", s.card_form);
        v("size", s.size);
        v("power", s.power);
        v("controlled_by", s.controlled_by);
        v("control_note", s.control_note);
        v("usb_hubs", s.usb_hubs);
        v("delay_ns", s.delay);
        v("image", s.image);
        v("most_windows", s.most_windows);
        v("licences", s.licences);
    }
};

template <>
struct Fields<CoaxLoss> {
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("megahertz", s.megahertz);
        v("per_100m_mdb", s.per_100m);
    }
};

template <>
struct Fields<CableType> {
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("key", s.key);
        v("name", s.name);
        v("maker", s.maker);
        v("note", s.note);
        v("signal", s.signal);
        v("medium", s.medium);
        v("grade", s.grade);
        v("use", s.use);
        v("plugs", s.plugs);
        v("screened", s.screened);
        v("pairs", s.pairs);
        v("strands", s.strands);
        v("rates_bps", s.rates);
        v("picture_link", s.picture_link);
        v("made_length_um", s.made_length);
        v("most_length_um", s.most_length);
        v("awg", s.awg);
        v("crossed", s.crossed);
        v("polish", s.polish);
        v("loss_per_km_mdb", s.loss_per_km);
        v("coax_losses", s.coax_losses);
        v("conductor_mm2_tenths", s.conductor_mm2_tenths);
        v("picofarad_per_m", s.picofarad_per_m);
    }
};

}  // namespace streamwright::catalogue::json_detail

namespace streamwright::catalogue {

namespace read_catalogue_detail {

using json_detail::Json;
using json_detail::Reading;

constexpr std::int64_t most_repeats = 128;

base::Error refusal(const json_detail::RefusedText& refused, const std::string& where) {
    using Why = json_detail::RefusedText::Why;
    if (refused.why == Why::too_deep)
        return {"%1 nests deeper than %2 levels and a type needs five; replace it by a type file.",
                {where, std::to_string(json_detail::deepest)}};
    if (refused.why == Why::key_twice)
        return {"%1 names \"%2\" twice in one object; remove one of the two.", {where, refused.key}};
    return {"%1 has an object of more than %2 fields, which no type has; replace it by a type file.",
            {where, std::to_string(json_detail::most_keys)}};
}

base::Result<Json> parse_text(std::string_view text, const std::string& where) {
    if (text.size() > type_file_limit) return too_large_for_a_type(where);
    try {
        return Json::parse(text, json_detail::ParserWatch());
    } catch (const json_detail::RefusedText& refused) {
        return refusal(refused, where);
    } catch (const Json::parse_error& trouble) {
        return base::Error{"%1 is not JSON at byte %2; correct the text there.", {where, std::to_string(trouble.byte)}};
    } catch (const Json::exception&) {
        return base::Error{"%1 holds a number that is too large; correct it.", {where}};
    }
}

void replace_all(std::string& text, const std::string& number) {
    for (auto at = text.find("{n}"); at != std::string::npos; at = text.find("{n}", at + number.size()))
        text.replace(at, 3, number);
}

/// The range of a port given once for many; nothing and a refusal if it makes no sense.
std::optional<std::pair<std::int64_t, std::int64_t>> read_range(const Json& port, Reading& reading) {
    const Json& range = port["repeat"];
    const auto number = [&](const char* name) -> std::optional<std::int64_t> {
        const auto at = range.is_object() ? range.find(name) : range.end();
        if (at == range.end() || !at->is_number_integer()) return std::nullopt;
        return at->get<std::int64_t>();
    };
    const auto from = number("from");
    const auto to = number("to");
    if (!from || !to || *from < 0 || *from > 10000 || *to < *from) {
        reading.refuse("%1.repeat must be {\"from\": A, \"to\": B} with whole numbers, A from 0 and B not below A.");
        return std::nullopt;
    }
    if (*to - *from >= most_repeats) {
        reading.refuse("%1.repeat makes more than 128 ports; split it.");
        return std::nullopt;
    }
    const auto key = port.find("key");
    if (key == port.end() || !key->is_string() || key->get_ref<const std::string&>().find("{n}") == std::string::npos) {
        reading.refuse("%1.key must contain {n} where a port repeats.");
        return std::nullopt;
    }
    return std::pair(*from, *to);
}

/// A list in which each port that bears "repeat" is written out, {n} replaced by its number.
std::optional<Json> expanded_ports(const Json& ports, Reading& reading) {
    Json all = Json::array();
    for (std::size_t at = 0; at < ports.size(); ++at) {
        const Json& port = ports[at];
        if (!port.is_object() || !port.contains("repeat")) {
            all.push_back(port);
            continue;
        }
        reading.path = {"ports", '[' + std::to_string(at) + ']'};
        const auto range = read_range(port, reading);
        if (!range) return std::nullopt;
        Json pattern = port;
        pattern.erase("repeat");
        for (auto n = range->first; n <= range->second; ++n) {
            Json one = pattern;
            for (const char* name : {"key", "label", "passes_to"})
                if (one.contains(name) && one[name].is_string())
                    replace_all(one[name].get_ref<std::string&>(), std::to_string(n));
            all.push_back(std::move(one));
        }
    }
    reading.path.clear();
    return all;
}

base::Error told(const Reading& reading, const std::string& where) {
    return {"%1: %2", {where, reading.trouble->english()}};
}

template <class Type>
base::Result<Type> read_type(Json json, const std::string& where) {
    Reading reading;
    if (json.is_object() && json.contains("ports") && json["ports"].is_array()) {
        auto ports = expanded_ports(json["ports"], reading);
        if (!ports) return told(reading, where);
        json["ports"] = std::move(*ports);
    }
    Type type;
    if (!json_detail::from_json_object(json, type, reading)) return told(reading, where);
    if (auto wrong = contradiction(type, where)) return *wrong;
    type.unknown = std::move(reading.unknown);
    return type;
}

template <class Type>
std::string write_type(const Type& type) {
    Json json = json_detail::to_json_object(type);
    json_detail::restore_unknown(json, type.unknown, json_detail::is_plain_struct<Type>);
    return json.dump(-1, ' ', false, Json::error_handler_t::replace);
}

template <class Type>
base::Result<std::vector<Type>> read_folder(const std::filesystem::path& folder) {
    const auto files = type_files(folder);
    if (!files) return files.error();
    std::vector<Type> types;
    for (const auto& path : *files) {
        const auto text = read_type_file(path);
        if (!text) return text.error();
        auto json = parse_text(*text, path.string());
        if (!json) return json.error();
        auto type = read_type<Type>(std::move(*json), path.string());
        if (!type) return type.error();
        if (type->key.text != path.stem().string()) return misnamed(path, type->key.text);
        types.push_back(std::move(*type));
    }
    std::sort(types.begin(), types.end(), [](const Type& a, const Type& b) { return a.key < b.key; });
    return types;
}

}  // namespace read_catalogue_detail

base::Result<DeviceType> read_device_type(std::string_view text, const std::string& where) {
    auto json = read_catalogue_detail::parse_text(text, where);
    if (!json) return json.error();
    return read_catalogue_detail::read_type<DeviceType>(std::move(*json), where);
}

base::Result<CableType> read_cable_type(std::string_view text, const std::string& where) {
    auto json = read_catalogue_detail::parse_text(text, where);
    if (!json) return json.error();
    return read_catalogue_detail::read_type<CableType>(std::move(*json), where);
}

std::string write_device_type(const DeviceType& type) { return read_catalogue_detail::write_type(type); }

std::string write_cable_type(const CableType& type) { return read_catalogue_detail::write_type(type); }

base::Result<Catalogue> read_catalogue(const std::filesystem::path& folder) {
    auto devices = read_catalogue_detail::read_folder<DeviceType>(folder / "devices");
    if (!devices) return devices.error();
    auto cables = read_catalogue_detail::read_folder<CableType>(folder / "cables");
    if (!cables) return cables.error();
    return Catalogue{std::move(*devices), std::move(*cables)};
}

}  // namespace streamwright::catalogue
