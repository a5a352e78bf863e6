// The makers of the documents, one file each.
#pragma once

#include "core/deliver/document.h"

namespace streamwright::deliver {

Content make_address_schedule(const Source& source);
Content make_bill_of_materials(const Source& source);
Content make_cable_schedule(const Source& source);
Content make_control_schedule(const Source& source);
Content make_edid(const Source& source);
Content make_failures(const Source& source);
Content make_findings_list(const Source& source);
Content make_link_limits(const Source& source);
Content make_network_drawing(const Source& source);
Content make_poe_plan(const Source& source);
Content make_port_schedule(const Source& source);
Content make_schematic_sheets(const Source& source);
Content make_stream_schedule(const Source& source);
Content make_wall_plan(const Source& source);

}  // namespace streamwright::deliver
