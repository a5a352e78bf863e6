// Small designs for tests in a few short calls, with tiny invented types made in code so that no file is needed.
// Works on plain rows, so that faulty designs can be made as easily as sound ones.
#pragma once

#include "core/catalogue/catalogue.h"
#include "core/model/delta.h"

#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace streamwright::test {

namespace types {

using DevicePtr = std::shared_ptr<const catalogue::DeviceType>;
using CablePtr = std::shared_ptr<const catalogue::CableType>;

catalogue::PortType make_port(const std::string& key, catalogue::Signal signal, catalogue::Way way,
                              catalogue::Connector connector);
/// A copper network port of the rates given.
catalogue::PortType make_network_port(const std::string& key, std::vector<base::BitRate> rates);

/// Copper ports "1".."n" of up to `rate`, cages "s1".."sn" (sfp_plus, 1 and 10 Gb/s); every switch fact stated: snoops,
/// unknown groups to router ports, lookup by address, rapid tree per VLAN off, 740 W of PoE by class, class 4 a port.
catalogue::DeviceType make_switch(int ports, base::BitRate rate, int cages);
/// "in" (HDMI), "loop" (HDMI out), "net" (1 Gb/s copper, takes PoE class 3), "audio" in, "usb" device side.
catalogue::DeviceType make_encoder();
/// "out" (HDMI), "net" (1 Gb/s copper, takes PoE class 3), "usb" host side; decoder input "main".
catalogue::DeviceType make_decoder();
/// The decoder with a built-in switch that passes BPDUs, and a second network port "aux" for the next one.
catalogue::DeviceType make_chained_decoder();
/// "in", "out", "net": encodes or decodes, one role at a time; decoder input "main".
catalogue::DeviceType make_endpoint();
/// "out" (HDMI) and "usb" host side, like a computer.
catalogue::DeviceType make_source();
/// "in" (HDMI).
catalogue::DeviceType make_display();
/// Faces "f1".."fn" pass to rears "r1".."rn", RJ45.
catalogue::DeviceType make_patch_panel(int ports);
/// 10 Gb/s short-reach multimode module for sfp_plus cages; "10GBASE-LR" over singlemode likewise.
catalogue::DeviceType make_module(const std::string& phy);
catalogue::DeviceType make_rack_type();

DevicePtr switch_24();  // make_switch(24, 1 Gb/s, 4)
DevicePtr encoder();
DevicePtr decoder();
DevicePtr endpoint();
DevicePtr source();
DevicePtr display();
DevicePtr patch_panel();   // 24 ways
DevicePtr module_sr();     // 10GBASE-SR
DevicePtr module_lr();     // 10GBASE-LR
CablePtr cat6a();          // installed
CablePtr cat6a_lead();     // 2 m patch lead
CablePtr om3();            // LC duplex
CablePtr os2();            // LC duplex
CablePtr hdmi();           // lead, no fixed length
CablePtr usb_lead();       // USB A to B
CablePtr speaker_cable();  // audio, terminals and jacks

/// All of the above as a library.
catalogue::Catalogue all();

}  // namespace types

/// A security plan that leaves no question open.
model::SecurityPlan answered_plan();

class DesignBuilder {
public:
    explicit DesignBuilder(std::uint64_t seed = 1);

    model::Design design;  // as built so far; rows may be put and changed directly

    template <class AnyId>
    AnyId fresh() {
        return ids_.next<AnyId>();
    }
    template <class Row>
    void put(Row row) {
        (design.*model::table_of<Row>()).put(std::move(row));
    }
    /// Changes one row in place: b.change<Device>(id, [](auto& row) { row.note = "x"; }); the row must exist, or for a
    /// PortOverride is made.
    template <class Row, class Change>
    void change(const typename Row::Key& key, Change&& change) {
        const Row* held = (design.*model::table_of<Row>()).find(key);
        Row row = held ? *held : Row::blank(key);
        change(row);
        put(std::move(row));
    }

    void embed(const types::DevicePtr& type);
    void embed(const types::CablePtr& type);
    model::DeviceId device(const types::DevicePtr& type, const std::string& tag);
    model::DeviceId device(const catalogue::DeviceType& type, const std::string& tag);
    model::CableId cable(const types::CablePtr& type, const model::PortRef& a, const model::PortRef& b,
                         std::optional<base::Length> length = {}, const std::string& tag = {});
    model::CableId open_cable(const types::CablePtr& type, const model::PortRef& a);
    model::VlanId vlan(int vid, const std::string& name, const std::string& subnet = {});
    model::RoomId room(const std::string& number, const std::string& name);
    model::RackId rack(const std::string& name);
    model::SheetId sheet(int number = 1);
    void place(model::SheetId sheet, model::DeviceId device, base::Length x, base::Length y);
    model::StreamId stream(model::DeviceId encoder, base::BitRate payload, const std::string& group = {},
                           std::optional<model::VlanId> vlan = {});
    model::PresetId preset(const std::string& name);
    model::SubscriptionId subscribe(model::PresetId preset, model::StreamId stream, model::DeviceId decoder,
                                    const std::string& input = "main");
    /// The row of a port's settings, made blank at the first call.
    template <class Change>
    void port(const model::PortRef& ref, Change&& change_row) {
        change<model::PortOverride>(ref, change_row);
    }
    void usual_vlan(model::VlanId vlan);
    void querier(model::DeviceId network_switch, model::VlanId vlan, const std::string& address = {});
    void address(model::DeviceId device, const std::string& address, std::optional<model::VlanId> vlan = {});

private:
    base::IdSource ids_;
};

/// {sw, "24"} spelt as a port.
inline model::PortRef port_of(model::DeviceId device, const std::string& port) { return {device, {port}}; }

}  // namespace streamwright::test
