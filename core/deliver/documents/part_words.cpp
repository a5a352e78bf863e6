#include "core/deliver/documents/part_words.h"

#include "core/deliver/documents/words.h"

namespace streamwright::deliver {

namespace part_words_detail {

using analysis::LeadNeed;
using analysis::Part;
using analysis::PartFrom;
using analysis::PartKind;
using catalogue::CableGrade;
using catalogue::Connector;

std::string grade_words(CableGrade grade) {
    switch (grade) {
        case CableGrade::none:
            return {};
        case CableGrade::cat5e:
            return "category 5e";
        case CableGrade::cat6:
            return "category 6";
        case CableGrade::cat6a:
            return "category 6A";
        case CableGrade::cat8:
            return "category 8";
        default:
            break;
    }
    std::string name(base::enum_text(grade));  // fibre: OM4, OS2
    for (char& c : name)
        if (c == 'o' || c == 'm' || c == 's') c = static_cast<char>(c - 'a' + 'A');
    return name;
}

std::string patch_lead_name(const LeadNeed& lead) {
    std::string name = lead.signal == catalogue::Signal::fibre ? "Fibre lead" : "Patch lead";
    if (const auto grade = grade_words(lead.grade); !grade.empty()) name += ", " + grade;
    if (lead.screened) name += ", screened";
    name += ", " + std::string(connector_words(lead.near));
    if (lead.far != lead.near) name += " to " + std::string(connector_words(lead.far));
    return name;
}

std::string mains_lead_name(const LeadNeed& lead) {
    if (lead.near == Connector::iec_c8) return "Mains lead, IEC 60320 C7, for C8 inlets";
    if (lead.near == Connector::iec_c20) return "Mains lead, IEC 60320 C19, for C20 inlets";
    return "Mains lead, IEC 60320 C13, for C14 inlets";
}

std::string licence_counting(const Part& part) {
    const auto& [need, counted, undecided] = *part.licence;
    std::string words = std::to_string(counted) + ' ' + std::string(base::enum_text(need.per)) +
                        (counted == 1 ? "" : "s") + ": " + std::to_string(need.count) + " for each " +
                        std::to_string(need.each) + " begun";
    if (part.devices.size() > 1) words += ", for each of " + std::to_string(part.devices.size()) + " devices";
    if (undecided > 0) words += "; endpoints whose role is not set, not counted: " + std::to_string(undecided);
    return words;
}

std::string drawn_counting(const Part& part) {
    if (part.unknown_lengths == 0) return "drawn";
    if (part.unknown_lengths == 1) return "drawn; the length of 1 cable is not known";
    return "drawn; lengths of " + std::to_string(part.unknown_lengths) + " cables are not known";
}

bool is_module(const model::Design& design, const Part& part) {
    const auto* row = part.kind == PartKind::device ? design.device_types.find(model::TypeKey{part.key}) : nullptr;
    return row && row->type->module;
}

std::string counting(const model::Design& design, const Part& part) {
    switch (part.kind) {
        case PartKind::patch_lead:
            return "one for each end of installed cable drawn straight to a port; lengths still to be chosen";
        case PartKind::mains_lead:
            return "one for each inlet without a drawn cable";
        case PartKind::plug_in_supply:
            return "one for each not fed over the network; see first whether it comes in the box";
        case PartKind::licence:
            return licence_counting(part);
        case PartKind::fixing_set:
            return "one for each unit, shelf and blank in a rack";
        case PartKind::rack_shelf:
            return "one for each place in a rack that holds devices without rack ears";
        case PartKind::blank_panel:
            return "one for each open unit at the front of racks in use; higher ones may stand for several";
        case PartKind::earthing_kit:
            return "one for each rack";
        case PartKind::cable_label:
            return "two for each drawn cable and lead, one at either end";
        default:
            break;
    }
    if (part.from == PartFrom::drawn) return drawn_counting(part);
    return is_module(design, part) ? "one for each cage that holds one; none where a direct-attach cable plugs in"
                                   : "for cards that stand in no drawn chassis";
}

std::string spare_counting(const model::Design& design, const Part& part) {
    if (part.spare == 0) return {};
    const auto& plan = design.settings().spares;
    if (part.kind == PartKind::device && !is_module(design, part))
        return "; spare: " + std::to_string(plan.endpoints_percent) + " %, rounded up";
    return "; spare: " + std::to_string(part.spare) + " of each kind";
}

}  // namespace part_words_detail

std::string part_name(const analysis::Part& part) {
    using analysis::PartKind;
    switch (part.kind) {
        case PartKind::patch_lead:
            return part_words_detail::patch_lead_name(*part.lead);
        case PartKind::mains_lead:
            return part_words_detail::mains_lead_name(*part.lead);
        case PartKind::plug_in_supply:
            return "Plug-in supply for: " + part.name;
        case PartKind::fixing_set:
            return "Cage nuts and screws, set of four";
        case PartKind::rack_shelf:
            return "Rack shelf";
        case PartKind::blank_panel:
            return "Blanking panel, 1 RU";
        case PartKind::earthing_kit:
            return "Earthing kit for a rack";
        case PartKind::cable_label:
            return "Cable label";
        default:
            return part.name;
    }
}

std::string part_counting(const model::Design& design, const analysis::Part& part) {
    return part_words_detail::counting(design, part) + part_words_detail::spare_counting(design, part);
}

}  // namespace streamwright::deliver
