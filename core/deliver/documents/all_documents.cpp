// The table of documents, by name.
#include "core/deliver/documents/all_documents.h"

#include <array>

namespace streamwright::deliver {

std::span<const DocumentKind> all_documents() {
    static constexpr std::array<DocumentKind, 14> table{{
        {"address-schedule", "Address schedule", make_address_schedule},
        {"bill-of-materials", "Bill of materials", make_bill_of_materials},
        {"cable-schedule", "Cable schedule", make_cable_schedule},
        {"control-schedule", "Control schedule", make_control_schedule},
        {"edid", "EDID and pictures", make_edid},
        {"failures", "Failures", make_failures},
        {"findings", "Findings", make_findings_list},
        {"link-limits", "Link limits", make_link_limits},
        {"network-drawing", "Network drawing", make_network_drawing},
        {"poe-plan", "Power over Ethernet", make_poe_plan},
        {"port-schedule", "Port schedule", make_port_schedule},
        {"schematic", "Schematic", make_schematic_sheets},
        {"stream-schedule", "Stream schedule", make_stream_schedule},
        {"wall-plan", "Wall plan", make_wall_plan},
    }};
    return table;
}

}  // namespace streamwright::deliver
