#include "core/analysis/limit_chain.h"

#include "core/analysis/line_losses.h"
#include "core/analysis/line_reach.h"
#include "core/analysis/reach_help.h"
#include "core/standards/fibre_loss.h"

namespace streamwright::analysis {

namespace limit_chain_detail {

using Lines = std::vector<LimitLine>;

void add(Lines& lines, std::string pattern, std::vector<base::Value> values, base::Value figure, bool sum = false,
         bool over = false) {
    lines.push_back({std::move(pattern), std::move(values), std::move(figure), sum, over});
}

template <class Amount>
void add_excess(Lines& lines, const std::optional<Amount>& have, Amount most) {
    if (have && *have > most) add(lines, STREAMWRIGHT_TEXT("Over by"), {}, *have - most, true, true);
}

void add_copper(Lines& lines, const Facts& facts, int run) {
    const auto limit = copper_limit(facts, run);
    if (!limit) return;
    const auto& length = facts.get<CableLengths>().runs[at(run)];
    add(lines, STREAMWRIGHT_TEXT("%1 over %2, channel at most"), {limit->phy, limit->grade}, limit->channel);
    add_excess(lines, length.channel, limit->channel);
    if (!limit->rule.empty())
        add(lines, STREAMWRIGHT_TEXT("Installed part at %1 at most, by %2"), {limit->warmth, limit->rule},
            limit->installed);
    else
        add(lines, STREAMWRIGHT_TEXT("Installed part at most"), {}, limit->installed);
    add_excess(lines, length.permanent, limit->installed);
    add(lines, STREAMWRIGHT_TEXT("Source"), {}, limit->source);
}

void add_losses(Lines& lines, const FibreChannel& channel) {
    if (!channel.loss) return;
    add(lines, STREAMWRIGHT_TEXT("Glass, %1 at %2 nm"), {channel.grade_name, std::int64_t{channel.wavelength_nm}},
        *channel.glass);
    add(lines, STREAMWRIGHT_TEXT("%1 connector pairs of %2"), {std::int64_t{channel.joints}, channel.joint_loss},
        channel.joint_loss * channel.joints);
    add(lines, STREAMWRIGHT_TEXT("%1 splices of %2"), {std::int64_t{channel.splices}, channel.splice_loss},
        channel.splice_loss * channel.splices);
    add(lines, STREAMWRIGHT_TEXT("Loss"), {}, *channel.loss, true);
}

void add_way(Lines& lines, const FibreChannel& channel) {
    add(lines, STREAMWRIGHT_TEXT("Strands"), {}, std::int64_t{channel.strands});
    if (channel.swaps)
        add(lines, STREAMWRIGHT_TEXT("Pair swaps, odd is needed"), {}, std::int64_t{*channel.swaps}, false,
            *channel.swaps % 2 == 0);
    else
        add(lines, STREAMWRIGHT_TEXT("Pair swaps, odd is needed"), {}, std::string(STREAMWRIGHT_TEXT("not stated")));
}

void add_fibre(Lines& lines, const Facts& facts, int run) {
    const auto& channel = facts.get<FibreChannels>().runs[at(run)];
    if (!channel) return;
    const auto limit = fibre_limit(facts, run);
    if (limit && limit->most) {
        add(lines, STREAMWRIGHT_TEXT("%1 over %2, at most"), {limit->phy, channel->grade_name}, *limit->most);
        add_excess(lines, channel->length, *limit->most);
        add(lines, STREAMWRIGHT_TEXT("Source"), {}, limit->reach_source);
    }
    add_losses(lines, *channel);
    if (limit && limit->budget) {
        add(lines, STREAMWRIGHT_TEXT("Budget of %1"), {limit->phy}, *limit->budget);
        add_excess(lines, channel->loss, *limit->budget);
        add(lines, STREAMWRIGHT_TEXT("Source"), {}, limit->budget_source);
    }
    add_way(lines, *channel);
}

/// Cables that state a limit of their own.
void add_own(Lines& lines, const Facts& facts, int run) {
    const auto& wiring = facts.get<graph::Wiring>();
    const auto& lengths = facts.get<CableLengths>().cables;
    for (const int cable : facts.get<graph::Runs>().list[at(run)].cables) {
        const auto* type = wiring.cables[at(cable)].type;
        if (!type || !type->most_length) continue;
        add(lines, STREAMWRIGHT_TEXT("%1, at most by its type"), {named(cable_id(wiring, cable))}, *type->most_length);
        add_excess(lines, lengths[at(cable)].length, *type->most_length);
    }
}

/// Lines that are no network, by standard, by habit or by what they lose.
void add_line(Lines& lines, const Facts& facts, int run) {
    const auto& wiring = facts.get<graph::Wiring>();
    const auto& row = facts.get<graph::Runs>().list[at(run)];
    const std::string own = STREAMWRIGHT_TEXT("settings of the design");
    if (const auto reach = line_reach(wiring, row)) {
        add(lines, STREAMWRIGHT_TEXT("%1, safe to"), {reach->line}, reach->careful);
        if (reach->most > reach->careful) add(lines, STREAMWRIGHT_TEXT("%1, at most"), {reach->line}, reach->most);
        add_excess(lines, facts.get<CableLengths>().runs[at(run)].channel, reach->most);
        add(lines, STREAMWRIGHT_TEXT("Source"), {}, reach->set ? own : reach->source.text());
    }
    if (const auto losses = line_losses(wiring, row)) {
        add(lines, STREAMWRIGHT_TEXT("Loss"), {}, losses->loss, true);
        add(lines, STREAMWRIGHT_TEXT("%1, at most"), {losses->line}, losses->careful);
        add_excess(lines, std::optional(losses->loss), losses->most);
        add(lines, STREAMWRIGHT_TEXT("Source"), {}, losses->set ? own : losses->source.text());
    }
}

const RunSpeed* speed_of(const Facts& facts, int run) {
    const auto& speeds = facts.get<LinkCapacity>().runs;
    return at(run) < speeds.size() && speeds[at(run)].rate ? &speeds[at(run)] : nullptr;
}

}  // namespace limit_chain_detail

std::optional<CopperLimit> copper_limit(const Facts& facts, int run) {
    using namespace base::literals;
    const auto& wiring = facts.get<graph::Wiring>();
    const auto& row = facts.get<graph::Runs>().list[at(run)];
    const auto* speed = limit_chain_detail::speed_of(facts, run);
    const auto copper = copper_of(wiring, row);
    if (!speed || !copper || !copper->grade) return std::nullopt;
    const auto* reach = standards::copper_reach(*speed->rate, *copper->grade);
    if (!reach || reach->support == standards::Support::none) return std::nullopt;
    const auto warmth = warmth_of(wiring, row);
    const auto limits = copper_limits(wiring.design.settings().cabling, *reach, warmth, copper->screened);
    if (!limits) return std::nullopt;
    const bool warm = limits->strict < limits->full;
    return CopperLimit{std::string(reach->phy), copper->name, limits->channel - (limits->full - limits->strict),
                       limits->strict,          warmth,       warm ? rule_words(limits->strict_rule) : std::string(),
                       reach->source.text()};
}

std::optional<FibreLimit> fibre_limit(const Facts& facts, int run) {
    const auto* speed = limit_chain_detail::speed_of(facts, run);
    const auto& channels = facts.get<FibreChannels>().runs;
    if (!speed || at(run) >= channels.size() || !channels[at(run)] || !channels[at(run)]->grade) return std::nullopt;
    const auto grade = *channels[at(run)]->grade;
    FibreLimit limit{speed->phy, {}, {}, {}, {}, {}};
    if (const auto* reach = standards::fibre_reach(speed->phy, grade)) {
        limit.least = reach->least;
        limit.most = reach->most;
        limit.reach_source = reach->source.text();
    }
    if (const auto* budget = standards::loss_budget(speed->phy, grade)) {
        limit.budget = budget->budget;
        limit.budget_source = budget->source.text();
    }
    return limit;
}

std::vector<LimitLine> limit_chain(const Facts& facts, int run) {
    std::vector<LimitLine> lines;
    if (run < 0 || at(run) >= facts.get<graph::Runs>().list.size()) return lines;
    limit_chain_detail::add_copper(lines, facts, run);
    limit_chain_detail::add_fibre(lines, facts, run);
    limit_chain_detail::add_line(lines, facts, run);
    limit_chain_detail::add_own(lines, facts, run);
    return lines;
}

}  // namespace streamwright::analysis
