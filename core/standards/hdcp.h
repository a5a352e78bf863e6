// Content protection on display links (HDCP): which content may leave on which version, and how many devices and
// levels of repeaters one source may have below it.
#pragma once

#include "core/base/enum_text.h"
#include "core/standards/citation.h"

#include <optional>

namespace streamwright::standards {

/// In the order of what they are trusted with. 1.4 stands for all of 1.x, 2.0 for 2.0 and 2.1.
enum class HdcpVersion { none, hdcp_1_4, hdcp_2_0, hdcp_2_2, hdcp_2_3 };

/// Stream types of HDCP 2.x: type 0 may go on to older versions, type 1 may not. Content that was protected by 1.x is
/// treated as type 0. open: no protection asked for.
enum class HdcpContent { open, type_0, type_1 };

/// Whether content may leave on a port whose whole path below speaks at least that version.
bool may_leave_on(HdcpContent content, HdcpVersion version);
inline constexpr Citation hdcp_stream_type_source{"HDCP", "2.2", "stream type"};

/// What two ports speak: the older of the two (2.2 and 2.3 meet as 2.x).
HdcpVersion hdcp_between(HdcpVersion source, HdcpVersion sink);
inline constexpr Citation hdcp_meeting_source{"HDCP", "2.3", "adaptation", Standing::memory};

/// What a source may have below it. Levels are remembered figures and devices may allow far fewer of both: advice or a
/// value of the type, never a verdict.
struct HdcpLimits {
    int devices;
    Citation devices_source;
    int levels;  // of repeaters in series
    Citation levels_source;
};
/// Nothing where no protection is spoken.
std::optional<HdcpLimits> hdcp_limits(HdcpVersion version);

/// A source stops its picture when a repeater below reports either too many devices or too many levels.
inline constexpr Citation hdcp_exceeded_source{"HDCP", "1.4 / 2.2",
                                               "Bstatus bits 11 and 7, RxInfo: MAX_CASCADE_EXCEEDED and "
                                               "MAX_DEVS_EXCEEDED"};

}  // namespace streamwright::standards

template <>
struct streamwright::base::EnumText<streamwright::standards::HdcpVersion> {
    using E = streamwright::standards::HdcpVersion;
    static constexpr std::array<std::pair<E, std::string_view>, 5> names{
        {{E::none, "none"}, {E::hdcp_1_4, "1.4"}, {E::hdcp_2_0, "2.0"}, {E::hdcp_2_2, "2.2"}, {E::hdcp_2_3, "2.3"}}};
};

template <>
struct streamwright::base::EnumText<streamwright::standards::HdcpContent> {
    using E = streamwright::standards::HdcpContent;
    static constexpr std::array<std::pair<E, std::string_view>, 3> names{
        {{E::open, "open"}, {E::type_0, "type 0"}, {E::type_1, "type 1"}}};
};
