// A venue for field cases: switches, sources on encoders, displays on decoders, so that only the fault of the case is
// found. Rates are given as they stand in the cases, on the wire.
#pragma once

#include "tests/support/clean_design.h"

#include <functional>
#include <map>
#include <string>

namespace streamwright::test {

class FieldRoom {
public:
    FieldRoom();

    /// 48 ports of 1 Gb/s and four cages of 1 or 10 Gb/s, its type changed as said.
    model::DeviceId add_switch(const std::string& tag, const std::function<void(catalogue::DeviceType&)>& change = {});
    void querier(model::DeviceId bridge);
    /// OM3, 60 m, 10GBASE-SR, unless another cable is given.
    model::CableId trunk(model::DeviceId a, model::DeviceId b, const types::CablePtr& cable = types::om3());
    /// An encoder with its source and one stream of that rate on the wire; groups are counted up where none is given.
    model::StreamId encoder(model::DeviceId bridge, base::BitRate wire, const std::string& group = {});
    /// A decoder with its display, showing the stream if one is given.
    model::DeviceId decoder(model::DeviceId bridge, std::optional<model::StreamId> shown = {},
                            const types::DevicePtr& type = types::decoder());
    /// The next free copper port of the switch.
    model::PortRef next_port(model::DeviceId bridge);
    /// A device cabled to nothing but a display.
    model::DeviceId with_display(const types::DevicePtr& type, const std::string& tag);

    DesignBuilder b{11};
    model::VlanId vlan{0};
    model::PresetId preset{0};
    model::DeviceId last_encoder{0};
    model::CableId last_cable{0};  // of the encoder or decoder added last

private:
    std::string number();
    int numbers_ = 0;
    std::map<model::DeviceId, int> ports_, cages_;
};

/// The payload of a stream of 1,400 octets a packet that weighs no more than `wire`: 1,478 octets a packet untagged
/// (IETF RFC 3550, 768 and 791; IEEE 802.3).
base::BitRate payload_of(base::BitRate wire);
using Found = std::map<std::string, int>;
/// How often each rule finds something: the whole set.
Found found_by_rule(const model::Design& design);
/// What the first finding of the rule says.
std::string sentence(const FieldRoom& room, std::string_view rule);

}  // namespace streamwright::test
