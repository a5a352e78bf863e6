// The parts from which the venue Ferrow Quay is made, in the order in which they are called; each adds its edits.
#pragma once

#include "tests/support/demo_maker.h"

#include <array>
#include <map>
#include <string>

namespace streamwright::test::ferrow_quay_parts {

/// Access switches are drawn with odd ports left and even ports right: sources take odd ones, displays even ones.
enum class PortSide { odd, even };

/// The design under way and the rows that parts hand to each other.
struct Quay {
    explicit Quay(DemoMaker& maker);

    DemoMaker& make;
    model::RoomId hall, board, foyer, control, marquee, north, south;
    std::array<model::RoomId, 6> seminars;
    model::RackId north_a, north_b, south_a, control_rack;
    model::VlanId av, control_vlan, corporate;
    model::PresetId lecture, conference, evening, all_off;
    std::map<std::pair<model::DeviceId, PortSide>, int> ports_used;  // per switch and side: the last one taken
    int av_hosts = 20, control_hosts = 20;                           // last host numbers given

    /// The next free access port of a switch on that side.
    std::string next_port(model::DeviceId on_switch, PortSide side);
    /// Gives the next address of the media or the control VLAN.
    void media_address(model::DeviceId device);
    void control_address(model::DeviceId device);
    /// One installed cable straight to the switch.
    std::string wire(const std::string& tag, const std::string& port, const std::string& to_switch, PortSide side,
                     int metres);
    /// An installed cable to the panel, and a patch lead from there to the switch port of the same number.
    std::string wire_by_panel(const std::string& tag, const std::string& port, const std::string& panel,
                              const std::string& to_switch, PortSide side, std::optional<int> metres);
    void set_vlan(const std::string& to_switch, const std::string& port, model::VlanId vlan);
    /// An encoder with the lead from its source, its address and its stream "S-101" in group 239.192.X.Y.
    void encode(const std::string& source, const std::string& source_port, const std::string& encoder,
                const std::string& input, const std::string& stream, const std::string& group, const std::string& note);
    /// An encoder that still waits for its source.
    void encode_later(const std::string& encoder, const std::string& stream, const std::string& group,
                      const std::string& note);
    /// A decoder with the lead to its display, and its address.
    void decode(const std::string& decoder, const std::string& display, const std::string& input);
    /// What the input tells its source at most.
    void announce(const std::string& tag, const std::string& input, const std::string& format);
    /// Films and the like: content that HDCP of any version may carry.
    void plays_protected(const std::string& source, const std::string& output);
    void show(model::PresetId preset, const std::string& decoder, const std::string& stream);

private:
    std::map<std::string, model::StreamId> streams_;
};

void switches_and_trunks(Quay& quay);
void quay_hall(Quay& quay);
void seminar_rooms(Quay& quay);
void board_room(Quay& quay);
void foyer(Quay& quay);
void control_room(Quay& quay);
void marquee(Quay& quay);
void subscriptions(Quay& quay);
void sheets(Quay& quay);

}  // namespace streamwright::test::ferrow_quay_parts
