#include "tests/support/random_edit.h"

#include "core/model/clipping.h"
#include "core/model/new_vlan.h"
#include "tests/support/random_draw.h"

#include <functional>

namespace streamwright::test {

namespace random_edit_detail {

namespace {

Drawn add_rows(Draw& d) {
    const auto* sheet = d.row(d.design.sheets);
    const auto* room = d.row(d.design.rooms);
    if (room && d.once_in(5)) {
        Room row = *room;
        row.temperature = base::Temperature::from_count(d.between(15, 60) * 1000);
        if (d.once_in(2)) row.farthest_viewer = base::Length::from_count(d.between(2, 30) * 1'000'000LL);
        row.viewing = static_cast<standards::ViewingCategory>(d.below(4));
        row.element_height = standards::ElementHeight::from_count(d.between(1000, 6000));
        return AddRows{{row}};
    }
    switch (d.below(8)) {
        case 0: {
            auto row = Room::blank(d.fresh<RoomId>());
            row.name = d.word();
            if (d.once_in(2)) row.temperature = 35_degC;
            return AddRows{{row}};
        }
        case 1: {
            auto row = Rack::blank(d.fresh<RackId>());
            row.name = d.word();
            row.room = d.maybe_key(d.design.rooms);
            return AddRows{{row}};
        }
        case 2: {
            auto row =
                Vlan::blank(d.once_in(3) && d.design.vlans.size() ? d.row(d.design.vlans)->id : d.fresh<VlanId>());
            row.vid = d.between(1, 4094);
            row.name = d.word();
            if (d.once_in(2)) row.purpose = static_cast<VlanPurpose>(d.below(4));
            row.subnet = base::Ipv4Prefix{{0x0A000000U}, d.between(16, 28)};
            return AddRows{{row}};
        }
        case 3:
            return AddRows{{Preset{d.fresh<PresetId>(), d.between(1, 20), d.word(), {}, {}}}};
        case 4: {
            auto row = Sheet::blank(d.fresh<SheetId>());
            row.title = d.word();
            return AddRows{{row}};
        }
        case 5: {
            auto row = RoomFrame::blank(d.fresh<FrameId>());
            if (!sheet || !room) return {};
            row.sheet = sheet->id;
            row.room = room->id;
            row.at = d.point();
            row.width = row.height = 60_mm;
            return AddRows{{row}};
        }
        case 6: {
            auto row = Note::blank(d.fresh<NoteId>());
            if (!sheet) return {};
            row.sheet = sheet->id;
            row.text = d.word() + '\n' + d.word();
            return AddRows{{row}};
        }
        default:
            return AddRows{
                {Revision{d.fresh<RevisionId>(), d.between(1, 9), "A", "2025-01-31", d.word(), "design", {}}}};
    }
}

Drawn agree_contention(Draw& d) {
    const auto* cable = d.row(d.design.cables);
    if (!cable) return {};
    if (d.once_in(4)) return AgreeContention{cable->id, std::nullopt};
    return AgreeContention{cable->id, AgreedContention{d.between(0, 3), d.word(), "2026-11-20"}};
}

Drawn bend_cable(Draw& d) {
    const auto* cable = d.row(d.design.cables);
    const auto* sheet = d.row(d.design.sheets);
    if (!cable || !sheet) return {};
    auto line = CableLine::blank({sheet->id, cable->id});
    line.bends = d.points();
    line.pinned = d.once_in(2);
    return BendCable{line};
}

cat::PictureFacts some_facts(Draw& d) {
    cat::PictureFacts facts;
    for (const auto* raster : {"2160p60", "1080p60", "720p60"})
        if (d.once_in(2)) facts.formats.push_back(standards::parse_video_format(raster).value());
    if (d.once_in(2)) facts.samplings = {standards::Sampling::rgb, standards::Sampling::ycbcr_420};
    if (d.once_in(2)) facts.most_depth = d.once_in(2) ? 8 : 10;
    if (d.once_in(2)) facts.ranges = {standards::DynamicRange::sdr};
    if (d.once_in(2)) facts.hdcp = static_cast<standards::HdcpVersion>(d.below(5));
    return facts;
}

Drawn embed_types(Draw& d) {
    EmbedTypes edit;
    const auto* held = d.row(d.design.device_types);
    const auto* found = d.row(d.library.devices);
    if (d.once_in(2) && held) {
        auto type = *held->type;
        type.note = d.word();
        if (type.bridging) type.bridging->fast_leave = d.once_in(2);
        if (type.kind == cat::DeviceKind::display && d.once_in(2))
            type.image = cat::ImageFacts{1920 * d.between(1, 2), 1080, 1210_mm, 680_mm};
        for (auto& port : type.ports)
            if (port.signal == cat::Signal::video && d.once_in(2)) port.picture = some_facts(d);
        edit.devices.push_back(std::make_shared<const cat::DeviceType>(std::move(type)));
    } else if (found) {
        edit.devices.push_back(std::make_shared<const cat::DeviceType>(*found));
    }
    if (const auto* cable = d.row(d.library.cables); cable && d.once_in(2))
        edit.cables.push_back(std::make_shared<const cat::CableType>(*cable));
    return edit;
}

Drawn move_on_sheet(Draw& d) {
    const auto* device = d.row(d.design.devices);
    const auto* sheet = d.row(d.design.sheets);
    if (!device || !sheet) return {};
    auto place = Place::blank({sheet->id, device->id});
    place.at = d.point();
    place.turned = d.once_in(3);
    MoveOnSheet edit{{place}, {}, {}, {}};
    if (const auto* note = d.row(d.design.notes)) edit.notes = {*note}, edit.notes[0].at = d.point();
    if (const auto* frame = d.row(d.design.room_frames)) edit.frames = {*frame}, edit.frames[0].at = d.point();
    return edit;
}

Drawn paste(Draw& d) {
    const auto* sheet = d.row(d.design.sheets);
    const auto* first = d.row(d.design.devices);
    const auto* second = d.row(d.design.devices);
    if (!sheet || !first || !second) return {};
    auto clipping = copied(d.design, {first->id, second->id}, sheet->id);
    return Paste{std::make_shared<const Design>(std::move(clipping)), sheet->id, d.point(), d.random()};
}

Drawn set_up_vlan(Draw& d) {
    SetUpVlan edit{new_vlan(d.design, d.fresh<VlanId>()), d.once_in(2), {}, {}};
    if (const auto* held = d.row(d.design.vlans); held && d.once_in(2)) edit.row = *held;
    const auto* device = d.row(d.design.devices);
    const auto* type = device ? d.design.type_of(*device) : nullptr;
    if (type && type->bridging) edit.asked_by = device->id;
    if (edit.asked_by && edit.row.subnet && !d.once_in(3)) edit.from = base::Ipv4{edit.row.subnet->network.bits + 1};
    return edit;
}

Drawn place_device(Draw& d) {
    const auto* type = d.row(d.library.devices);
    if (!type) return {};
    return PlaceDevice{d.fresh<DeviceId>(),
                       std::make_shared<const cat::DeviceType>(*type),
                       {},
                       d.maybe_key(d.design.rooms),
                       d.maybe_key(d.design.sheets),
                       d.point()};
}

Drawn remove(Draw& d) {
    Remove edit;
    edit.keep_cables = d.once_in(2);
    const auto take = [&](const auto& rows) {
        if (const auto* row = d.row(rows)) edit.rows.emplace_back(row->id);
    };
    switch (d.below(15)) {
        case 0:
            take(d.design.rooms);
            break;
        case 1:
            take(d.design.racks);
            break;
        case 2:
            take(d.design.vlans);
            break;
        case 3:
            take(d.design.devices);
            break;
        case 4:
            take(d.design.streams);
            break;
        case 5:
            take(d.design.presets);
            break;
        case 6:
            take(d.design.subscriptions);
            break;
        case 7:
            take(d.design.sheets);
            break;
        case 8:
            take(d.design.room_frames);
            break;
        case 9:
            take(d.design.notes);
            break;
        case 10:
            take(d.design.waivers);
            break;
        case 11:
            take(d.design.revisions);
            break;
        case 12:
            take(d.design.walls);
            break;
        default:
            take(d.design.cables);
            break;
    }
    return edit;
}

Drawn rename(Draw& d) {
    std::vector<NamedId> ids;
    const auto offer = [&](const auto& rows) {
        if (const auto* row = d.row(rows)) ids.emplace_back(row->id);
    };
    offer(d.design.devices), offer(d.design.cables), offer(d.design.streams), offer(d.design.presets);
    offer(d.design.rooms), offer(d.design.racks), offer(d.design.vlans), offer(d.design.sheets);
    if (ids.empty()) return {};
    return Rename{ids[d.below(ids.size())], d.word(), {}};
}

Drawn set_fibre_work(Draw& d) {
    const auto* cable = d.row(d.design.cables);
    if (!cable) return {};
    FibreWork work{{}, d.between(0, 4), d.between(0, 3)};
    if (d.once_in(2)) work.pair_swaps = d.between(0, 3);
    return SetFibreWork{cable->id, work};
}

CablingSettings cabling(Draw& d) {
    CablingSettings cabling;
    cabling.warm_rule = static_cast<WarmRule>(d.below(4));
    if (d.once_in(2)) cabling.bundle_rise = base::Temperature::from_count(d.between(0, 20) * 1000);
    if (d.once_in(2)) cabling.joint_loss = base::Loss::from_count(d.between(200, 800));
    if (d.once_in(2)) cabling.cat6_10g = base::Length::from_count(d.between(30, 55) * 1'000'000LL);
    return cabling;
}

Drawn set_settings(Draw& d) {
    Settings row = d.design.settings();
    switch (d.below(7)) {
        case 5:
            row.survive = static_cast<Survival>(d.below(3));
            row.survive_presets.clear();
            if (const auto preset = d.maybe_key(d.design.presets)) row.survive_presets.push_back(*preset);
            break;
        case 6:
            row.cabling = cabling(d);
            break;
        case 0:
            row.title = d.word();
            break;
        case 1:
            row.usual_vlan = d.maybe_key(d.design.vlans);
            break;
        case 2:
            row.headroom_percent = d.between(50, 100);
            break;
        case 3:
            row.cable_temperature = base::Temperature::from_count(d.between(20, 60) * 1000);
            break;
        default:
            row.query_interval_s = d.between(30, 125);
            break;
    }
    return SetSettings{row};
}

/// A wall of displays that are in none, another shape of one, or one with a tile less.
Drawn set_wall(Draw& d) {
    if (const auto* held = d.row(d.design.walls); held && d.once_in(2)) {
        auto row = resized(*held, d.between(1, 3), d.between(1, 3));
        row.gap_across = row.gap_down = base::Length::from_count(d.between(0, 5) * 1000);
        for (const auto& tile : held->tiles)
            if (tile && d.once_in(4))
                if (auto less = without_tile(row, *tile)) row = std::move(*less);
        return SetWall{row};
    }
    std::vector<DeviceId> devices;
    for (const auto& row : d.design.devices) devices.push_back(row.id);
    devices = tiles_among(d.design, devices);
    if (devices.size() < 2) return {};
    if (devices.size() > 6) devices.erase(devices.begin() + 6, devices.end());
    return SetWall{new_wall(d.design, d.fresh<WallId>(), devices, d.maybe_key(d.design.sheets))};
}

Drawn stand_in_room(Draw& d) {
    const auto* device = d.row(d.design.devices);
    if (!device) return {};
    StandInRoom edit{{device->id}, d.maybe_key(d.design.rooms), {}, {}, {}};
    if (d.once_in(3)) edit.standing = Standing{1_m, 2_m, base::Length::from_count(d.between(0, 3000) * 1000LL)};
    if (const auto* rack = d.row(d.design.racks); rack && d.once_in(2))
        edit.rack = RackPlace{rack->id, d.between(1, 40), RackFace::front};
    return edit;
}

Drawn waive(Draw& d) {
    auto row = Waiver::blank(d.fresh<WaiverId>());
    const auto* device = d.row(d.design.devices);
    if (!device) return {};
    row.rule = "encoder_without_source";
    row.subjects = {"device:" + device->id.text()};
    row.reason = d.word();
    row.by = "design";
    return Waive{row};
}

}  // namespace

}  // namespace random_edit_detail

std::optional<model::AnyEdit> random_edit_of(std::size_t verb, const model::Design& design,
                                             const catalogue::Catalogue& library, std::mt19937_64& random) {
    using namespace random_edit_detail;
    static const std::vector<std::function<Drawn(Draw&)>> verbs{
        add_rows,       agree_contention, bend_cable, configure_device, configure_port, connect,     embed_types,
        move_on_sheet,  move_querier,     paste,      place_device,     reconnect,      remove,      rename,
        set_cable_type, set_fibre_work,   set_length, set_settings,     set_stream,     set_up_vlan, set_wall,
        stand_in_room,  subscribe,        waive};
    static_assert(std::variant_size_v<model::AnyEdit> == 24);  // a new verb is drawn here too
    Draw draw{design, library, random};
    return verbs.at(verb)(draw);
}

std::optional<model::AnyEdit> random_edit(const model::Design& design, const catalogue::Catalogue& library,
                                          std::mt19937_64& random) {
    for (int tries = 0; tries < 40; ++tries) {
        auto edit = random_edit_of(random() % std::variant_size_v<model::AnyEdit>, design, library, random);
        if (!edit) continue;
        const auto delta = model::make_edit(design, *edit);
        if (delta && !delta->empty()) return edit;
    }
    return std::nullopt;
}

}  // namespace streamwright::test
