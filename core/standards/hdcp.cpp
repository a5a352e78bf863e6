#include "core/standards/hdcp.h"

#include <algorithm>

namespace streamwright::standards {

bool may_leave_on(HdcpContent content, HdcpVersion version) {
    switch (content) {
        case HdcpContent::open:
            return true;
        case HdcpContent::type_0:
            return version >= HdcpVersion::hdcp_1_4;
        case HdcpContent::type_1:
            return version >= HdcpVersion::hdcp_2_2;
    }
    return false;
}

HdcpVersion hdcp_between(HdcpVersion source, HdcpVersion sink) { return std::min(source, sink); }

std::optional<HdcpLimits> hdcp_limits(HdcpVersion version) {
    if (version == HdcpVersion::none) return std::nullopt;
    if (version == HdcpVersion::hdcp_1_4)
        return HdcpLimits{127,
                          {"HDCP", "1.4", "Bstatus, seven bits of device count"},
                          7,
                          {"HDCP", "1.4", "topology", Standing::memory}};
    return HdcpLimits{31,
                      {"HDCP", "2.2", "receiver identifiers of a repeater list"},
                      4,
                      {"HDCP", "2.2", "topology", Standing::memory}};
}

}  // namespace streamwright::standards
