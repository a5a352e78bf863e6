// Random edits of what is wired and how it is set up.
#include "tests/support/random_draw.h"

namespace streamwright::test::random_edit_detail {

namespace {

void change_bridging(Draw& d, BridgeSettings& bridging) {
    const auto vlan = d.maybe_key(d.design.vlans);
    switch (d.below(9)) {
        case 7:
            bridging.forward_delay_s = d.between(12, 30);  // goes with the usual message age
            break;
        case 6:
            bridging.fast_leave = !bridging.fast_leave;
            break;
        case 8:
            bridging.supplies = static_cast<cat::SupplySet>(d.below(3));
            bridging.poe_allocation =
                d.once_in(3) ? std::nullopt : std::optional(static_cast<cat::PoeAllocation>(d.below(3)));
            break;
        case 0:
            bridging.priority = d.between(0, 15) * 4096;
            break;
        case 1:
            bridging.tree_off = !bridging.tree_off;
            break;
        case 2:
            bridging.snooping_off = !bridging.snooping_off;
            break;
        case 3:
            if (vlan && bridging.queriers.empty())
                bridging.queriers.push_back({*vlan, d.once_in(3) ? std::nullopt : std::optional(d.host())});
            else
                bridging.queriers.clear();
            break;
        case 4:
            bridging.multicast_router_vlans.clear();
            if (vlan) bridging.multicast_router_vlans.push_back(*vlan);
            break;
        default:
            bridging.stack = d.once_in(2) ? "" : "stack-" + std::to_string(d.below(2));
            break;
    }
}

void change_vlans(Draw& d, PortOverride& row) {
    const auto vlan = d.maybe_key(d.design.vlans);
    if (d.once_in(3)) row.no_untagged = !row.no_untagged;
    if (!vlan || d.once_in(4)) {
        row.untagged.reset();
        row.tagged.clear();
    } else if (d.once_in(2)) {
        row.untagged = *vlan;
        std::erase(row.tagged, *vlan);
    } else {
        if (std::erase(row.tagged, *vlan) == 0 && row.untagged != *vlan) row.tagged.push_back(*vlan);
    }
}

std::optional<PortRef> mate_for(Draw& d, const PortRef& from) {
    for (int tries = 0; tries < 60; ++tries) {
        const auto port = d.port();
        if (port && !refusal(d.design, from, *port)) return port;
    }
    return d.port();
}

}  // namespace

Drawn configure_device(Draw& d) {
    const auto* device = d.row(d.design.devices);
    const auto* type = device ? d.design.type_of(*device) : nullptr;
    if (!type) return {};
    Device row = *device;
    switch (d.below(4)) {
        case 0:
            row.host_name = "host-" + std::to_string(d.below(100));
            break;
        case 1:
            row.roles.clear();
            for (const auto role : {cat::Role::encoder, cat::Role::decoder})
                if (type->can(role) && d.once_in(2)) row.roles.push_back(role);
            break;
        case 2:
            row.addresses = {
                HostAddress{{}, d.maybe_key(d.design.vlans), d.host(), base::MacAddress{0x020000000000U + d.below(9)}}};
            break;
        default:
            change_bridging(d, row.bridging);
            break;
    }
    return ConfigureDevice{row};
}

standards::VideoFormat some_format(Draw& d) {
    static const std::vector<std::string> known{"2160p60 4:4:4 10-bit PQ", "2160p60", "1080p59.94 4:2:2 10-bit",
                                                "720p50"};
    return standards::parse_video_format(known[d.below(known.size())]).value();
}

void change_picture(Draw& d, PortOverride& row) {
    row.picture.reset();
    row.edid.reset();
    switch (d.below(5)) {
        case 0:
            row.picture = some_format(d);
            break;
        case 1:
            row.protection = static_cast<standards::HdcpContent>(d.below(3));
            break;
        case 2:
            row.edid = EdidPolicy{EdidWay::fixed, some_format(d), {}, {}};
            break;
        case 3:
            if (const auto from = d.port()) row.edid = EdidPolicy{EdidWay::copied, {}, from, {}};
            break;
        default:
            row.edid = EdidPolicy{EdidWay::merged, {}, {}, {}};
            break;
    }
}

Drawn configure_port(Draw& d) {
    const auto port = d.port();
    if (!port) return {};
    const auto* held = d.design.port_overrides.find(*port);
    ConfigurePort edit{held ? *held : PortOverride::blank(*port), nullptr};
    const auto* of_type = d.design.type_of(*d.design.devices.find(port->device))->find_port(port->port);
    if (of_type && of_type->signal == cat::Signal::video) {
        change_picture(d, edit.row);
        return edit;
    }
    switch (d.below(11)) {
        case 9:
            edit.row.poe = {d.once_in(4), static_cast<PoePriority>(d.below(3)), std::nullopt};
            if (d.once_in(2)) edit.row.poe.limit = base::Power::from_count(d.between(3, 60) * 1000);
            break;
        case 0:
        case 1:
            change_vlans(d, edit.row);
            break;
        case 2:
            edit.row.path_cost = d.between(1, 200000);
            break;
        case 3:
            edit.row.port_priority = d.between(0, 15) * 16;
            break;
        case 4:
            edit.row.aggregate = d.once_in(2) ? "" : "lag-1";
            break;
        case 5:
            edit.row.router_port = !edit.row.router_port;
            break;
        case 6:
            edit.row.fast_leave = !edit.row.fast_leave;
            break;
        case 7: {
            bool PortOverride::*const marks[] = {&PortOverride::edge, &PortOverride::bpdu_guard,
                                                 &PortOverride::loop_guard};
            auto& mark = edit.row.*marks[d.below(std::size(marks))];
            mark = !mark;
            break;
        }
        case 8:
            edit.row.disabled = !edit.row.disabled;
            break;
        default: {
            const auto* type = d.row(d.library.devices);
            if (!type || !type->module) return {};
            edit.module = std::make_shared<const cat::DeviceType>(*type);
            edit.row.module = type->key;
        }
    }
    return edit;
}

Drawn connect(Draw& d) {
    const auto from = d.port();
    if (!from) return {};
    Connect edit{d.fresh<CableId>(),           nullptr,   from, mate_for(d, *from), {}, {},
                 d.maybe_key(d.design.sheets), d.points()};
    if (d.once_in(12)) edit.b.reset();
    for (int tries = 0; tries < 12; ++tries) {
        const auto* type = d.row(d.library.cables);
        if (!type) return {};
        edit.type = std::make_shared<const cat::CableType>(*type);
        if (!refusal(d.design, *type, *from)) break;
    }
    if (!d.once_in(3)) edit.length = base::Length::from_count(d.between(1, 130) * 1'000'000LL);
    return edit;
}

Drawn move_querier(Draw& d) {
    for (int tries = 0; tries < 20; ++tries) {
        const auto* from = d.row(d.design.devices);
        const auto* to = d.row(d.design.devices);
        if (!from || from->bridging.queriers.empty()) continue;
        return MoveQuerier{from->bridging.queriers.front().vlan, from->id, to->id,
                           d.once_in(2) ? std::nullopt : std::optional(d.host())};
    }
    return {};
}

Drawn reconnect(Draw& d) {
    const auto* cable = d.row(d.design.cables);
    if (!cable) return {};
    const auto end = d.once_in(2) ? WhichEnd::a : WhichEnd::b;
    const auto& other = end == WhichEnd::a ? cable->b : cable->a;
    auto port = other ? mate_for(d, other->port) : d.port();
    if (d.once_in(8)) port.reset();
    return Reconnect{cable->id, end, port, d.maybe_key(d.design.sheets), d.points()};
}

Drawn set_cable_type(Draw& d) {
    const auto* cable = d.row(d.design.cables);
    const auto* type = d.row(d.library.cables);
    if (!cable || !type) return {};
    return SetCableType{{cable->id}, std::make_shared<const cat::CableType>(*type)};
}

Drawn set_length(Draw& d) {
    const auto* cable = d.row(d.design.cables);
    if (!cable) return {};
    if (d.once_in(6)) return SetLength{{cable->id}, {}};
    return SetLength{{cable->id}, base::Length::from_count(d.between(1, 400) * 500'000LL)};
}

/// At times what nobody can pack, so that edits are refused.
void draw_essence(Draw& d, Stream& row) {
    using namespace standards;
    row.picture.reset(), row.sound.reset(), row.audio.reset();
    if (!d.once_in(3)) return;
    row.payload_rate = {};
    row.rtp = true;
    if (row.kind == cat::StreamKind::audio) {
        row.sound.emplace();
        row.sound->flow = {d.once_in(4) ? 96'000 : 48'000, d.once_in(4) ? AudioCoding::l16 : AudioCoding::l24,
                           static_cast<int>(d.between(1, 12)), d.once_in(2) ? PacketTime::ms_1 : PacketTime::us_125};
        return;
    }
    row.picture.emplace();
    row.picture->format.frame_rate = d.once_in(2) ? Hertz::ratio(60'000, 1001) : Hertz::whole(d.between(1, 60));
    if (d.once_in(3)) row.picture->packing = Packing::block;
    if (d.once_in(3)) row.picture->udp_limit_octets = static_cast<int>(extended_udp_octets);
    if (d.once_in(2)) return;
    row.picture->packing = Packing::general;
    row.picture->coding = d.once_in(2) ? PictureCoding::jpeg_xs : PictureCoding::h264;
    if (row.picture->coding == PictureCoding::jpeg_xs) row.picture->millibits_per_pixel = d.between(1, 8000);
    if (row.picture->coding == PictureCoding::h264)
        row.picture->rate = base::BitRate::from_count(d.between(1, 60'000'000));
}

Drawn set_stream(Draw& d) {
    const auto* held = d.row(d.design.streams);
    const auto* device = d.row(d.design.devices);
    if (!device) return {};
    for (int tries = 0; tries < 10; ++tries) {
        const auto* type = d.design.type_of(*device);
        if (type && type->can(cat::Role::encoder)) break;
        device = d.row(d.design.devices);
    }
    Stream row = held && d.once_in(2) ? *held : Stream::blank(d.fresh<StreamId>());
    if (!held || row.id != held->id) row.encoder = device->id;
    row.payload_rate = base::BitRate::from_count(d.between(1, 1200) * 1'000'000LL);
    if (!d.once_in(6)) row.group = d.group();
    row.vlan = d.maybe_key(d.design.vlans);
    row.kind = d.once_in(5) ? cat::StreamKind::audio : cat::StreamKind::video;
    if (d.once_in(4)) row.twin = d.maybe_key(d.design.streams);
    if (row.twin == row.id) row.twin.reset();
    draw_essence(d, row);
    return SetStream{row};
}

Drawn subscribe(Draw& d) {
    const auto* preset = d.row(d.design.presets);
    const auto* stream = d.row(d.design.streams);
    for (int tries = 0; preset && stream && tries < 20; ++tries) {
        const auto* device = d.row(d.design.devices);
        const auto* type = device ? d.design.type_of(*device) : nullptr;
        if (!type || !type->codec || type->codec->inputs.empty()) continue;
        const auto id = d.once_in(8) ? std::nullopt : std::optional(stream->id);
        return Subscribe{d.fresh<SubscriptionId>(), preset->id, device->id, d.row(type->codec->inputs)->key, id};
    }
    return {};
}

}  // namespace streamwright::test::random_edit_detail
