// The strong ids of the design's rows.
#pragma once

#include "core/base/id.h"
#include "core/catalogue/keys.h"

namespace streamwright::model {

using DeviceId = base::Id<struct DeviceIdTag>;
using CableId = base::Id<struct CableIdTag>;
using StreamId = base::Id<struct StreamIdTag>;
using SubscriptionId = base::Id<struct SubscriptionIdTag>;
using PresetId = base::Id<struct PresetIdTag>;
using VlanId = base::Id<struct VlanIdTag>;
using RoomId = base::Id<struct RoomIdTag>;
using RackId = base::Id<struct RackIdTag>;
using SheetId = base::Id<struct SheetIdTag>;
using FrameId = base::Id<struct FrameIdTag>;
using WallId = base::Id<struct WallIdTag>;
using NoteId = base::Id<struct NoteIdTag>;
using WaiverId = base::Id<struct WaiverIdTag>;
using RevisionId = base::Id<struct RevisionIdTag>;

using catalogue::CableTypeKey;
using catalogue::InputKey;
using catalogue::PortKey;
using catalogue::TypeKey;

/// A port is named by its device and its key within the device's type.
struct PortRef {
    DeviceId device;
    PortKey port;
    static PortRef blank() { return {DeviceId(0), {}}; }
    template <class Self, class V>
    static void visit(Self& s, V&& v) {
        v("device", s.device);
        v("port", s.port);
    }
    friend auto operator<=>(const PortRef&, const PortRef&) = default;
};

}  // namespace streamwright::model

template <>
struct std::hash<streamwright::model::PortRef> {
    std::size_t operator()(const streamwright::model::PortRef& ref) const noexcept {
        return std::hash<streamwright::model::DeviceId>{}(ref.device) * 31 +
               std::hash<streamwright::model::PortKey>{}(ref.port);
    }
};
