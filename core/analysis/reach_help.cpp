#include "core/analysis/reach_help.h"

#include <algorithm>
#include <utility>

namespace streamwright::analysis {

namespace reach_detail {

using catalogue::CableGrade;
using catalogue::CableType;
using catalogue::Medium;
using namespace base::literals;

const CableType* type_of(const graph::Wiring& wiring, int cable) { return wiring.cables[at(cable)].type; }

bool all_of_medium(const graph::Wiring& wiring, const graph::Run& run, bool copper) {
    return std::all_of(run.cables.begin(), run.cables.end(), [&](int cable) {
        const auto* type = type_of(wiring, cable);
        if (!type) return false;
        return copper ? type->medium == Medium::balanced_copper
                      : type->medium == Medium::multimode || type->medium == Medium::singlemode;
    });
}

/// The cable of the run with the weakest grade; one without a grade counts as the weakest.
template <class Grade>
const CableType* weakest(const graph::Wiring& wiring, const graph::Run& run, Grade&& grade) {
    const CableType* weak = nullptr;
    for (const int cable : run.cables) {
        const auto* type = type_of(wiring, cable);
        if (!weak || grade(type->grade) < grade(weak->grade)) weak = type;
    }
    return weak;
}

/// Installed cables of the run; nothing if a lead is as weak as the weakest of them, since another lead is needed then.
template <class Enough>
std::vector<model::CableId> to_replace(const graph::Wiring& wiring, const graph::Run& run, Enough&& enough) {
    std::vector<model::CableId> cables;
    for (const int cable : run.cables) {
        const auto* type = type_of(wiring, cable);
        if (enough(*type)) continue;
        if (type->use != catalogue::CableUse::installed) return {};
        cables.push_back(cable_id(wiring, cable));
    }
    return cables;
}

/// The first other type of the design that reaches, put in place of the cables that do not.
template <class Enough>
std::optional<Remedy> replacement(const graph::Wiring& wiring, const graph::Run& run, Enough&& enough) {
    const auto cables = to_replace(wiring, run, enough);
    if (cables.empty()) return std::nullopt;
    const auto* old = type_of(wiring, run.cables.front());
    for (const int cable : run.cables)
        if (cable_id(wiring, cable) == cables.front()) old = type_of(wiring, cable);
    for (const auto& row : wiring.design.cable_types) {
        const auto& type = *row.type;
        const bool like = type.use == catalogue::CableUse::installed && type.signal == old->signal &&
                          type.medium == old->medium && type.plugs == old->plugs;
        if (!like || !enough(type)) continue;
        std::vector<base::Ref> names;
        for (const auto id : cables) names.push_back(named(id));
        return Remedy{line(STREAMWRIGHT_TEXT("Pull %1 in place of %2"), {type.name, std::move(names)}),
                      model::SetCableType{cables, row.type}};
    }
    return std::nullopt;
}

}  // namespace reach_detail

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
    static constexpr std::pair<From, To> grades[] = {{From::om1, To::om1}, {From::om2, To::om2}, {From::om3, To::om3},
                                                     {From::om4, To::om4}, {From::om5, To::om5}, {From::os1a, To::os1a},
                                                     {From::os2, To::os2}};
    for (const auto& [from, to] : grades)
        if (from == grade) return to;
    return std::nullopt;
}

std::string grade_name(catalogue::CableGrade grade) {
    using enum catalogue::CableGrade;
    static constexpr std::pair<catalogue::CableGrade, std::string_view> names[] = {
        {cat5e, "Cat 5e"}, {cat6, "Cat 6"}, {cat6a, "Cat 6A"}, {cat8, "Cat 8"}, {om1, "OM1"}, {om2, "OM2"},
        {om3, "OM3"},      {om4, "OM4"},    {om5, "OM5"},      {os1a, "OS1a"},  {os2, "OS2"}};
    for (const auto& [each, name] : names)
        if (each == grade) return std::string(name);
    return {};
}

std::optional<CopperRun> copper_of(const graph::Wiring& wiring, const graph::Run& run) {
    if (run.cables.empty() || !reach_detail::all_of_medium(wiring, run, true)) return std::nullopt;
    const auto* weak = reach_detail::weakest(wiring, run, copper_grade);
    CopperRun copper{copper_grade(weak->grade), grade_name(weak->grade), true};
    for (const int cable : run.cables)
        copper.screened = copper.screened && reach_detail::type_of(wiring, cable)->screened;
    return copper;
}

std::optional<FibreRun> fibre_of(const graph::Wiring& wiring, const graph::Run& run) {
    if (run.cables.empty() || !reach_detail::all_of_medium(wiring, run, false)) return std::nullopt;
    const auto* weak = reach_detail::weakest(wiring, run, fibre_grade);
    return FibreRun{fibre_grade(weak->grade), grade_name(weak->grade)};
}

base::Temperature warmth_of(const graph::Wiring& wiring, const graph::Run& run) {
    using namespace base::literals;
    auto warmth = std::max(20_degC, wiring.design.settings().cable_temperature.value_or(20_degC));
    for (const auto& end : {run.a, run.b}) {
        const auto room = end ? wiring.devices[at(end->device)].row->room : std::nullopt;
        const auto* row = room ? wiring.design.rooms.find(*room) : nullptr;
        if (row && row->temperature) warmth = std::max(warmth, *row->temperature);
    }
    return warmth;
}

std::optional<CopperLimits> copper_limits(const standards::CopperReach& reach, base::Temperature warmth,
                                          bool screened) {
    using enum standards::DeratingRule;
    const auto full = std::min(standards::permanent_link_limit, reach.channel - standards::cords_limit);
    CopperLimits limits{full, base::Length{}, base::Length{}};
    bool first = true;
    for (const auto rule : {table, linear, quotient}) {
        const auto warm = standards::permanent_link_at(warmth, screened, rule);
        if (!warm) return std::nullopt;
        const auto length = full - (standards::permanent_link_limit - *warm);
        limits.strict = first ? length : std::min(limits.strict, length);
        limits.lenient = first ? length : std::max(limits.lenient, length);
        first = false;
    }
    return limits;
}

std::optional<Remedy> better_copper(const graph::Wiring& wiring, const graph::Run& run, base::BitRate rate,
                                    const RunLength& length) {
    const auto warmth = warmth_of(wiring, run);
    const auto enough = [&](const catalogue::CableType& type) {
        const auto grade = copper_grade(type.grade);
        const auto* reach = grade ? standards::copper_reach(rate, *grade) : nullptr;
        if (!reach || reach->support != standards::Support::full) return false;
        const auto limits = copper_limits(*reach, warmth, type.screened);
        return limits && (!length.permanent || *length.permanent <= limits->strict) &&
               (!length.channel || *length.channel <= reach->channel - (limits->full - limits->strict));
    };
    return reach_detail::replacement(wiring, run, enough);
}

std::optional<Remedy> better_fibre(const graph::Wiring& wiring, const graph::Run& run, const std::string& phy,
                                   const RunLength& length) {
    const auto enough = [&](const catalogue::CableType& type) {
        const auto grade = fibre_grade(type.grade);
        const auto* reach = grade ? standards::fibre_reach(phy, *grade) : nullptr;
        return reach && length.channel && *length.channel <= reach->most;
    };
    return reach_detail::replacement(wiring, run, enough);
}

}  // namespace streamwright::analysis
