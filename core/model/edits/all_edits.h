// Every verb that changes a design. Each is a plain function from a design to a delta or a refusal in words; the list
// here is what remedies, tools, tests and generated designs may ask for.
#pragma once

#include "core/base/result.h"
#include "core/model/delta.h"
#include "core/model/edits/add_rows.h"
#include "core/model/edits/agree_contention.h"
#include "core/model/edits/bend_cable.h"
#include "core/model/edits/configure_device.h"
#include "core/model/edits/configure_port.h"
#include "core/model/edits/connect.h"
#include "core/model/edits/embed_types.h"
#include "core/model/edits/move_on_sheet.h"
#include "core/model/edits/move_querier.h"
#include "core/model/edits/paste.h"
#include "core/model/edits/place_device.h"
#include "core/model/edits/reconnect.h"
#include "core/model/edits/remove.h"
#include "core/model/edits/rename.h"
#include "core/model/edits/set_cable_type.h"
#include "core/model/edits/set_fibre_work.h"
#include "core/model/edits/set_length.h"
#include "core/model/edits/set_settings.h"
#include "core/model/edits/set_stream.h"
#include "core/model/edits/set_up_vlan.h"
#include "core/model/edits/set_wall.h"
#include "core/model/edits/stand_in_room.h"
#include "core/model/edits/subscribe.h"
#include "core/model/edits/waive.h"

#include <span>
#include <string_view>
#include <variant>

namespace streamwright::model {

using AnyEdit =
    std::variant<AddRows, AgreeContention, BendCable, ConfigureDevice, ConfigurePort, Connect, EmbedTypes, MoveOnSheet,
                 MoveQuerier, Paste, PlaceDevice, Reconnect, Remove, Rename, SetCableType, SetFibreWork, SetLength,
                 SetSettings, SetStream, SetUpVlan, SetWall, StandInRoom, Subscribe, Waive>;

base::Result<Delta> make_edit(const Design& design, const AnyEdit& edit);

/// Verb names in the order of the variant, for messages and the house test.
std::span<const std::string_view> edit_names();

}  // namespace streamwright::model
