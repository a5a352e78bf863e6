// Settings of the design as a whole: titles, checks, documents. There is exactly one row.
#pragma once

#include "core/base/enum_text.h"
#include "core/base/units.h"
#include "core/model/ids.h"
#include "core/model/rows/cabling_settings.h"
#include "core/model/rows/unknown_keys.h"

#include <compare>
#include <optional>
#include <string>
#include <vector>

namespace streamwright::model {

/// Which IGMP document's membership time counts: RFC 2236 and 3376 give 260 s, RFC 9776 gives 270 s.
enum class IgmpDocument { rfc2236, rfc9776 };

/// What the pictures must outlive. Nothing asked, nothing is found: a room with one switch has by its nature one thing
/// that all hangs on, and only the designer knows whether that is meant.
enum class Survival { nothing, link, link_or_switch };

/// Whose window holds sound and picture together: ITU-R BT.1359-1 (acceptability), EBU R37, ATSC IS-191.
enum class LipSync { bt1359, ebu_r37, atsc_is191 };

/// The security plan as the designer answers it; what is not answered is asked. Nothing here is guessed from the
/// drawing.
struct SecurityPlan {
    std::optional<bool> streams_encrypted;
    std::optional<bool> port_access_control;  // IEEE 802.1X on the ports that people can reach
    std::string certificates_expire;          // date, ISO 8601, of the first certificate to expire
    std::optional<bool> account_directory;    // accounts come from a directory, not from lists in each device
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("streams_encrypted", s.streams_encrypted);
        v("port_access_control", s.port_access_control);
        v("certificates_expire", s.certificates_expire);
        v("account_directory", s.account_directory);
    }
    friend bool operator==(const SecurityPlan&, const SecurityPlan&) = default;
};

/// Spare parts to buy beside what is drawn.
struct SparePlan {
    int endpoints_percent = 0;  // of each endpoint type, rounded up to whole pieces
    int of_each_module = 0;     // transceivers of each kind
    int of_each_lead = 0;       // patch leads of each kind
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("endpoints_percent", s.endpoints_percent);
        v("of_each_module", s.of_each_module);
        v("of_each_lead", s.of_each_lead);
    }
    friend bool operator==(const SparePlan&, const SparePlan&) = default;
};

struct Settings {
    struct Key {
        friend auto operator<=>(const Key&, const Key&) = default;
    };
    std::string title;
    std::string owner;  // legal owner on title blocks
    std::string department;
    std::string reference;                               // technical reference
    std::string number;                                  // identification number stem of drawings
    std::string status;                                  // document status, "in preparation"
    std::string created_by;                              // a role
    std::string approved_by;                             // a role
    std::optional<VlanId> usual_vlan;                    // untagged on ports that say nothing
    std::optional<base::Temperature> cable_temperature;  // hottest planned; none: 20 degrees C
    int headroom_percent = 80;                           // warn above this share of a link
    IgmpDocument igmp = IgmpDocument::rfc2236;
    int query_interval_s = 125;
    int query_response_s = 10;
    int robustness = 2;
    Survival survive = Survival::nothing;
    std::vector<PresetId> survive_presets;  // whose pictures must outlive it; none: of all
    bool imperial = false;
    std::vector<std::string> document_set;  // names; empty: all
    std::vector<std::string> formats;       // names; empty: all
    SecurityPlan security;
    SparePlan spares;
    LipSync lip_sync = LipSync::bt1359;
    CablingSettings cabling;
    UnknownKeys unknown;

    static Settings blank(Key) { return {}; }
    Key key() const { return {}; }
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("title", s.title);
        v("owner", s.owner);
        v("department", s.department);
        v("reference", s.reference);
        v("number", s.number);
        v("status", s.status);
        v("created_by", s.created_by);
        v("approved_by", s.approved_by);
        v("usual_vlan", s.usual_vlan);
        v("cable_temperature_mdegc", s.cable_temperature);
        v("headroom_percent", s.headroom_percent);
        v("igmp", s.igmp);
        v("query_interval_s", s.query_interval_s);
        v("query_response_s", s.query_response_s);
        v("robustness", s.robustness);
        v("survive", s.survive);
        v("survive_presets", s.survive_presets);
        v("imperial", s.imperial);
        v("document_set", s.document_set);
        v("formats", s.formats);
        v("security", s.security);
        v("spares", s.spares);
        v("lip_sync", s.lip_sync);
        v("cabling", s.cabling);
    }
    friend bool operator==(const Settings&, const Settings&) = default;
};

}  // namespace streamwright::model

template <>
struct streamwright::base::EnumText<streamwright::model::IgmpDocument> {
    using E = streamwright::model::IgmpDocument;
    static constexpr std::array<std::pair<E, std::string_view>, 2> names{
        {{E::rfc2236, "rfc2236"}, {E::rfc9776, "rfc9776"}}};
};
template <>
struct streamwright::base::EnumText<streamwright::model::Survival> {
    using E = streamwright::model::Survival;
    static constexpr std::array<std::pair<E, std::string_view>, 3> names{
        {{E::nothing, "nothing"}, {E::link, "link"}, {E::link_or_switch, "link_or_switch"}}};
};
template <>
struct streamwright::base::EnumText<streamwright::model::LipSync> {
    using E = streamwright::model::LipSync;
    static constexpr std::array<std::pair<E, std::string_view>, 3> names{
        {{E::bt1359, "bt1359"}, {E::ebu_r37, "ebu_r37"}, {E::atsc_is191, "atsc_is191"}}};
};
