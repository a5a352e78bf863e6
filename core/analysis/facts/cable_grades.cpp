#include "core/analysis/facts/cable_grades.h"

#include <algorithm>
#include <utility>

namespace streamwright::analysis {

namespace cable_grades_detail {

using catalogue::CableGrade;
using catalogue::CableType;
using catalogue::Medium;

const CableType* type_of(const graph::Wiring& wiring, int cable) {
    return wiring.cables[static_cast<std::size_t>(cable)].type;
}

bool all_of_medium(const graph::Wiring& wiring, const graph::Run& run, bool copper) {
    return std::all_of(run.cables.begin(), run.cables.end(), [&](int cable) {
        const auto* type = type_of(wiring, cable);
        if (!type) return false;
        return copper ? type->medium == Medium::balanced_copper
                      : type->medium == Medium::multimode || type->medium == Medium::singlemode;
    });
}

/// The older multimode fibres have no OM name and stand last in the list, but carry least: before OM1 and before OM2.
int strength(CableGrade grade) {
    if (grade == CableGrade::none) return -1;
    if (grade == CableGrade::old_62_5) return static_cast<int>(CableGrade::om1) * 2 - 1;
    if (grade == CableGrade::old_50) return static_cast<int>(CableGrade::om2) * 2 - 1;
    return static_cast<int>(grade) * 2;
}

const CableType* weakest(const graph::Wiring& wiring, const graph::Run& run) {
    const CableType* weak = nullptr;
    for (const int cable : run.cables) {
        const auto* type = type_of(wiring, cable);
        if (!weak || strength(type->grade) < strength(weak->grade)) weak = type;
    }
    return weak;
}

}  // namespace cable_grades_detail

std::optional<standards::CopperGrade> copper_grade(catalogue::CableGrade grade) {
    using catalogue::CableGrade;
    if (grade == CableGrade::cat5e) return standards::CopperGrade::cat5e;
    if (grade == CableGrade::cat6) return standards::CopperGrade::cat6;
    if (grade == CableGrade::cat6a) return standards::CopperGrade::cat6a;
    if (grade == CableGrade::cat8) return standards::CopperGrade::cat8;
    return std::nullopt;
}

std::optional<standards::FibreGrade> fibre_grade(catalogue::CableGrade grade) {
    using From = catalogue::CableGrade;
    using To = standards::FibreGrade;
    static constexpr std::pair<From, To> grades[] = {
        {From::om1, To::om1}, {From::om2, To::om2},           {From::om3, To::om3},
        {From::om4, To::om4}, {From::om5, To::om5},           {From::os1a, To::os1a},
        {From::os2, To::os2}, {From::old_62_5, To::old_62_5}, {From::old_50, To::old_50}};
    for (const auto& [from, to] : grades)
        if (from == grade) return to;
    return std::nullopt;
}

std::string grade_name(catalogue::CableGrade grade) {
    using enum catalogue::CableGrade;
    static constexpr std::pair<catalogue::CableGrade, std::string_view> names[] = {{cat5e, "Cat 5e"},
                                                                                   {cat6, "Cat 6"},
                                                                                   {cat6a, "Cat 6A"},
                                                                                   {cat8, "Cat 8"},
                                                                                   {om1, "OM1"},
                                                                                   {om2, "OM2"},
                                                                                   {om3, "OM3"},
                                                                                   {om4, "OM4"},
                                                                                   {om5, "OM5"},
                                                                                   {os1a, "OS1a"},
                                                                                   {os2, "OS2"},
                                                                                   {old_62_5, "62.5 um, 160 MHz.km"},
                                                                                   {old_50, "50 um, 400 MHz.km"}};
    for (const auto& [each, name] : names)
        if (each == grade) return std::string(name);
    return {};
}

std::optional<CopperRun> copper_of(const graph::Wiring& wiring, const graph::Run& run) {
    using namespace cable_grades_detail;
    if (run.cables.empty() || !all_of_medium(wiring, run, true)) return std::nullopt;
    const auto* weak = weakest(wiring, run);
    CopperRun copper{copper_grade(weak->grade), grade_name(weak->grade), true};
    for (const int cable : run.cables) copper.screened = copper.screened && type_of(wiring, cable)->screened;
    return copper;
}

std::optional<FibreRun> fibre_of(const graph::Wiring& wiring, const graph::Run& run) {
    using namespace cable_grades_detail;
    if (run.cables.empty() || !all_of_medium(wiring, run, false)) return std::nullopt;
    const auto* weak = weakest(wiring, run);
    return FibreRun{fibre_grade(weak->grade), grade_name(weak->grade)};
}

}  // namespace streamwright::analysis
