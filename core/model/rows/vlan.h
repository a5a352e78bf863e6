// A VLAN: number, purpose, subnet. Membership stands on the ports (PortOverride), queriers on the switches.
#pragma once

#include "core/base/enum_text.h"
#include "core/base/net_address.h"
#include "core/model/ids.h"
#include "core/model/rows/unknown_keys.h"

#include <optional>
#include <string>

namespace streamwright::model {

enum class VlanPurpose { av, control, corporate, wireless };

struct Vlan {
    VlanId id;
    int vid = 1;  // 1 to 4094
    std::string name;
    VlanPurpose purpose = VlanPurpose::av;
    std::optional<base::Ipv4Prefix> subnet;
    std::optional<base::Ipv4> gateway;
    std::optional<base::Ipv4> lease_first, lease_last;
    UnknownKeys unknown;

    using Key = VlanId;
    static Vlan blank(Key key) { return Vlan{key}; }
    Key key() const { return id; }
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("id", s.id);
        v("vid", s.vid);
        v("name", s.name);
        v("purpose", s.purpose);
        v("subnet", s.subnet);
        v("gateway", s.gateway);
        v("lease_first", s.lease_first);
        v("lease_last", s.lease_last);
    }
    friend bool operator==(const Vlan&, const Vlan&) = default;
};

}  // namespace streamwright::model

template <>
struct streamwright::base::EnumText<streamwright::model::VlanPurpose> {
    using E = streamwright::model::VlanPurpose;
    static constexpr std::array<std::pair<E, std::string_view>, 4> names{
        {{E::av, "av"}, {E::control, "control"}, {E::corporate, "corporate"}, {E::wireless, "wireless"}}};
};
