#include "core/analysis/reach_help.h"

#include <algorithm>
#include <utility>

namespace streamwright::analysis {

namespace reach_detail {

using catalogue::CableType;
using namespace base::literals;

const CableType* type_of(const graph::Wiring& wiring, int cable) { return wiring.cables[at(cable)].type; }

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

base::Temperature warmth_of(const graph::Wiring& wiring, const graph::Run& run) {
    return cable_warmth(wiring, run).total();
}

std::vector<standards::DeratingRule> rules_in_force(model::WarmRule rule) {
    using enum standards::DeratingRule;
    if (rule == model::WarmRule::table) return {table};
    if (rule == model::WarmRule::linear) return {linear};
    if (rule == model::WarmRule::quotient) return {quotient};
    return {table, linear, quotient};
}

std::string rule_words(standards::DeratingRule rule) {
    using enum standards::DeratingRule;
    if (rule == table) return STREAMWRIGHT_TEXT("the table of TIA-568");
    if (rule == linear) return STREAMWRIGHT_TEXT("the linear rule of TIA-568-C.2 and ISO/IEC 11801");
    return STREAMWRIGHT_TEXT("the quotient rule of TIA-568-C.2");
}

base::Length channel_reach(const model::CablingSettings& settings, const standards::CopperReach& reach) {
    using namespace base::literals;
    const bool ten_on_six = reach.rate == 10_Gbps && reach.grade == standards::CopperGrade::cat6;
    return ten_on_six && settings.cat6_10g ? *settings.cat6_10g : reach.channel;
}

std::optional<CopperLimits> copper_limits(const model::CablingSettings& settings, const standards::CopperReach& reach,
                                          base::Temperature warmth, bool screened) {
    const auto channel = channel_reach(settings, reach);
    const auto full = std::clamp(channel - standards::cords_limit, base::Length{}, standards::permanent_link_limit);
    CopperLimits limits{.channel = channel, .full = full};
    bool first = true;
    for (const auto rule : rules_in_force(settings.warm_rule)) {
        const auto warm = standards::permanent_link_at(warmth, screened, rule);
        if (!warm) return std::nullopt;
        const auto length = std::max(full - (standards::permanent_link_limit - *warm), base::Length{});
        if (first || length < limits.strict) limits.strict = length, limits.strict_rule = rule;
        if (first || length > limits.lenient) limits.lenient = length, limits.lenient_rule = rule;
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
        const auto limits = copper_limits(wiring.design.settings().cabling, *reach, warmth, type.screened);
        return limits && (!length.permanent || *length.permanent <= limits->strict) &&
               (!length.channel || *length.channel <= limits->channel - (limits->full - limits->strict));
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
