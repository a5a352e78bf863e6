// The edits behind the cable tool: a fresh cable, or an end moved, each with its route on the sheet.
#pragma once

#include "app/tools/choose_gesture.h"
#include "core/base/result.h"
#include "core/model/delta.h"
#include "core/model/edits/reconnect.h"

namespace streamwright::app {

/// Why the lead cannot go to `to`; nothing if it can. `moving` is the cable whose end is dragged.
std::optional<base::Error> lead_refusal(const ToolBox& box, const model::Design& design, const model::PortRef& from,
                                        const model::PortRef& to, std::optional<model::CableId> moving);

base::Result<model::Delta> connect_on_sheet(ToolBox& box, const model::Design& design, base::IdSource& ids,
                                            model::SheetId sheet, const model::PortRef& from, const model::PortRef& to);
base::Result<model::Delta> reconnect_on_sheet(const model::Design& design, model::SheetId sheet, model::CableId cable,
                                              model::WhichEnd end, std::optional<model::PortRef> to);

}  // namespace streamwright::app
