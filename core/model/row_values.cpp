// The ranges of the values in each row, by the standards that fix them.
#include "core/model/row_checks.h"
#include "core/standards/spanning_tree_costs.h"

#include <algorithm>
#include <charconv>
#include <chrono>
#include <string>
#include <system_error>

namespace streamwright::model {

namespace {

constexpr std::int64_t most_rate_bps = 1'600'000'000'000;   // the fastest Ethernet rate there is (IEEE P802.3dj)
constexpr std::int64_t most_length_um = 1'000'000'000'000;  // 1,000 km
constexpr std::int64_t most_place_um = 10'000'000'000;      // 10 km either way
constexpr std::int64_t most_loss_mdb = 100'000;             // 100 dB
constexpr std::int64_t coldest_mdegc = -60'000, hottest_mdegc = 150'000;

Trouble out_of(std::string_view field, std::int64_t value, std::int64_t low, std::int64_t high) {
    if (value >= low && value <= high) return std::nullopt;
    return base::Error{"The %1 must be from %2 to %3; %4 was given.",
                       {std::string(field), std::to_string(low), std::to_string(high), std::to_string(value)}};
}

Trouble out_of_steps(std::string_view field, std::int64_t value, std::int64_t high, std::int64_t step) {
    if (value >= 0 && value <= high && value % step == 0) return std::nullopt;
    return base::Error{"The %1 must be from 0 to %2 in steps of %3; %4 was given.",
                       {std::string(field), std::to_string(high), std::to_string(step), std::to_string(value)}};
}

Trouble wrong_rate(std::string_view field, base::BitRate rate) {
    if (rate.count() > 0 && rate.count() <= most_rate_bps) return std::nullopt;
    return base::Error{"The %1 must be more than 0 and at most 1.6 Tb/s; %2 b/s was given.",
                       {std::string(field), std::to_string(rate.count())}};
}

Trouble wrong_place(std::string_view field, base::Length length) {
    if (std::abs(length.count()) <= most_place_um) return std::nullopt;
    return base::Error{"The %1 must lie within 10 km; %2 micrometres was given.",
                       {std::string(field), std::to_string(length.count())}};
}

Trouble wrong_point(const SheetPoint& point) {
    if (auto trouble = wrong_place("place on the sheet", point.x)) return trouble;
    return wrong_place("place on the sheet", point.y);
}

Trouble wrong_temperature(const std::optional<base::Temperature>& temperature) {
    if (!temperature || (temperature->count() >= coldest_mdegc && temperature->count() <= hottest_mdegc))
        return std::nullopt;
    return base::Error{"The temperature must be from -60 to 150 degrees Celsius; %1 thousandths was given.",
                       {std::to_string(temperature->count())}};
}

/// "2027-06-30", a day that exists (ISO 8601-1, calendar date, extended format).
bool is_date(const std::string& text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
    const auto number = [&](std::size_t from, std::size_t count) {
        int value = -1;
        const auto* end = text.data() + from + count;
        const auto [stop, trouble] = std::from_chars(text.data() + from, end, value);
        return trouble == std::errc{} && stop == end ? value : -1;
    };
    const int year = number(0, 4), month = number(5, 2), day = number(8, 2);
    if (year < 1 || month < 1 || day < 1) return false;
    return std::chrono::year_month_day{std::chrono::year{year}, std::chrono::month{static_cast<unsigned>(month)},
                                       std::chrono::day{static_cast<unsigned>(day)}}
        .ok();
}

bool is_multicast(base::Ipv4 address) { return (address.bits >> 28U) == 0xEU; }  // 224.0.0.0/4, RFC 5771

/// Multicast and the block above it are never a host's own (RFC 1122, section 3.2.1.3).
Trouble wrong_host(std::string_view field, const std::optional<base::Ipv4>& address) {
    if (!address || address->bits < 0xE0000000U) return std::nullopt;
    return base::Error{"The %1 %2 is not an address of a host; give one below 224.0.0.0.",
                       {std::string(field), base::print(*address)}};
}

Trouble wrong_mac(const std::optional<base::MacAddress>& mac) {
    constexpr std::uint64_t group_bit = std::uint64_t{1} << 40U;  // IEEE 802, first bit on the wire
    if (!mac || ((mac->bits & group_bit) == 0 && (mac->bits >> 48U) == 0)) return std::nullopt;
    return base::Error{"The MAC address %1 is a group address; a device needs one of its own.", {base::print(*mac)}};
}

template <class Value>
bool doubled(std::vector<Value> values) {
    std::sort(values.begin(), values.end());
    return std::adjacent_find(values.begin(), values.end()) != values.end();
}

/// IEEE 802.1Q, 13.25 (from memory).
Trouble wrong_tree_timers(const BridgeSettings& bridging) {
    standards::TreeTimers timers;
    timers.hello_s = bridging.hello_s.value_or(timers.hello_s);
    timers.max_age_s = bridging.max_age_s.value_or(timers.max_age_s);
    timers.forward_delay_s = bridging.forward_delay_s.value_or(timers.forward_delay_s);
    if (standards::tree_timers_valid(timers)) return std::nullopt;
    return base::Error{
        "Hello time %1 s, message age %2 s and forward delay %3 s do not go together: the age is from 6 to 40 s and at "
        "least 2 x (hello + 1), the delay from 4 to 30 s, and 2 x (delay - 1) at least the age.",
        {std::to_string(timers.hello_s), std::to_string(timers.max_age_s), std::to_string(timers.forward_delay_s)}};
}

Trouble wrong_loss(std::string_view field, const std::optional<base::Loss>& loss) {
    if (!loss || (loss->count() >= 0 && loss->count() <= most_loss_mdb)) return std::nullopt;
    return base::Error{"The %1 must be from 0 to 100 dB; %2 thousandths was given.",
                       {std::string(field), std::to_string(loss->count())}};
}

Trouble wrong_cabling(const CablingSettings& cabling) {
    if (auto trouble = out_of("rise of a powered bundle in thousandths of a degree", cabling.bundle_rise.count(), 0,
                              hottest_mdegc))
        return trouble;
    if (cabling.cat6_10g)
        if (auto trouble = wrong_length("reach of 10 Gb/s on category 6", *cabling.cat6_10g)) return trouble;
    if (auto trouble = wrong_loss("loss of a mated pair", cabling.joint_loss)) return trouble;
    if (auto trouble = wrong_loss("loss of a splice", cabling.splice_loss)) return trouble;
    std::vector<std::string> named;
    for (const auto& line : cabling.lines) {
        if (line.line.empty()) return base::Error{"A limit of a line must name its line.", {}};
        if (line.length)
            if (auto trouble = wrong_length("limit of the line", *line.length)) return trouble;
        if (auto trouble = wrong_loss("loss of the line", line.loss)) return trouble;
        named.push_back(line.line);
    }
    if (doubled(named)) return base::Error{"A line is limited twice; keep one of the two.", {}};
    return std::nullopt;
}

Trouble wrong_bridging(const BridgeSettings& bridging) {
    if (bridging.priority)  // IEEE 802.1Q, 13.26.2
        if (auto trouble = out_of_steps("bridge priority", *bridging.priority, 61440, 4096)) return trouble;
    if (auto trouble = wrong_mac(bridging.address)) return trouble;
    if (auto trouble = wrong_tree_timers(bridging)) return trouble;
    std::vector<VlanId> asked;
    for (const auto& querier : bridging.queriers) {
        if (auto trouble = wrong_host("querier address", querier.address)) return trouble;
        asked.push_back(querier.vlan);
    }
    if (doubled(asked)) return base::Error{"A switch has one querier a VLAN; one is set twice.", {}};
    return std::nullopt;
}

}  // namespace

Trouble wrong_length(std::string_view field, base::Length length) {
    if (length.count() >= 0 && length.count() <= most_length_um) return std::nullopt;
    return base::Error{"The %1 must be from 0 to 1,000 km; %2 micrometres was given.",
                       {std::string(field), std::to_string(length.count())}};
}

Trouble wrong_value(const Settings& row) {
    if (auto trouble = wrong_temperature(row.cable_temperature)) return trouble;
    if (auto trouble = out_of("headroom in percent", row.headroom_percent, 1, 100)) return trouble;
    // RFC 3376: codes of 8 bits reach 31744 (4.1.7), tenths of a second for the response (4.1.1).
    if (auto trouble = out_of("query interval in seconds", row.query_interval_s, 1, 31744)) return trouble;
    if (auto trouble = out_of("query response time in seconds", row.query_response_s, 1, 3174)) return trouble;
    if (row.query_response_s >= row.query_interval_s)  // RFC 3376, 8.3
        return base::Error{"The query response time of %1 s must be shorter than the query interval of %2 s.",
                           {std::to_string(row.query_response_s), std::to_string(row.query_interval_s)}};
    if (auto trouble = out_of("robustness", row.robustness, 1, 7)) return trouble;  // RFC 3376, 4.1.6: three bits; 8.1
    if (auto trouble = out_of("spare endpoints in percent", row.spares.endpoints_percent, 0, 100)) return trouble;
    if (auto trouble = out_of("spare transceivers of each kind", row.spares.of_each_module, 0, 1000)) return trouble;
    if (auto trouble = out_of("spare leads of each kind", row.spares.of_each_lead, 0, 1000)) return trouble;
    if (auto trouble = wrong_cabling(row.cabling)) return trouble;
    if (row.security.certificates_expire.empty() || is_date(row.security.certificates_expire)) return std::nullopt;
    return base::Error{"The certificates' expiry must be a date such as 2027-06-30; \"%1\" was given.",
                       {row.security.certificates_expire}};
}

Trouble wrong_value(const Room& row) {
    constexpr std::int64_t most_viewing_um = 1'000'000'000;  // 1 km
    if (row.farthest_viewer)
        if (auto trouble = out_of("farthest viewer in micrometres", row.farthest_viewer->count(), 1, most_viewing_um))
            return trouble;
    if (row.element_height)
        if (auto trouble =
                out_of("element height in thousandths of a percent", row.element_height->count(), 100, 100'000))
            return trouble;
    return wrong_temperature(row.temperature);
}

Trouble wrong_value(const Rack& row) {
    if (auto trouble = out_of("height of the rack in units", row.units, 1, 100)) return trouble;
    return wrong_length("depth of the rack", row.depth);
}

Trouble wrong_value(const Vlan& row) {
    if (auto trouble = out_of("VLAN number", row.vid, 1, 4094)) return trouble;  // IEEE 802.1Q, table 9-2
    if (auto trouble = wrong_host("gateway", row.gateway)) return trouble;
    if (row.lease_first.has_value() != row.lease_last.has_value())
        return base::Error{"A lease range needs its first and its last address.", {}};
    if (row.lease_first && *row.lease_last < *row.lease_first)
        return base::Error{"The lease range ends at %1 before it begins at %2.",
                           {base::print(*row.lease_last), base::print(*row.lease_first)}};
    return std::nullopt;
}

Trouble wrong_value(const Device& row) {
    if (row.standing)
        for (const auto length : {row.standing->x, row.standing->y, row.standing->z})
            if (auto trouble = wrong_place("place in the room", length)) return trouble;
    if (row.rack)
        if (auto trouble = out_of("rack unit", row.rack->unit, 1, 100)) return trouble;
    if (row.chassis) {
        if (auto trouble = out_of("chassis slot", row.chassis->slot, 1, 1000)) return trouble;
        if (row.chassis->chassis == row.id) return base::Error{"%1 cannot be a card of itself.", {row.tag}};
    }
    constexpr std::int64_t most_delay_ns = 10'000'000'000;
    if (row.sound_delay && (row.sound_delay->count() < 0 || row.sound_delay->count() > most_delay_ns))
        return base::Error{"The sound delay of %1 must be from 0 to 10 s.", {row.tag}};
    if (doubled(row.roles)) return base::Error{"A role of %1 is named twice.", {row.tag}};
    for (const auto& host : row.addresses) {
        if (auto trouble = wrong_host("address", host.address)) return trouble;
        if (auto trouble = wrong_mac(host.mac)) return trouble;
    }
    return wrong_bridging(row.bridging);
}

namespace {

/// Each way of an EDID has its own fields, and no other's.
Trouble wrong_edid(const EdidPolicy& edid, const std::string& port) {
    if ((edid.way == EdidWay::fixed) != edid.format.has_value())
        return base::Error{"The EDID of port %1 names a format where it is fixed, and only there.", {port}};
    if ((edid.way == EdidWay::copied) != edid.from.has_value())
        return base::Error{"The EDID of port %1 names a port where it is copied, and only there.", {port}};
    if (edid.audio && edid.way != EdidWay::fixed)
        return base::Error{"The EDID of port %1 names its sound where it is fixed, and only there.", {port}};
    return edid.format ? standards::contradiction(*edid.format) : std::nullopt;
}

}  // namespace

Trouble wrong_value(const PortOverride& row) {
    if (row.rate_limit)
        if (auto trouble = wrong_rate("speed of the port", *row.rate_limit)) return trouble;
    if (row.path_cost)  // IEEE 802.1Q, 13.27.25
        if (auto trouble = out_of("path cost", *row.path_cost, 1, 200'000'000)) return trouble;
    if (row.port_priority)  // IEEE 802.1Q, 13.27.47
        if (auto trouble = out_of_steps("port priority", *row.port_priority, 240, 16)) return trouble;
    if (row.poe.limit)
        if (auto trouble = out_of("PoE limit of the port in milliwatts", row.poe.limit->count(), 0, 100'000))
            return trouble;
    if (doubled(row.tagged)) return base::Error{"Port %1 carries a VLAN tagged twice.", {row.port.port.text}};
    if (row.untagged && std::find(row.tagged.begin(), row.tagged.end(), *row.untagged) != row.tagged.end())
        return base::Error{"Port %1 carries a VLAN both tagged and untagged; choose one.", {row.port.port.text}};
    if (row.picture)
        if (auto trouble = standards::contradiction(*row.picture)) return trouble;
    return row.edid ? wrong_edid(*row.edid, row.port.port.text) : std::nullopt;
}

Trouble wrong_value(const Cable& row) {
    if (row.length)
        if (auto trouble = wrong_length("length of the cable", *row.length)) return trouble;
    if (row.a && row.b && row.a->port == row.b->port)
        return base::Error{"Both ends of cable %1 are on one port; a cable joins two.", {row.tag}};
    if (row.fibre.pair_swaps)
        if (auto trouble = out_of("number of pair swaps", *row.fibre.pair_swaps, 0, 10)) return trouble;
    if (auto trouble = out_of("number of splices", row.fibre.splices, 0, 100)) return trouble;
    if (auto trouble = out_of("number of connector pairs not drawn", row.fibre.joints, 0, 100)) return trouble;
    if (!row.agreed) return std::nullopt;
    if (auto trouble = out_of("agreed number of sources", row.agreed->sources, 0, 100'000)) return trouble;
    if (row.agreed->on.empty() || is_date(row.agreed->on)) return std::nullopt;
    return base::Error{"The day of the agreement must be a date such as 2027-06-30; \"%1\" was given.",
                       {row.agreed->on}};
}

Trouble wrong_value(const Stream& row) {
    if (row.group && !is_multicast(*row.group))
        return base::Error{"The group %1 is not a multicast address; give one from 224.0.0.0 to 239.255.255.255.",
                           {base::print(*row.group)}};
    if (auto trouble = out_of("UDP port", row.udp_port, 1, 65535)) return trouble;
    if (auto trouble = out_of("payload of a packet in octets", row.payload_octets, 1, 65000)) return trouble;
    return row.picture || row.sound ? wrong_essence(row) : wrong_rate("payload rate", row.payload_rate);
}

Trouble wrong_value(const Preset& row) { return out_of("number of the preset", row.number, 1, 1'000'000); }
Trouble wrong_value(const Subscription&) { return std::nullopt; }

Trouble wrong_value(const Wall& row) {
    constexpr std::int64_t most_gap_um = 1'000'000;  // 1 m: what stands farther apart is no wall
    if (auto trouble = out_of("number of columns of the wall", row.columns, 1, most_wall_side)) return trouble;
    if (auto trouble = out_of("number of rows of the wall", row.rows, 1, most_wall_side)) return trouble;
    if (row.columns * row.rows < 2) return base::Error{"A wall has two tiles or more.", {}};
    if (auto trouble = out_of("gap across in micrometres", row.gap_across.count(), 0, most_gap_um)) return trouble;
    if (auto trouble = out_of("gap down in micrometres", row.gap_down.count(), 0, most_gap_um)) return trouble;
    const auto places = static_cast<std::size_t>(row.columns) * static_cast<std::size_t>(row.rows);
    if (row.tiles.size() != places)
        return base::Error{"A wall of %1 x %2 has %3 tiles; %4 were listed.",
                           {std::to_string(row.columns), std::to_string(row.rows), std::to_string(places),
                            std::to_string(row.tiles.size())}};
    std::vector<DeviceId> placed;
    for (const auto& tile : row.tiles)
        if (tile) placed.push_back(*tile);
    if (placed.empty()) return base::Error{"A wall needs a display in one of its places at least.", {}};
    if (doubled(placed)) return base::Error{"A display stands twice in one wall; keep one of its places.", {}};
    return std::nullopt;
}

Trouble wrong_value(const Sheet& row) { return out_of("number of the sheet", row.number, 1, 100'000); }
Trouble wrong_value(const Place& row) { return wrong_point(row.at); }

Trouble wrong_value(const CableLine& row) {
    if (row.bends.size() > 1000) return base::Error{"A cable may have at most 1000 bends.", {}};
    for (const auto& bend : row.bends)
        if (auto trouble = wrong_point(bend)) return trouble;
    return std::nullopt;
}

Trouble wrong_value(const RoomFrame& row) {
    if (auto trouble = wrong_point(row.at)) return trouble;
    if (row.width.count() < 0 || row.height.count() < 0)
        return base::Error{"A frame's width and height must not be negative.", {}};
    return wrong_point({row.width, row.height});
}

Trouble wrong_value(const Note& row) { return wrong_point(row.at); }

Trouble wrong_value(const Waiver& row) {
    if (row.rule.empty()) return base::Error{"An accepted finding must name its rule.", {}};
    if (row.reason.empty()) return base::Error{"An accepted finding needs a reason: say why it may stand.", {}};
    return out_of("revision of the rule", row.rule_revision, 1, 1'000'000);
}

Trouble wrong_value(const Revision& row) { return out_of("number of the revision", row.number, 1, 1'000'000); }

Trouble wrong_value(const DeviceTypeRow& row) {
    if (row.type->key.text.empty()) return base::Error{"A device type needs a key.", {}};
    return std::nullopt;
}

Trouble wrong_value(const CableTypeRow& row) {
    if (row.type->key.text.empty()) return base::Error{"A cable type needs a key.", {}};
    return std::nullopt;
}

}  // namespace streamwright::model
