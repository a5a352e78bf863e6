// The workbench on which the faulty design is built: plates, switches and streams in a few short calls. Its parts stand
// in files of their own, one for each field of faults.
#pragma once

#include "tests/support/demo_designs.h"
#include "tests/support/demo_sheets.h"

#include <map>
#include <string>

namespace streamwright::test::demo_faulty_detail {

using catalogue::Role;
using model::DeviceId;
using model::PortOverride;

struct Faulty {
    explicit Faulty(DemoMaker& maker)
        : make(maker),
          room(make.room("9.01", "Test room", "9")),
          av(make.vlan(10, "AV media", model::VlanPurpose::av, "10.90.0.0/24")),
          second(make.vlan(20, "AV second", model::VlanPurpose::av, "10.90.1.0/24")),
          third(make.vlan(30, "AV third", model::VlanPurpose::av, "10.90.2.0/24")),
          preset(make.preset(1, "Everything")) {}

    DeviceId device(const std::string& type, const std::string& tag) { return make.device(type, tag, room); }

    /// A laptop plate and an encoder fed by it, on the switch port; sends in the group.
    DeviceId encoder(const std::string& type, const std::string& number, const std::string& group, DeviceId bridge,
                     const std::string& port, const std::string& input = "hdmi-in") {
        const auto plate = device("laptop-plate", "LP-" + number);
        const auto id = device(type, "ENC-" + number);
        make.cable("hdmi-2m", plate, "hdmi-out", id, input);
        make.cable("copper-cat6a", id, "net", bridge, port, 30);
        streams.emplace(number, make.stream(id, "S-" + number, group));
        return id;
    }

    DeviceId decoder(const std::string& type, const std::string& number, DeviceId bridge, const std::string& port,
                     int metres = 30) {
        const auto id = device(type, "DEC-" + number);
        const auto monitor = device("display-24", "MON-" + number);
        make.cable("hdmi-2m", id, "hdmi-out", monitor, "hdmi-in");
        make.cable("copper-cat6a", id, "net", bridge, port, metres);
        return id;
    }

    void show(const std::string& decoder, const std::string& stream) {
        make.show(preset, make.tagged("DEC-" + decoder), streams.at(stream));
    }

    model::CableId fibre(DeviceId a, const std::string& a_port, const std::string& a_module, DeviceId b,
                         const std::string& b_port, const std::string& b_module, const std::string& type, int metres) {
        make.module(a, a_port, a_module);
        make.module(b, b_port, b_module);
        return make.cable(type, a, a_port, b, b_port, metres);
    }

    /// A copy of a shipped type under another key, changed by a function.
    template <class Change>
    void variant(const std::string& of, const std::string& key, const std::string& name, Change&& change) {
        auto type = *make.device_type(of);
        type.key = {key};
        type.name = name;
        change(type);
        make.run(model::EmbedTypes{{std::make_shared<const catalogue::DeviceType>(type)}, {}});
    }

    DemoMaker& make;
    model::RoomId room;
    model::VlanId av, second, third;
    model::PresetId preset;
    std::map<std::string, model::StreamId> streams;
};

/// Faults of signals: USB, keyboard and mouse sessions, control, sound.
void signal_faults(Faulty& f);
void signal_fault_sheet(Faulty& f);
/// Faults of sound and of USB.
void sound_faults(Faulty& f);
void sound_fault_sheet(Faulty& f);

/// Faults of cabling, each on switches of its own.
void cabling_faults(Faulty& f);
void cabling_fault_sheet(Faulty& f);

/// Faults of the venue: racks, chassis, what a management server must do, chains of endpoints, slow links.
void venue_faults(Faulty& f);
void venue_fault_sheet(Faulty& f);

/// Faults of spanning trees, of tables that are too small and of VLANs that leak, each on switches of its own.
void tree_faults(Faulty& f);
void tree_fault_sheet(Faulty& f);

/// Faults of pictures: formats, EDID, HDR and content protection.
void picture_faults(Faulty& f);
void picture_fault_sheet(Faulty& f);

/// Faults of walls: unlike, missing and late tiles, LED data, images too small.
void wall_faults(Faulty& f);
void wall_fault_sheet(Faulty& f);

/// Faults of streams on their way: frames, bursts, joins and addresses, on an island of their own.
void stream_faults(Faulty& f);
void stream_fault_sheet(Faulty& f);

}  // namespace streamwright::test::demo_faulty_detail
